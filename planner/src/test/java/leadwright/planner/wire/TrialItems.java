package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.table.Connector;
import leadwright.catalog.table.Connectors;
import leadwright.catalog.table.Mating;

/** What {@link BruteForce} may do with the items of a kit, read from the planning guide and not from the planner. */
final class TrialItems {
    private final Connectors connectors = Connectors.builtIn();
    private final Kit kit;
    private final boolean mains;

    /** @param mains whether a reading puts mains on a part */
    TrialItems(Kit kit, boolean mains) {
        this.kit = kit;
        this.mains = mains;
    }

    /** An item in place: the end towards the tester, ends that take chains (null once taken), where its own end goes. */
    static final class Placed {
        final KitItem item;
        final String out;
        final String[] inlets;
        Object into;

        Placed(KitItem item, String out, List<String> ends) {
            this.item = item;
            this.out = out;
            this.inlets = ends.toArray(String[]::new);
        }
    }

    /** Bare ends and joints that lose a protective property: with mains only from a source limited to 3.5 mA. */
    private boolean bareAllowed() {
        return !mains || kit.tester().partSource().orElseThrow().shortCircuit().amount() <= 3_500_000L;
    }

    boolean usable(KitItem item) {
        boolean rated = !mains
                || item.voltage().map(each -> each.amount() >= 230_000_000L).orElse(false);
        return rated && (bareAllowed() || item.ends().stream().noneMatch(this::bare));
    }

    boolean bare(String end) {
        return connectors.find(end).map(Connector::unshrouded).orElse(false);
    }

    boolean mates(String one, String other) {
        Mating mating = connectors.mates(one, other);
        return mating == Mating.YES && (bareAllowed() || !bare(one) && !bare(other))
                || mating == Mating.UNPROTECTED && bareAllowed();
    }

    List<Placed> ways(KitItem item) {
        String first = item.ends().get(0);
        String second = item.ends().get(1);
        List<Placed> ways = new ArrayList<>();
        if (item.kind() == ItemKind.FAN_OUT) {
            ways.add(new Placed(item, first, Collections.nCopies(item.branches(), second)));
            return ways;
        }
        ways.add(way(item, first, second));
        if (!first.equals(second)) {
            ways.add(way(item, second, first));
        }
        return ways;
    }

    private Placed way(KitItem item, String in, String out) {
        List<String> ends = new ArrayList<>(List.of(in));
        for (String end : List.of(in, out)) {
            connectors.find(end).flatMap(Connector::rear).ifPresent(ends::add);
        }
        return new Placed(item, out, ends);
    }
}
