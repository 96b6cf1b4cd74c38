package leadwright.planner.order;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Connection;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.MainsState.Polarity;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.Phase;

/**
 * Which readings must have been taken before a reading.
 *
 * <p>Needs the readings with their hookups. Gives one set for each reading; equal sets are one object. Insulation comes before
 * all else; for each polarity every touch reading without a fault, and each subject without a fault, before a fault; mains on
 * a part after every touch reading without a fault, every ordinary reading of that part, and every one that its hookup alone
 * may take. Cost: linear in the readings but for joining sets.
 */
final class Precedence {
    private final Scene scene;
    private final List<Obligation> readings;
    private final List<BitSet> hookups;
    private final BitSet insulation = new BitSet();
    private final BitSet touches = new BitSet();
    private final Map<Polarity, BitSet> touchesOf = new HashMap<>();
    private final Map<List<Object>, BitSet> subjects = new HashMap<>();
    private final Map<String, BitSet> tokens = new HashMap<>();
    private final Map<BitSet, BitSet> alone = new HashMap<>();
    private final Map<BitSet, BitSet> known = new HashMap<>();
    private final Map<List<Object>, BitSet> underSource = new HashMap<>();
    private final Map<Demand, Set<String>> wiredAll = new IdentityHashMap<>();
    private final Map<Demand, Set<String>> wiredMeasured = new IdentityHashMap<>();
    private final List<String> demands;

    private Precedence(Scene scene, List<Obligation> readings, List<BitSet> hookups) {
        this.scene = scene;
        this.readings = readings;
        this.hookups = hookups;
        this.demands = Units.keys(readings);
    }

    /** @param hookups for each reading, those that may take it */
    static List<BitSet> of(Scene scene, List<Obligation> readings, List<BitSet> hookups) {
        Precedence precedence = new Precedence(scene, readings, hookups);
        for (int i = 0; i < readings.size(); i++) {
            precedence.enter(i);
        }
        List<BitSet> before = new ArrayList<>();
        for (int i = 0; i < readings.size(); i++) {
            BitSet set = precedence.before(i);
            before.add(precedence.known.computeIfAbsent(set, key -> key));
        }
        return before;
    }

    private void enter(int i) {
        Obligation each = readings.get(i);
        if (each.phase() == Phase.INSULATION) {
            insulation.set(i);
        } else if (each.phase() == Phase.ORDINARY) {
            if (each.state().fault() == Fault.NONE) {
                if (each.isTouch()) {
                    touches.set(i);
                    touchesOf
                            .computeIfAbsent(each.state().polarity(), key -> new BitSet())
                            .set(i);
                }
                subjects.computeIfAbsent(subject(i), key -> new BitSet()).set(i);
            }
            tokens(each)
                    .forEach(token ->
                            tokens.computeIfAbsent(token, key -> new BitSet()).set(i));
            if (hookups.get(i).cardinality() == 1) {
                alone.computeIfAbsent(hookups.get(i), key -> new BitSet()).set(i);
            }
        }
    }

    private List<Object> subject(int i) {
        Obligation each = readings.get(i);
        return List.of(
                each.quantity(),
                demands.get(i),
                each.place(),
                each.of(),
                each.state().polarity());
    }

    private BitSet before(int i) {
        Obligation each = readings.get(i);
        if (each.phase() == Phase.INSULATION) {
            return new BitSet();
        }
        if (each.phase() == Phase.MAINS_ON_PART) {
            Set<String> own = tokens(each);
            return underSource.computeIfAbsent(List.of(hookups.get(i), own), key -> {
                BitSet set = (BitSet) insulation.clone();
                set.or(touches);
                set.or(alone.getOrDefault(hookups.get(i), new BitSet()));
                own.forEach(token -> set.or(tokens.getOrDefault(token, new BitSet())));
                return set;
            });
        }
        BitSet set = (BitSet) insulation.clone();
        if (each.phase() == Phase.ORDINARY && each.state().fault() != Fault.NONE) {
            set.or(touchesOf.getOrDefault(each.state().polarity(), new BitSet()));
            set.or(subjects.getOrDefault(subject(i), new BitSet()));
        }
        return set;
    }

    /** Applied parts that a reading is of, and housing and port connections that it wires. */
    private Set<String> tokens(Obligation reading) {
        Demand demand = reading.demand();
        Set<String> set = new HashSet<>(
                reading.phase() == Phase.MAINS_ON_PART
                        ? wiredMeasured.computeIfAbsent(demand, key -> wired(key.measured()))
                        : wiredAll.computeIfAbsent(demand, key -> wired(key.all())));
        for (String subject : reading.of()) {
            for (AppliedPart part : scene.device().appliedParts()) {
                if (subject.equals(part.id()) || subject.startsWith(part.id() + ".")) {
                    set.add("part " + part.id());
                }
            }
        }
        return set;
    }

    private Set<String> wired(Set<String> names) {
        Set<String> set = new HashSet<>();
        for (String name : names) {
            Connection known = scene.connections().get(name);
            boolean patient = known != null && known.kind() == Connection.Kind.PATIENT;
            set.add(patient ? "part " + known.part() : name);
        }
        return set;
    }
}
