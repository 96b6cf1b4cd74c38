package leadwright.planner.order;

import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import leadwright.planner.plan.Obligation.Phase;

/** A problem at one grain, with the twins and the bound that every search of it shares. */
final class Task {
    private final Problem problem;
    private final Grain grain;
    private final int limit;
    private Optional<Lineup> lineup;
    private Optional<Bound> bound = Optional.empty();

    /** @param limit nodes of one search */
    Task(Problem problem, Grain grain, Lineup lineup, int limit) {
        this(problem, grain, Optional.of(lineup), limit);
    }

    private Task(Problem problem, Grain grain, Optional<Lineup> lineup, int limit) {
        this.problem = problem;
        this.grain = grain;
        this.lineup = lineup;
        this.limit = limit;
    }

    static Task of(Problem problem, Grain grain, int limit) {
        return new Task(problem, grain, Optional.empty(), limit);
    }

    Problem problem() {
        return problem;
    }

    /** Whether any reading may be taken in several hookups. */
    boolean isFree() {
        return problem.units().stream().anyMatch(unit -> !unit.bound());
    }

    /** Whether taking a class in parts may pay for more than its selections: by a way that is shorter or a touch that is shared. */
    boolean divides() {
        return shortens() || shares();
    }

    private boolean shares() {
        for (Unit unit : problem.units()) {
            boolean shared = !unit.bound()
                    && unit.places().cardinality() > 1
                    && problem.units().stream()
                            .anyMatch(other -> !other.hookups().equals(unit.hookups())
                                    && other.stand().equals(unit.stand())
                                    && other.places().intersects(unit.places()));
            if (shared) {
                return true;
            }
        }
        return false;
    }

    /** Whether there is a fault that several hookups may read and that makes some way shorter. */
    private boolean shortens() {
        Excursions excursions = new Excursions(problem.poses());
        return problem.units().stream().anyMatch(unit -> !unit.bound() && excursions.shortens(unit.stand()));
    }

    /**
     * Whether the readings that choose their hookup one by one have so few ways to.
     *
     * @param inOneBlock binary logarithm of the ways in one visit
     * @param inAll the same of all
     */
    boolean within(double inOneBlock, double inAll) {
        BitSet free = new BitSet();
        double most = 0;
        for (List<Problem.Block> blocks : problem.blocks()) {
            for (Problem.Block block : blocks) {
                if (grain.fine(block.phase())) {
                    free.or(block.free());
                    // However many are alike, there is a way for each number of them.
                    if (block.free().cardinality() >= Math.pow(2, inOneBlock)) {
                        return false;
                    }
                    most = Math.max(most, lineup().freedom(block.free()));
                }
            }
        }
        return lineup().freedom(free) <= inAll && most <= inOneBlock;
    }

    /**
     * Seconds by which going class by class may cost more than the best way of sharing out: insulation and mains on a part need
     * no settling, so that each further visit of a class may save its two selections.
     */
    int slack() {
        int select = problem.scene().times().select();
        return problem.units().stream()
                .filter(unit -> !unit.bound() && unit.phase() != Phase.ORDINARY && !grain.fine(unit.phase()))
                .mapToInt(unit -> 2 * select * (unit.demands().cardinality() - 1))
                .sum();
    }

    /** @param exact see {@link Search} */
    Search search(boolean exact) {
        return new Search(problem, bound(), exact, grain, lineup(), limit);
    }

    /** @param nodes of the search */
    Sketch sketch(int nodes) {
        return new Sketch(problem, bound(), grain, lineup(), nodes);
    }

    // Most problems are only weighed: twins and bound are dear, and made when they are first needed.

    private Lineup lineup() {
        if (lineup.isEmpty()) {
            lineup = Optional.of(new Lineup(new Twins(problem).families()));
        }
        return lineup.get();
    }

    private Bound bound() {
        if (bound.isEmpty()) {
            bound = Optional.of(new Bound(problem));
        }
        return bound.get();
    }
}
