package leadwright.planner.audit;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import leadwright.catalog.kit.Component;
import leadwright.planner.Plan;
import leadwright.planner.mistake.Exposure;
import leadwright.planner.mistake.ProofKind;
import leadwright.planner.mistake.ProofStep;
import leadwright.planner.mistake.Watch;
import leadwright.planner.plan.Joint;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.MainsState.Polarity;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.Phase;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;

/**
 * The proof steps of a plan: each that is said to be there is there, in time for the readings that it is for and in a state in
 * which a hand may do it; and what no step shows is said.
 *
 * <p>Needs the plan with what it foresees; which slips are silent and which step shows which is taken from there, when and in
 * which state a step is done is this class's own table. Cost: linear in the steps.
 */
final class ProofAudit {
    /** Where hands go along leads, press and tug. */
    private static final Set<ProofKind> HANDS = Set.of(
            ProofKind.COUNT_AND_TUG,
            ProofKind.FOLLOW_TO_JACK,
            ProofKind.PRESS_AND_LOOK,
            ProofKind.READ_BACK_BY_TWO,
            ProofKind.NOTHING_ELSE_TOUCHES);

    private final Plan plan;
    private final Breaches breaches;
    private final Map<String, Reading> readings = new HashMap<>();
    private final Set<Joint> earthJoints;

    ProofAudit(Plan plan, Breaches breaches) {
        this.plan = plan;
        this.breaches = breaches;
        this.earthJoints = new BenchModel(plan).earthJoints;
        plan.readings().forEach(reading -> readings.put(reading.id(), reading));
    }

    void run() {
        Watch watch = plan.foresight().watch();
        Set<String> named = new HashSet<>();
        for (ProofStep proof : watch.proofs()) {
            named.add(proof.kind().word());
            if (proof.kind() != ProofKind.STATE_TICK) {
                stands(proof);
            }
        }
        boolean handled = false;
        for (Step step : plan.steps()) {
            handled = switch (step.does()) {
                case JOIN, PART -> true;
                case SWITCH, START, READ, TOUCH -> false;
                default -> handled;
            };
            boolean joined = handled;
            word(step).ifPresent(word -> {
                String where = "step " + step.number();
                breaches.check(
                        named.contains(word), Invariant.PROOF_STEP, where, word + " is not among the plan's proofs");
                breaches.check(
                        step.does() == Step.Act.LOOK
                                && step.joint().isEmpty()
                                && step.reading().isEmpty(),
                        Invariant.PROOF_STEP,
                        where,
                        "a proof step that does more than look");
                state(step, word, joined, where);
            });
        }
        said(watch);
    }

    private static Optional<String> word(Step step) {
        return step.place()
                .filter(place -> place.startsWith(Step.PROOF))
                .map(place -> place.substring(Step.PROOF.length()));
    }

    /**
     * No hand on leads with the mains on, but on those that the table of handling let be joined in this state just before; no look
     * at what only the mains shows with it off.
     */
    private void state(Step step, String word, boolean joined, String where) {
        MainsState state = step.state();
        boolean dead = state.polarity() == Polarity.NONE && state != MainsState.INSTALLED_ON;
        boolean plant = new BenchModel(plan).permanent;
        for (ProofKind kind : HANDS) {
            breaches.check(
                    !kind.word().equals(word) || dead || (kind == ProofKind.NOTHING_ELSE_TOUCHES ? plant : joined),
                    Invariant.PROOF_HANDLING,
                    where,
                    word + " in state " + state.word());
        }
        boolean runs = word.equals(ProofKind.DEVICE_RUNS.word());
        boolean opens = word.equals(ProofKind.SUPPLY_REALLY_OPENS.word());
        breaches.check(
                !runs && !opens || !dead, Invariant.PROOF_STEP, where, word + " with the mains off shows nothing");
        breaches.check(
                !opens || state.fault() == Fault.SUPPLY_OPEN,
                Invariant.PROOF_STEP,
                where,
                word + " with the supply closed");
    }

    private void stands(ProofStep proof) {
        boolean clip = proof.kind() == ProofKind.LOOK_AT_CLIP;
        boolean round = proof.kind() == ProofKind.NOTHING_ELSE_TOUCHES;
        boolean seen = false;
        boolean due = false;
        boolean late = false;
        int seconds = 0;
        for (Step step : plan.steps()) {
            // What a look was at is changed: it is looked at again, or it was for nothing.
            seen &= !(clip && step.does() == Step.Act.CLIP || !due && joins(proof, step));
            if (word(step).equals(Optional.of(proof.kind().word())) && mine(proof, step)) {
                seen = true;
                seconds += step.seconds();
            }
            Optional<Reading> reading = step.reading().map(readings::get).filter(each -> isFor(proof, each));
            if (reading.isPresent()) {
                due = true;
                late |= !seen;
                // What was seen before the earth readings is seen again after them.
                boolean earth = reading.get().obligation().phase() == Phase.EARTH;
                seen &= !(round && earth) || nextIsEarth(step);
            }
        }
        breaches.check(
                !late,
                Invariant.PROOF_STEP,
                proof.id(),
                "is not done between what it looks at and the first reading that it is for");
        breaches.check(
                seconds == proof.seconds(),
                Invariant.SECONDS,
                proof.id(),
                "takes " + seconds + " s in the steps, the plan says " + proof.seconds());
    }

    /** A lead plugged in the hookup that is looked over. */
    private boolean joins(ProofStep proof, Step step) {
        return proof.hookup().isPresent()
                && proof.kind() != ProofKind.LOOK_AT_CLIP
                && step.does() == Step.Act.JOIN
                && step.hookup().equals(proof.hookup())
                && step.joint().map(Joints::plain).filter(earthJoints::contains).isEmpty();
    }

    private boolean nextIsEarth(Step step) {
        return plan.steps().stream()
                .skip(step.number())
                .flatMap(each -> each.reading().stream())
                .map(readings::get)
                .filter(reading -> reading != null)
                .anyMatch(reading -> reading.obligation().phase() == Phase.EARTH);
    }

    private static boolean mine(ProofStep proof, Step step) {
        return proof.hookup().isEmpty() || step.hookup().equals(proof.hookup());
    }

    /** Readings that a proof step must come before. */
    private static boolean isFor(ProofStep proof, Reading reading) {
        Obligation what = reading.obligation();
        boolean leaks = what.phase() == Phase.ORDINARY || what.phase() == Phase.MAINS_ON_PART;
        boolean wired =
                (leaks || what.phase() == Phase.INSULATION) && !what.demand().isNothing();
        return switch (proof.kind()) {
            case COUNT_AND_TUG, FOLLOW_TO_JACK, PRESS_AND_LOOK, READ_BACK_BY_TWO ->
                wired && reading.hookup().equals(proof.hookup());
            case LOOK_AT_CLIP -> what.phase() == Phase.EARTH && reading.hookup().equals(proof.hookup());
            case NOTHING_ELSE_TOUCHES -> leaks || what.phase() == Phase.EARTH;
            case IDLE_JACKS_LOOKED_UP -> leaks;
            case DEVICE_RUNS -> leaks && (what.state().powered() || what.state() == MainsState.INSTALLED_ON);
            case SUPPLY_REALLY_OPENS -> leaks && what.state().fault() == Fault.SUPPLY_OPEN;
            case COMPONENT_SHOWN -> leaks && what.component().equals(Optional.of(Component.DC));
            case STATE_TICK -> false;
        };
    }

    private void said(Watch watch) {
        Set<String> shown = new HashSet<>();
        watch.proofs().forEach(proof -> shown.addAll(proof.exposes()));
        List<String> left = watch.findings().stream()
                .filter(finding -> finding.exposure() == Exposure.SILENT)
                .map(finding -> finding.slip().id())
                .filter(id -> !shown.contains(id))
                .toList();
        breaches.check(
                left.equals(watch.remaining()),
                Invariant.SILENT_SAID,
                "foresight",
                left.size() + " slips stay unseen, the plan lists "
                        + watch.remaining().size());
        for (ProofStep proof : watch.proofs()) {
            Set<String> silent = new HashSet<>();
            watch.findings().stream()
                    .filter(finding -> finding.exposure() == Exposure.SILENT)
                    .filter(finding -> proof.kind().exposes(finding.slip().kind()))
                    .forEach(finding -> silent.add(finding.slip().id()));
            breaches.check(
                    silent.containsAll(proof.exposes()),
                    Invariant.SILENT_SAID,
                    proof.id(),
                    "is said to show what it does not");
        }
    }
}
