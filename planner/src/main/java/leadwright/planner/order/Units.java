package leadwright.planner.order;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.Obligation;

/**
 * Phase 5: readings in classes that behave alike.
 *
 * <p>Needs the insulation, ordinary and mains-on-part readings with their hookups. Gives units with their precedence.
 * Method: readings of one state, mode, phase and set of hookups begin as one class; classes are split until all members of
 * each have the same classes before them. Where the grain is fine, a class that several hookups may take holds one demand and
 * place only, so that the choice of hookup is free for each; readings that ask nothing of the wiring stay together where no
 * other readings share their places: they are taken in one round. Cost: linear in the readings for each round of splits,
 * but for hashing sets of them.
 */
final class Units {
    private final List<Obligation> readings;
    private final List<BitSet> hookups;
    private final List<Stand> stands;
    private final Grain grain;
    private final List<BitSet> before;
    private final List<String> demands;
    private int[] classes;

    private Units(Scene scene, List<Obligation> readings, List<BitSet> hookups, List<String> modes, Grain grain) {
        this.readings = readings;
        this.hookups = hookups;
        this.grain = grain;
        this.stands =
                readings.stream().map(each -> Stand.of(each, scene, modes)).toList();
        this.before = Precedence.of(scene, readings, hookups);
        this.demands = keys(readings);
        this.classes = new int[readings.size()];
    }

    /**
     * Outcome.
     *
     * @param demands keys of the demands, by their numbers
     */
    record Classes(List<Unit> units, List<String> demands) {}

    static Classes of(Scene scene, List<Obligation> readings, List<BitSet> hookups, List<String> modes, Grain grain) {
        Units units = new Units(scene, readings, hookups, modes, grain);
        units.split();
        return units.build();
    }

    /** Keys of the demands; a demand that many readings share is written out once. */
    static List<String> keys(List<Obligation> readings) {
        Map<Demand, String> known = new IdentityHashMap<>();
        return readings.stream()
                .map(each -> known.computeIfAbsent(each.demand(), Demand::key))
                .toList();
    }

    private void split() {
        int count = number(i -> List.<Object>of(
                stands.get(i),
                readings.get(i).phase(),
                hookups.get(i),
                readings.get(i).isTouch() && readings.get(i).state().fault() == Fault.NONE,
                grain.fine(readings.get(i).phase()) && hookups.get(i).cardinality() > 1
                        ? demands.get(i)
                                + readings.get(i)
                                        .place()
                                        .filter(place ->
                                                !readings.get(i).demand().isNothing() || contested(i))
                        : ""));
        while (true) {
            int[] old = classes.clone();
            Map<BitSet, BitSet> earlier = new IdentityHashMap<>();
            before.forEach(set -> earlier.computeIfAbsent(set, key -> classesOf(key, old)));
            int now = number(i -> List.<Object>of(old[i], earlier.get(before.get(i))));
            if (now == count) {
                return;
            }
            count = now;
        }
    }

    /** Whether the same place is touched in the same state for a reading that other hookups take: the touch may be shared. */
    private boolean contested(int reading) {
        for (int i = 0; i < readings.size(); i++) {
            if (readings.get(i).demand().isNothing()
                    && stands.get(i).equals(stands.get(reading))
                    && readings.get(i).place().equals(readings.get(reading).place())
                    && !hookups.get(i).equals(hookups.get(reading))) {
                return true;
            }
        }
        return false;
    }

    private static BitSet classesOf(BitSet readings, int[] classes) {
        BitSet set = new BitSet();
        readings.stream().forEach(i -> set.set(classes[i]));
        return set;
    }

    /** Numbers the classes of equal signature in the order of first appearance. */
    private int number(java.util.function.IntFunction<List<Object>> signature) {
        Map<List<Object>, Integer> seen = new LinkedHashMap<>();
        int[] next = new int[readings.size()];
        for (int i = 0; i < readings.size(); i++) {
            next[i] = seen.computeIfAbsent(signature.apply(i), key -> seen.size());
        }
        classes = next;
        return seen.size();
    }

    private Classes build() {
        Map<String, Integer> numbers = new LinkedHashMap<>();
        Map<String, Integer> places = new LinkedHashMap<>();
        List<List<Integer>> members = new ArrayList<>();
        for (int i = 0; i < classes.length; i++) {
            if (classes[i] == members.size()) {
                members.add(new ArrayList<>());
            }
            members.get(classes[i]).add(i);
        }
        List<Unit> units = new ArrayList<>();
        for (List<Integer> unit : members) {
            BitSet demandSet = new BitSet();
            BitSet placeSet = new BitSet();
            for (int i : unit) {
                Obligation each = readings.get(i);
                if (!each.demand().isNothing()) {
                    demandSet.set(numbers.computeIfAbsent(demands.get(i), key -> numbers.size()));
                }
                touched(each)
                        .ifPresent(place -> placeSet.set(
                                places.computeIfAbsent(demands.get(i) + " " + place, key -> places.size())));
            }
            // All members have the same classes before them.
            int sample = unit.get(0);
            units.add(new Unit(
                    units.size(),
                    stands.get(sample),
                    readings.get(sample).phase(),
                    hookups.get(sample),
                    demandSet,
                    placeSet,
                    classesOf(before.get(sample), classes),
                    unit.stream().map(readings::get).toList()));
        }
        return new Classes(units, List.copyOf(numbers.keySet()));
    }

    /** The place that the probe must be put on for a reading; wired points need none. */
    static Optional<String> touched(Obligation reading) {
        if (!reading.isTouch()) {
            return Optional.empty();
        }
        return reading.place()
                .filter(place -> !reading.demand().measured().contains("housing." + place)
                        && !reading.demand().measured().contains("port." + place));
    }
}
