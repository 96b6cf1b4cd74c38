package leadwright.planner.order;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import leadwright.planner.plan.Obligation.Phase;

/**
 * Phase 6: the ordering problem in numbers, and what a visit costs in it.
 *
 * <p>A visit takes units of one phase in one hookup and pose. Seconds that every order pays alike (reading, writing, one
 * selection for each demand, one touch for each place) are {@link #base}; a visit is charged only with what it pays
 * beyond, so that the search deals in small numbers.
 *
 * @param demands keys of the demands, by their numbers
 * @param opening for each hookup, seconds of setting it up first with all earth readings; negative where it may not be
 *     first
 * @param firstSite for each hookup, the site that it is when it is first
 * @param due for each unit, its share of {@code base} for selections and touches
 * @param blocks for each hookup, what may be read in it
 */
record Problem(
        Scene scene,
        Poses poses,
        Replugs replugs,
        List<Unit> units,
        List<String> demands,
        int[] opening,
        int[] firstSite,
        int[] due,
        int base,
        List<List<Block>> blocks) {

    /**
     * All that one hookup may read in one stand and phase.
     *
     * @param bound units that no other hookup may take
     * @param free units that others may take too
     * @param index position among the hookup's blocks
     * @param demands every demand that may be selected in it
     * @param links blocks of the hookup from which a selection may be carried into it
     */
    record Block(int index, Stand stand, Phase phase, BitSet bound, BitSet free, BitSet demands, BitSet links) {}

    static Problem of(
            Scene scene, Poses poses, Replugs replugs, Units.Classes classes, int[] opening, int[] firstSite) {
        List<Unit> units = classes.units();
        int[] due = new int[units.size()];
        int base = 0;
        for (Unit unit : units) {
            due[unit.index()] = due(unit, units, scene.times());
            base += due[unit.index()] + reading(unit, scene.times());
        }
        List<List<Block>> blocks = new ArrayList<>();
        for (int hookup = 0; hookup < replugs.hookups(); hookup++) {
            blocks.add(blocks(hookup, units));
        }
        return new Problem(scene, poses, replugs, units, classes.demands(), opening, firstSite, due, base, blocks);
    }

    int hookups() {
        return replugs.hookups();
    }

    int hookupOf(int site) {
        return site % replugs.hookups();
    }

    /** Whether the first reading of a visit takes longer. */
    private static boolean settles(Phase phase) {
        return phase == Phase.ORDINARY;
    }

    private static int reading(Unit unit, BenchTimes times) {
        int each = switch (unit.phase()) {
            case INSULATION -> times.action("read-insulation") + times.action("discharge");
            case MAINS_ON_PART -> times.action("read-mains-on-part");
            default -> times.action("read");
        };
        return unit.readings().size() * (each + times.write());
    }

    /**
     * Selections and touches that this unit costs at least, in whatever visit. What several units of one state ask for is
     * counted with the first of those that one hookup alone may take; with none of those, with the first of all.
     */
    private static int due(Unit unit, List<Unit> units, BenchTimes times) {
        BitSet demands = (BitSet) unit.demands().clone();
        BitSet places = (BitSet) unit.places().clone();
        for (Unit other : units) {
            boolean counts = unit.bound()
                    ? other.index() < unit.index() && other.hookups().equals(unit.hookups())
                    : other.bound() || other.index() < unit.index();
            if (counts
                    && other.index() != unit.index()
                    && other.phase() == unit.phase()
                    && other.stand().equals(unit.stand())) {
                demands.andNot(other.demands());
                places.andNot(other.places());
            }
        }
        int selections = demands.cardinality() * times.select();
        // One selection of each visit may be carried over; where settling pays for it, that is counted with the visit.
        boolean covered = settles(unit.phase()) && times.settling() >= times.select();
        if (!covered && !unit.demands().isEmpty()) {
            selections = Math.max(0, selections - times.select());
        }
        return selections + places.cardinality() * times.touch();
    }

    private static List<Block> blocks(int hookup, List<Unit> units) {
        Map<List<Object>, List<Unit>> groups = new LinkedHashMap<>();
        for (Unit unit : units) {
            if (unit.hookups().get(hookup)) {
                groups.computeIfAbsent(List.of(unit.stand(), unit.phase()), key -> new ArrayList<>())
                        .add(unit);
            }
        }
        List<BitSet> demands = new ArrayList<>();
        groups.values().forEach(group -> {
            BitSet all = new BitSet();
            group.forEach(unit -> all.or(unit.demands()));
            demands.add(all);
        });
        List<Block> blocks = new ArrayList<>();
        int i = 0;
        for (List<Unit> group : groups.values()) {
            BitSet bound = new BitSet();
            BitSet free = new BitSet();
            group.forEach(unit -> (unit.bound() ? bound : free).set(unit.index()));
            BitSet own = demands.get(i);
            BitSet links = new BitSet();
            for (int j = 0; j < demands.size(); j++) {
                links.set(j, demands.get(j).intersects(own) && (j != i || group.size() > 1));
            }
            blocks.add(new Block(i, group.get(0).stand(), group.get(0).phase(), bound, free, own, links));
            i++;
        }
        return blocks;
    }

    /**
     * Seconds of a visit beyond what its units are due in any order.
     *
     * @param demands union of the demands of its units
     * @param carried whether one selection is carried over from the visit before
     */
    int visit(BitSet taken, Phase phase, BitSet demands, boolean carried) {
        BenchTimes times = scene.times();
        BitSet places = new BitSet();
        int seconds = 0;
        for (int u = taken.nextSetBit(0); u >= 0; u = taken.nextSetBit(u + 1)) {
            places.or(units.get(u).places());
            seconds -= due[u];
        }
        seconds += settles(phase) ? times.settling() : 0;
        seconds += times.select() * (demands.cardinality() - (carried ? 1 : 0));
        return Math.max(0, seconds + times.touch() * places.cardinality());
    }

    /** Whether some of these units comes after all of those: as long as any of those is left, so is it. */
    boolean waits(BitSet these, BitSet those) {
        return these.stream().anyMatch(u -> {
            BitSet missing = (BitSet) those.clone();
            missing.andNot(units.get(u).before());
            return missing.isEmpty();
        });
    }

    /** Least that any visit of this block costs beyond what its units are due. */
    int leastVisit(Block block, boolean selected) {
        BenchTimes times = scene.times();
        int settling = settles(block.phase()) ? times.settling() : 0;
        if (block.demands().isEmpty()) {
            return settling;
        }
        boolean carried = selected && !block.links().isEmpty();
        if (settles(block.phase()) && times.settling() >= times.select()) {
            return settling - (carried ? times.select() : 0);
        }
        return settling + (carried ? 0 : times.select());
    }
}
