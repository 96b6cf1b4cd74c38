package leadwright.planner.audit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.Phase;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;

/** What must come before what: looked at from the readings in the order in which the steps take them. */
final class PrecedenceAudit {
    private final Plan plan;
    private final Breaches breaches;
    private final List<Reading> order = new ArrayList<>();
    private final Map<String, Step> stepOf = new HashMap<>();

    PrecedenceAudit(Plan plan, Breaches breaches) {
        this.plan = plan;
        this.breaches = breaches;
    }

    void run() {
        numbers();
        inOrder();
        for (int i = 0; i < order.size(); i++) {
            Reading reading = order.get(i);
            Obligation what = reading.obligation();
            List<Reading> later = order.subList(i + 1, order.size());
            phases(reading, later);
            if (what.state().fault() != Fault.NONE) {
                faults(reading, later);
            }
            if (what.phase() == Phase.MAINS_ON_PART) {
                mainsLast(reading, later);
            }
            stopRule(reading);
        }
    }

    private void numbers() {
        int number = 1;
        for (Step step : plan.steps()) {
            breaches.check(
                    step.number() == number, Invariant.STEP_NUMBERS, "step " + step.number(), "is not " + number);
            number++;
        }
        breaches.check(
                !plan.steps().isEmpty() && looksOver(plan.steps().get(0)),
                Invariant.LOOK_FIRST,
                "step 1",
                "the plan does not begin with the look over");
        breaches.check(
                !plan.steps().isEmpty()
                        && plan.steps().stream()
                                .dropWhile(step -> step.does() != Step.Act.RESTORE)
                                .allMatch(step -> step.does() == Step.Act.RESTORE
                                        || step.does() == Step.Act.READ
                                        || step.does() == Step.Act.LOOK
                                        || step.does() == Step.Act.WAIT)
                        && plan.steps().stream().anyMatch(step -> step.does() == Step.Act.RESTORE),
                Invariant.PUT_BACK_LAST,
                "end",
                "the plan does not end with putting back");
    }

    /** The look over, not just any look: it takes the whole time of one. */
    private boolean looksOver(Step step) {
        long seconds = (plan.house().times().action("look-over").amount() + 999) / 1000;
        return step.does() == Step.Act.LOOK && step.seconds() == seconds;
    }

    private void inOrder() {
        Map<String, Reading> byId = new HashMap<>();
        plan.readings()
                .forEach(reading -> breaches.check(
                        byId.put(reading.id(), reading) == null,
                        Invariant.READ_ONCE,
                        reading.id(),
                        "two readings of one id"));
        for (Step step : plan.steps()) {
            if (step.does() != Step.Act.READ) {
                continue;
            }
            Reading reading = step.reading().map(byId::get).orElse(null);
            if (reading == null) {
                breaches.add(Invariant.READ_ONCE, "step " + step.number(), "takes no reading of the plan");
                continue;
            }
            breaches.check(stepOf.put(reading.id(), step) == null, Invariant.READ_ONCE, reading.id(), "is taken twice");
            order.add(reading);
        }
        plan.readings()
                .forEach(reading -> breaches.check(
                        stepOf.containsKey(reading.id()), Invariant.READ_ONCE, reading.id(), "is never taken"));
    }

    private void phases(Reading reading, List<Reading> later) {
        Phase phase = reading.obligation().phase();
        boolean leakage = phase == Phase.ORDINARY || phase == Phase.MAINS_ON_PART;
        for (Reading each : later) {
            Phase next = each.obligation().phase();
            if (next == Phase.EARTH && (leakage || phase == Phase.INSULATION)) {
                breaches.add(Invariant.EARTH_FIRST, reading.id(), "comes before the earth reading " + each.id());
            }
            if (next == Phase.INSULATION && leakage) {
                breaches.add(Invariant.INSULATION_FIRST, reading.id(), "comes before the insulation " + each.id());
            }
        }
    }

    private void faults(Reading reading, List<Reading> later) {
        Obligation what = reading.obligation();
        for (Reading each : later) {
            Obligation next = each.obligation();
            boolean noFaultOfPolarity = next.state().polarity() == what.state().polarity()
                    && next.state().fault() == Fault.NONE;
            if (noFaultOfPolarity && next.isTouch()) {
                breaches.add(
                        Invariant.TOUCH_BEFORE_FAULT,
                        reading.id(),
                        "is under a fault before the touch reading " + each.id());
            }
            if (noFaultOfPolarity && next.phase() == Phase.ORDINARY && sameSubject(what, next)) {
                breaches.add(
                        Invariant.NO_FAULT_FIRST,
                        reading.id(),
                        "is under a fault before its own no-fault " + each.id());
            }
        }
    }

    private static boolean sameSubject(Obligation a, Obligation b) {
        return a.quantity() == b.quantity()
                && a.demand().key().equals(b.demand().key())
                && a.place().equals(b.place())
                && a.of().equals(b.of());
    }

    private void mainsLast(Reading reading, List<Reading> later) {
        Obligation what = reading.obligation();
        Set<String> parts = parts(what.demand().measured());
        for (Reading each : later) {
            Obligation next = each.obligation();
            if (next.phase() != Phase.ORDINARY) {
                continue;
            }
            boolean touch = next.isTouch() && next.state().fault() == Fault.NONE;
            Set<String> own = parts(next.demand().measured());
            own.retainAll(parts);
            boolean sameHookup = next.phase() == Phase.ORDINARY && each.hookup().equals(reading.hookup());
            if (touch || sameHookup || !own.isEmpty()) {
                breaches.add(
                        Invariant.MAINS_ON_PART_LAST,
                        reading.id(),
                        "puts mains on a part before the reading " + each.id());
            }
        }
    }

    private Set<String> parts(SortedSet<String> connections) {
        Set<String> parts = new HashSet<>();
        for (AppliedPart part : plan.device().appliedParts()) {
            if (part.connections().stream().anyMatch(each -> connections.contains(each.name()))) {
                parts.add(part.id());
            }
        }
        return parts;
    }

    private void stopRule(Reading reading) {
        Obligation what = reading.obligation();
        boolean touch = what.isTouch() && what.state().fault() == Fault.NONE;
        boolean patient = Set.of(QuantityKind.PATIENT_LEAKAGE, QuantityKind.TOTAL_PATIENT_LEAKAGE)
                        .contains(what.quantity())
                && what.state().fault() == Fault.NONE;
        boolean due =
                what.quantity() == QuantityKind.EARTH_RESISTANCE && what.limit().isPresent()
                        || what.quantity() == QuantityKind.INSULATION_RESISTANCE
                        || (touch || patient) && what.state().polarity() != MainsState.Polarity.NONE;
        Optional<String> onFail = Optional.ofNullable(stepOf.get(reading.id())).flatMap(Step::onFail);
        breaches.check(
                !due || onFail.map(text -> !text.isBlank()).orElse(false),
                Invariant.STOP_RULE,
                reading.id(),
                "has no stop rule");
        boolean handsOff = what.phase() == Phase.MAINS_ON_PART;
        Optional<String> caution = Optional.ofNullable(stepOf.get(reading.id())).flatMap(Step::caution);
        breaches.check(
                !handsOff || caution.isPresent(),
                Invariant.CAUTION,
                reading.id(),
                "has mains on a part and no caution");
        breaches.check(
                what.phase() != Phase.INSULATION
                        || caution.filter(text -> text.contains("hands off")).isPresent(),
                Invariant.CAUTION,
                reading.id(),
                "has the insulation voltage and no caution");
    }
}
