package leadwright.planner.order;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Connection;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.Phase;

/**
 * Phase 5: readings in classes that behave alike.
 *
 * <p>Needs the insulation, ordinary and mains-on-part readings with their hookups. Gives units with their precedence.
 * Method: readings of one state, mode, phase and set of hookups begin as one class; classes are split until all members of
 * each have the same classes before them. Where the grain is fine, a class that several hookups may take holds one demand and
 * place only, so that the choice of hookup is free for each; readings that ask nothing of the wiring always stay together:
 * they are taken in one round. Cost: quadratic in the readings.
 */
final class Units {
    private final Scene scene;
    private final List<Obligation> readings;
    private final List<BitSet> hookups;
    private final List<Stand> stands;
    private final Grain grain;
    private final List<BitSet> before = new ArrayList<>();
    private final List<Set<String>> tokens = new ArrayList<>();
    private int[] classes;

    private Units(Scene scene, List<Obligation> readings, List<BitSet> hookups, List<String> modes, Grain grain) {
        this.scene = scene;
        this.readings = readings;
        this.hookups = hookups;
        this.grain = grain;
        this.stands =
                readings.stream().map(each -> Stand.of(each, scene, modes)).toList();
        readings.forEach(each -> tokens.add(tokens(each)));
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
        units.precede();
        units.split();
        return units.build();
    }

    private void precede() {
        for (int i = 0; i < readings.size(); i++) {
            BitSet set = new BitSet();
            for (int j = 0; j < readings.size(); j++) {
                if (i != j && precedes(j, i)) {
                    set.set(j);
                }
            }
            before.add(set);
        }
    }

    /** Whether reading {@code a} must come before reading {@code b}. */
    private boolean precedes(int a, int b) {
        Obligation first = readings.get(a);
        Obligation second = readings.get(b);
        if (first.phase() == Phase.INSULATION) {
            return second.phase() != Phase.INSULATION;
        }
        if (first.phase() != Phase.ORDINARY) {
            return false;
        }
        boolean touch = first.isTouch() && first.state().fault() == Fault.NONE;
        if (second.phase() == Phase.ORDINARY) {
            return second.state().fault() != Fault.NONE
                    && first.state().fault() == Fault.NONE
                    && first.state().polarity() == second.state().polarity()
                    && (touch || sameSubject(first, second));
        }
        if (second.phase() == Phase.MAINS_ON_PART) {
            boolean together =
                    hookups.get(a).cardinality() == 1 && hookups.get(a).equals(hookups.get(b));
            return touch || together || shareToken(a, b);
        }
        return false;
    }

    private static boolean sameSubject(Obligation one, Obligation other) {
        return one.quantity() == other.quantity()
                && one.demand().equals(other.demand())
                && one.place().equals(other.place())
                && one.of().equals(other.of());
    }

    private boolean shareToken(int a, int b) {
        for (String each : tokens.get(b)) {
            if (tokens.get(a).contains(each)) {
                return true;
            }
        }
        return false;
    }

    /** Applied parts that a reading is of, and housing and port connections that it wires. */
    private Set<String> tokens(Obligation reading) {
        Set<String> set = new HashSet<>();
        boolean source = reading.phase() == Phase.MAINS_ON_PART;
        for (String name :
                source ? reading.demand().measured() : reading.demand().all()) {
            Connection known = scene.connections().get(name);
            if (known != null && known.kind() == Connection.Kind.PATIENT) {
                set.add("part " + known.part());
            } else {
                set.add(name);
            }
        }
        for (String subject : reading.of()) {
            for (AppliedPart part : scene.device().appliedParts()) {
                if (subject.equals(part.id()) || subject.startsWith(part.id() + ".")) {
                    set.add("part " + part.id());
                }
            }
        }
        return set;
    }

    private void split() {
        int count = number(i -> List.<Object>of(
                stands.get(i),
                readings.get(i).phase(),
                hookups.get(i),
                readings.get(i).isTouch() && readings.get(i).state().fault() == Fault.NONE,
                grain.fine(readings.get(i).phase()) && hookups.get(i).cardinality() > 1
                        ? readings.get(i).demand().key()
                                + readings.get(i)
                                        .place()
                                        .filter(place ->
                                                !readings.get(i).demand().isNothing())
                        : ""));
        while (true) {
            int[] old = classes.clone();
            int now = number(i -> {
                Set<Integer> earlier = new TreeSet<>();
                before.get(i).stream().forEach(j -> earlier.add(old[j]));
                return List.<Object>of(old[i], earlier);
            });
            if (now == count) {
                return;
            }
            count = now;
        }
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
        Map<String, Integer> demands = new LinkedHashMap<>();
        Map<String, Integer> places = new LinkedHashMap<>();
        int count = 0;
        for (int each : classes) {
            count = Math.max(count, each + 1);
        }
        List<Unit> units = new ArrayList<>();
        for (int c = 0; c < count; c++) {
            BitSet demandSet = new BitSet();
            BitSet placeSet = new BitSet();
            BitSet beforeSet = new BitSet();
            List<Obligation> members = new ArrayList<>();
            int sample = -1;
            for (int i = 0; i < classes.length; i++) {
                if (classes[i] != c) {
                    continue;
                }
                sample = i;
                Obligation each = readings.get(i);
                members.add(each);
                if (!each.demand().isNothing()) {
                    demandSet.set(demands.computeIfAbsent(each.demand().key(), key -> demands.size()));
                }
                touched(each)
                        .ifPresent(place -> placeSet.set(
                                places.computeIfAbsent(each.demand().key() + " " + place, key -> places.size())));
                before.get(i).stream().forEach(j -> beforeSet.set(classes[j]));
            }
            units.add(new Unit(
                    c,
                    stands.get(sample),
                    readings.get(sample).phase(),
                    hookups.get(sample),
                    demandSet,
                    placeSet,
                    beforeSet,
                    members));
        }
        return new Classes(units, List.copyOf(demands.keySet()));
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
