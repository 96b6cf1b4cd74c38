package leadwright.planner.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import leadwright.planner.plan.NaturalOrder;

/**
 * Two plans and what changed from the first to the second.
 *
 * @param changes in the order in which a person cares, each difference once
 */
public record Comparison(Side a, Side b, List<Change> changes) {
    public Comparison {
        changes = List.copyOf(changes);
    }

    private static final Comparator<Change> ORDER = Comparator.comparing(Change::kind)
            .thenComparing(change -> perHookup(change) ? 0 : turn(change))
            .thenComparing(Change::family, NaturalOrder.IDS)
            .thenComparing(change -> first(change.inA()), NaturalOrder.IDS)
            .thenComparing(change -> first(change.inB()), NaturalOrder.IDS)
            .thenComparing(Comparison::turn)
            .thenComparing(Change::subject, NaturalOrder.IDS);

    /**
     * Compares two plans.
     *
     * <p>Needs: two plans, of the same device or not. Gives: every difference that is looked at, once; none for a plan and
     * itself, and the mirror image where the two change places. Cost: n² in the readings.
     */
    public static Comparison of(Side a, Side b) {
        Names names = Names.of(a, b);
        Pairs readings = Pairs.of(a.readings(), b.readings());
        HookupPairs hookups = HookupPairs.of(a.hookups(), b.hookups());
        List<Change> changes = new ArrayList<>();
        changes.addAll(new Basis(a, b).changes());
        changes.addAll(new Hazards(a, b, names, readings).changes());
        changes.addAll(new Limits(a, b, names, readings).changes());
        changes.addAll(new Tests(a, b, names, readings).changes());
        changes.addAll(new Wirings(a, b, names, readings, hookups).changes());
        changes.addAll(new Orders(a, b, names, readings).changes());
        changes.addAll(new Times(a, b).changes());
        changes.sort(ORDER);
        return new Comparison(a, b, changes);
    }

    private static String first(List<String> ids) {
        return ids.isEmpty() ? "" : ids.get(0);
    }

    /** Wires are told hookup by hookup, and what went or came within. */
    private static boolean perHookup(Change change) {
        return change.kind() == Kind.JACK || change.kind() == Kind.CHAIN || change.kind() == Kind.EARTH_LEAD;
    }

    /** What came is a hazard first; of tests and limits, what went or lets more pass. */
    private static int turn(Change change) {
        return change.concern() == Concern.HAZARDS
                ? -change.trend().ordinal()
                : change.trend().ordinal();
    }

    public List<Change> about(Concern concern) {
        return changes.stream().filter(change -> change.concern() == concern).toList();
    }

    /** Whether nothing differs that matters at the bench, whatever the two were made for. */
    public boolean sameAtTheBench() {
        return changes.stream().allMatch(change -> change.concern() == Concern.PLANNED_FOR);
    }

    /** The changes in sentences, like ones gathered. */
    public List<Line> lines() {
        return Line.gather(changes);
    }
}
