package leadwright.planner.order;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import leadwright.planner.plan.Obligation.Phase;

/**
 * What selecting costs for mains on a part that several hookups may take: the part of the bound that {@link Stay} leaves out.
 *
 * <p>Each demand of such readings is selected once in each state, unless it was still selected. One visit is enough each time
 * that a pose is come to, so that no more selections are saved than poses are come to, and one at the pose where the bench
 * stands. Every move into such a pose is therefore counted at a selection less, and every demand that is left in full.
 */
final class Selecting {
    /**
     * Readings of one stand.
     *
     * @param bound demands of those that one hookup alone may take: these are counted with their hookup
     */
    private record Group(Stand stand, List<Unit> units, BitSet bound) {}

    private final Problem problem;
    private final List<Group> groups = new ArrayList<>();

    private Selecting(Problem problem) {
        this.problem = problem;
        for (Unit unit : problem.units()) {
            if (unit.phase() == Phase.MAINS_ON_PART && !unit.bound()) {
                group(unit.stand()).units().add(unit);
            }
        }
        for (Unit unit : problem.units()) {
            if (unit.phase() == Phase.MAINS_ON_PART && unit.bound()) {
                groups.stream()
                        .filter(group -> group.stand().equals(unit.stand()))
                        .forEach(group -> group.bound().or(unit.demands()));
            }
        }
    }

    private Group group(Stand stand) {
        return groups.stream()
                .filter(group -> group.stand().equals(stand))
                .findFirst()
                .orElseGet(() -> {
                    groups.add(new Group(stand, new ArrayList<>(), new BitSet()));
                    return groups.get(groups.size() - 1);
                });
    }

    /**
     * Empty where nothing is to be counted, where such readings are taken in a pose that is come to by re-plugging or from the
     * start, or where a move may cost less than the selection that it saves.
     */
    static Optional<Selecting> of(Problem problem) {
        Selecting selecting = new Selecting(problem);
        if (selecting.groups.isEmpty() || problem.scene().mayReplugUnderPower()) {
            return Optional.empty();
        }
        for (int p = 0; p < problem.poses().all().size(); p++) {
            Pose from = problem.poses().get(p);
            boolean gate = p == problem.poses().start() || from.dead();
            if (gate
                    && selecting.groups.stream().anyMatch(group -> group.stand().fits(from))) {
                return Optional.empty();
            }
            for (Move move : problem.poses().from(p)) {
                Pose to = problem.poses().get(move.to());
                boolean comes = selecting.groups.stream()
                        .anyMatch(group -> group.stand().fits(to));
                if (comes && move.seconds() < problem.scene().times().select()) {
                    return Optional.empty();
                }
            }
        }
        return Optional.of(selecting);
    }

    /** Selections that are left beyond what is due. */
    int rest(BitSet done) {
        int select = problem.scene().times().select();
        int seconds = 0;
        BitSet left = new BitSet();
        for (Group group : groups) {
            left.clear();
            int due = 0;
            for (Unit unit : group.units()) {
                if (!done.get(unit.index())) {
                    left.or(unit.demands());
                    due += problem.due()[unit.index()];
                }
            }
            left.andNot(group.bound());
            seconds += Math.max(0, left.cardinality() * select - due);
        }
        return seconds;
    }
}
