package leadwright.planner.foresee;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Hookup;

/**
 * A piece of a hookup between two nodes: from a connection or a shared item to the next shared item or to a jack.
 *
 * @param from node
 * @param to node
 * @param items what lies on it, a shared item at its beginning included
 */
public record Stretch(String from, String to, List<String> items) {
    public Stretch {
        items = List.copyOf(items);
    }

    /** Every stretch of a hookup once, in the order of its chains. */
    public static List<Stretch> of(Hookup hookup) {
        Map<String, Integer> users = new HashMap<>();
        hookup.chains().forEach(chain -> chain.items().forEach(item -> users.merge(item, 1, Integer::sum)));
        Set<Stretch> all = new LinkedHashSet<>();
        for (Chain chain : hookup.chains()) {
            String from = chain.connection();
            List<String> between = new ArrayList<>();
            for (String item : chain.items()) {
                if (users.get(item) > 1) {
                    all.add(new Stretch(from, Nodes.item(item), between));
                    from = Nodes.item(item);
                    between = new ArrayList<>();
                }
                between.add(item);
            }
            all.add(new Stretch(from, Nodes.jack(chain.jack()), between));
        }
        return List.copyOf(all);
    }

    /** Name of its resistance. */
    public String resistance() {
        return "R:" + from + "/" + to;
    }
}
