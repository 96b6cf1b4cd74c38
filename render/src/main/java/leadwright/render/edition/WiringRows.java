package leadwright.render.edition;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.KitItem;
import leadwright.planner.Plan;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;
import leadwright.render.paper.Words;
import leadwright.render.sheet.Vocabulary;

/** What goes to which jack, a row for each jack and what is on the way to it. */
final class WiringRows {

    static final List<String> HEAD = List.of("From", "Through", "To", "Wires");
    static final List<Integer> WIDTHS = List.of(16, 26, 48, 10);

    private WiringRows() {}

    static List<List<Words>> of(Plan plan, Hookup hookup, Vocabulary words) {
        Map<List<String>, List<Chain>> groups = new LinkedHashMap<>();
        for (Chain chain : hookup.chains()) {
            List<String> key =
                    List.of("jack " + chain.jack(), through(plan, chain.items()), words.group(chain.connection()));
            groups.computeIfAbsent(key, each -> new ArrayList<>()).add(chain);
        }
        List<List<Words>> rows = new ArrayList<>();
        groups.forEach((key, chains) -> {
            String wires =
                    chains.stream().map(chain -> words.wire(chain.connection())).collect(Collectors.joining(", "));
            rows.add(List.of(
                    Words.strong(key.get(0)),
                    Words.of(key.get(1)),
                    Words.of(key.get(2) + ": ").bold(wires),
                    Words.of(String.valueOf(chains.size()))));
        });
        for (EarthPath path : hookup.earth()) {
            List<String> items = new ArrayList<>(path.items());
            Collections.reverse(items);
            rows.add(List.of(
                    Words.strong(path.socket().replace('-', ' ')),
                    Words.of(through(plan, items)),
                    Words.of(words.say(path.pole().equals("part") ? "Earth lead, first to: " : "Reference lead to: "))
                            .bold(words.place(path.point())),
                    Words.of("–")));
        }
        return rows;
    }

    /** Items from the tester to the device; a fan-out by its instance, all else by kind. */
    private static String through(Plan plan, List<String> fromDevice) {
        if (fromDevice.isEmpty()) {
            return "direct";
        }
        List<String> items = new ArrayList<>(fromDevice);
        Collections.reverse(items);
        return items.stream()
                .map(item -> isFanOut(plan, item) ? item.replace('/', ' ') : kind(item))
                .collect(Collectors.joining(" → "));
    }

    static boolean isFanOut(Plan plan, String item) {
        return plan.kit()
                .item(kind(item))
                .map(KitItem::kind)
                .filter(ItemKind.FAN_OUT::equals)
                .isPresent();
    }

    /** The id of the item without the number of its instance. */
    static String kind(String item) {
        int slash = item.indexOf('/');
        return slash < 0 ? item : item.substring(0, slash);
    }
}
