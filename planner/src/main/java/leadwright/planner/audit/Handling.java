package leadwright.planner.audit;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import leadwright.catalog.device.Output;
import leadwright.catalog.device.TherapyKind;
import leadwright.catalog.house.ReplugUnderPower;
import leadwright.catalog.kit.Method;
import leadwright.planner.plan.Joint;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.MainsState.Polarity;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.Phase;
import leadwright.planner.plan.Step;

/**
 * What a hand may do in the present state: the table of the planning rules; each therapy output's own making safe with its
 * own wait; and no hand near what a source of the tester feeds.
 */
final class Handling {
    private static final Set<String> BARE =
            Set.of("skin-surface", "liquid-column", "probe-shaft", "metal", "painted", "insulating");

    private final BenchModel bench;
    private final Breaches breaches;
    private final Map<Output, Set<String>> connections = new LinkedHashMap<>();
    /** Outputs that are safe now, with the seconds waited since. */
    private final Map<Output, Integer> safe = new HashMap<>();

    private boolean sourceOn;

    Handling(BenchModel bench, Breaches breaches) {
        this.bench = bench;
        this.breaches = breaches;
        bench.device.outputs().forEach(output -> connections.put(output, Therapy.connections(bench.device, output)));
    }

    private enum Kind {
        INSULATED,
        THERAPY,
        BARE,
        EARTH_LEAD
    }

    /** A started device may charge: nothing is safe any more, and what is plugged is looked at before anything else. */
    void started(Step step, String where) {
        safe.clear();
        for (Map.Entry<Output, Set<String>> each : connections.entrySet()) {
            String id = each.getKey().id();
            boolean plugged =
                    bench.made.stream().anyMatch(joint -> each.getValue().contains(joint.from()));
            boolean said = step.text()
                    .contains(" " + id + " reads back disarmed, "
                            + (each.getKey().kind() == TherapyKind.DEFIBRILLATION
                                    ? "not charged"
                                    : "giving no output"));
            breaches.check(
                    !plugged || said,
                    Invariant.MAKE_SAFE,
                    where,
                    "starts the device with the therapy output " + id
                            + " plugged and does not say to see first that it is disarmed");
        }
    }

    void madeSafe(Step step, String where) {
        breaches.check(!bench.on, Invariant.MAKE_SAFE, where, "made safe while the device is on");
        Optional<Output> output = connections.keySet().stream()
                .filter(each -> step.place().equals(Optional.of(each.id())))
                .findFirst();
        breaches.check(
                output.isPresent(), Invariant.MAKE_SAFE, where, "does not say which therapy output is made safe");
        output.ifPresent(each -> safe.put(each, 0));
    }

    void waited(Step step) {
        safe.replaceAll((output, seconds) -> seconds + step.seconds());
    }

    /** A hand on the clip of the earth lead. */
    void clip(String where) {
        allowed(Kind.EARTH_LEAD, where);
    }

    /** A hand that joins or parts. */
    void joint(Step.Act does, Joint joint, String where) {
        boolean earth = bench.earthJoints.contains(joint);
        Set<String> ends = earth ? Set.of() : patientEnds(joint);
        boolean therapy = false;
        for (Map.Entry<Output, Set<String>> each : connections.entrySet()) {
            if (each.getValue().stream().anyMatch(ends::contains)) {
                therapy = true;
                output(each.getKey(), does, where);
            }
        }
        allowed(earth ? Kind.EARTH_LEAD : therapy ? Kind.THERAPY : kindOf(joint), where);
    }

    private void output(Output output, Step.Act does, String where) {
        Integer waited = safe.get(output);
        if (waited == null) {
            breaches.add(
                    Invariant.MAKE_SAFE,
                    where,
                    "handles the therapy output " + output.id() + ", which is not made safe");
            return;
        }
        long due = output.waitTime().map(time -> (time.amount() + 999) / 1000).orElse(0L);
        breaches.check(
                does != Step.Act.JOIN || waited >= due,
                Invariant.SAFE_WAIT,
                where,
                "plugs the therapy output " + output.id() + " " + waited + " s after it was made safe, not " + due
                        + " s");
    }

    /** The connections that hang on the near end of the joint as the bench stands, its own end included. */
    private Set<String> patientEnds(Joint joint) {
        Set<String> ends = new HashSet<>(Set.of(joint.from()));
        bench.made.stream()
                .filter(each -> each.to().equals(joint.from()))
                .forEach(each -> ends.addAll(patientEnds(each)));
        return ends;
    }

    private void allowed(Kind kind, String where) {
        hands(where, "handles " + kind);
        boolean off = bench.state.polarity() == Polarity.NONE && bench.state != MainsState.INSTALLED_ON;
        boolean fixed = bench.permanent && kind == Kind.EARTH_LEAD;
        if (off || fixed) {
            breaches.check(
                    kind != Kind.THERAPY || !bench.on,
                    Invariant.HANDLING,
                    where,
                    "handles a therapy output while the device is on");
            return;
        }
        boolean mayReplug = bench.plan.house().replugUnderPower() == ReplugUnderPower.AFTER_EARTH_AND_TOUCH
                && bench.device.forbids().stream().noneMatch(each -> each.test().equals("replug-under-power"));
        boolean allowed = kind == Kind.INSULATED && bench.state.fault() == Fault.NONE && mayReplug && passed();
        breaches.check(allowed, Invariant.HANDLING, where, "handles " + kind + " in state " + bench.state.word());
    }

    /** All earth readings, and all no-fault touch readings of the present polarity. */
    private boolean passed() {
        return bench.plan.readings().stream()
                .filter(reading -> dueBeforeHandling(reading.obligation()))
                .allMatch(reading -> bench.taken.contains(reading.id()));
    }

    private boolean dueBeforeHandling(Obligation what) {
        boolean touch = what.isTouch()
                && what.state().polarity() == bench.state.polarity()
                && what.state().fault() == Fault.NONE;
        return touch || what.phase() == Phase.EARTH;
    }

    private Kind kindOf(Joint joint) {
        boolean bare = bench.device.connections().stream()
                .filter(connection -> connection.name().equals(joint.from()))
                .anyMatch(connection -> BARE.contains(connection.terminal()));
        return bare ? Kind.BARE : Kind.INSULATED;
    }

    /** A reading that puts a source of the tester on what is wired; insulation readings discharge in their own step. */
    static boolean feeds(Obligation what) {
        return what.phase() == Phase.MAINS_ON_PART
                || what.phase() == Phase.ORDINARY && what.method().equals(Optional.of(Method.ALTERNATIVE));
    }

    void read(Obligation what, String where) {
        if (feeds(what)) {
            sourceOn = true;
        } else {
            hands(where, "reads something else");
        }
    }

    void sourceOff() {
        sourceOn = false;
    }

    /** Nobody starts, plugs or touches while a source is on what is wired. */
    void hands(String where, String what) {
        breaches.check(!sourceOn, Invariant.SOURCE_OFF, where, what + " with the source still on what is wired");
    }
}
