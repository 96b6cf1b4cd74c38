package leadwright.planner.judge;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.house.DecisionRule;
import leadwright.catalog.kit.Accuracy;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.readings.Nulls;
import leadwright.catalog.readings.Shown;
import leadwright.catalog.readings.Taken;
import leadwright.catalog.rules.Limit;

/** Weighs the readings one by one: correction, uncertainty, comparison, and what a person must look at. */
final class Weighing {

    private static final String RANGE_TOO_SHORT =
            "the tester's range ends on the wrong side of the limit: it cannot tell";

    private final PlannedTest plan;
    private final DecisionRule rule;
    private final Mains mains;
    private final Premises premises;
    private final Twins twins;
    private final Optional<Previous> previous;

    Weighing(
            PlannedTest plan,
            DecisionRule rule,
            Mains mains,
            Premises premises,
            Twins twins,
            Optional<Previous> previous) {
        this.plan = plan;
        this.rule = rule;
        this.mains = mains;
        this.premises = premises;
        this.twins = twins;
        this.previous = previous;
    }

    Judged judge(PlannedReading planned, Taken taken) {
        if (taken.shown().isEmpty()) {
            String why = "not taken: " + taken.notTaken().orElse("");
            return plain(planned, taken, Verdict.NOT_JUDGED, why);
        }
        Shown shown = taken.shown().get().value();
        Optional<Premises.Check> check = premises.check(planned.id());
        if (check.isPresent()) {
            Optional<String> pastDue = premises.pastDue();
            boolean good = check.get().good() && pastDue.isEmpty();
            return plain(
                    planned,
                    taken,
                    good ? Verdict.AS_EXPECTED : Verdict.VOID,
                    pastDue.orElse(check.get().words()));
        }
        if (planned.limit().isEmpty()) {
            return written(planned, taken, shown);
        }
        return weigh(planned, taken, shown, planned.limit().get());
    }

    /** Without a limit it is written down, and set beside the last value where it says something of the device. */
    private Judged written(PlannedReading planned, Taken taken, Shown shown) {
        Optional<String> voided = premises.voids(planned);
        Verdict verdict = voided.isPresent() ? Verdict.VOID : Verdict.NOT_JUDGED;
        String because = voided.orElse("no limit: written down");
        boolean ofDevice = planned.isLeakage() || planned.isThroughLeads();
        if (!ofDevice || !(shown instanceof Shown.Value value)) {
            return plain(planned, taken, verdict, because);
        }
        Counted counted = counted(planned, value.amount());
        Optional<Quantity> uncertainty = uncertainty(planned, counted);
        Optional<Judged.Before> before = previous.flatMap(each -> each.of(planned));
        List<String> flags =
                before.flatMap(each -> Bounds.far(each, counted.value(), uncertainty, Optional.empty())).stream()
                        .toList();
        return new Judged(
                planned,
                taken,
                Optional.of(counted.value()),
                counted.leadsOff(),
                counted.atNominal(),
                Optional.empty(),
                uncertainty,
                Optional.empty(),
                Optional.empty(),
                verdict,
                because,
                flags,
                before);
    }

    /** A value of the device itself: less the leads, at nominal mains. */
    private record Counted(Quantity value, Optional<Quantity> leadsOff, boolean atNominal) {}

    private Counted counted(PlannedReading planned, Quantity amount) {
        Optional<Quantity> leadsOff = leadsOff(planned);
        Quantity ofDevice = leadsOff.map(off -> minus(amount, off)).orElse(amount);
        boolean atNominal = mains.corrects(planned, plan);
        return new Counted(atNominal ? mains.corrected(ofDevice) : ofDevice, leadsOff, atNominal);
    }

    private Optional<Quantity> uncertainty(PlannedReading planned, Counted counted) {
        return standard(planned, counted.value(), counted.atNominal(), counted.leadsOff())
                .map(u -> Uncertainty.expanded(counted.value(), u));
    }

    private static Judged plain(PlannedReading planned, Taken taken, Verdict verdict, String because) {
        return new Judged(
                planned,
                taken,
                Optional.empty(),
                Optional.empty(),
                false,
                planned.limit(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                verdict,
                because,
                List.of(),
                Optional.empty());
    }

    private Judged weigh(PlannedReading planned, Taken taken, Shown shown, Limit limit) {
        List<String> flags = new ArrayList<>();
        Optional<Quantity> amount = Bounds.counted(shown, limit);
        if (amount.isEmpty()) {
            return unread(planned, taken, shown, limit);
        }
        Counted of = counted(planned, amount.get());
        Quantity counted = of.value();
        Optional<Quantity> leadsOff = of.leadsOff();
        boolean atNominal = of.atNominal();
        Optional<Double> standardAtLimit = standard(planned, limit.value(), atNominal, leadsOff);
        Optional<Quantity> guardBand = standardAtLimit.map(u -> Uncertainty.expanded(limit.value(), u));
        Optional<Quantity> uncertainty = uncertainty(planned, of);
        Verdict verdict = Decision.of(limit, counted, guardBand);
        String because = Bounds.words(verdict, limit, guardBand, rule);
        Optional<String> voided = premises.voids(planned).or(() -> negative(planned, counted));
        boolean outright = verdict == Verdict.FAIL || verdict == Verdict.FAIL_INSIDE_UNCERTAINTY;
        // A failure stands even where a premise is in doubt, a tester past its calibration apart: that one proves
        // nothing.
        boolean unsure = outright && !(shown instanceof Shown.Value);
        if (unsure && premises.pastDue().isEmpty()) {
            verdict = Verdict.NOT_JUDGED;
            because = RANGE_TOO_SHORT;
        } else if (voided.isPresent() && (!outright || premises.pastDue().isPresent())) {
            verdict = Verdict.VOID;
            because = voided.get();
        } else if (rule == DecisionRule.GUARD_BAND && guardBand.isEmpty() && verdict == Verdict.PASS) {
            verdict = Verdict.NOT_JUDGED;
            because = "inside the limit, but the kit states no accuracy, so that there is no guard band to keep";
        }
        flag(planned, limit, counted, leadsOff, guardBand.isPresent(), flags);
        Optional<Judged.Before> before = previous.flatMap(each -> each.of(planned));
        before.flatMap(each -> Bounds.far(each, counted, uncertainty, Optional.of(limit)))
                .ifPresent(flags::add);
        twins.same(planned).ifPresent(flags::add);
        if (verdict.accepted(rule)) {
            planned.expected().flatMap(each -> each.unlike(amount.get())).ifPresent(flags::add);
        }
        boolean near = verdict == Verdict.PASS_INSIDE_UNCERTAINTY || verdict == Verdict.FAIL_INSIDE_UNCERTAINTY;
        Optional<Double> conforming = near
                ? standardAtLimit.map(u -> Uncertainty.conformance(Bounds.inside(limit, counted), u))
                : Optional.empty();
        return new Judged(
                planned,
                taken,
                Optional.of(counted),
                leadsOff,
                atNominal,
                Optional.of(limit),
                uncertainty,
                guardBand,
                conforming,
                verdict,
                because,
                flags,
                before);
    }

    private Judged unread(PlannedReading planned, Taken taken, Shown shown, Limit limit) {
        Optional<String> pastDue = premises.pastDue();
        boolean beyond = Bounds.beyond(shown, limit);
        Verdict verdict = pastDue.isPresent() ? Verdict.VOID : beyond ? Verdict.FAIL : Verdict.NOT_JUDGED;
        String because = beyond
                ? "beyond the limit, and beyond what the tester shows"
                : shown instanceof Shown.NoPath
                        ? "no path, and how far the tester's range goes is not said: write it as '> 200 Mohm'"
                        : RANGE_TOO_SHORT;
        return plain(planned, taken, verdict, pastDue.orElse(because));
    }

    // ---- the leads

    private Optional<Quantity> leadsOff(PlannedReading planned) {
        return premises.nulls()
                .filter(nulls -> planned.isThroughLeads() && !nulls.takenOff())
                .map(nulls -> nulls.end()
                        .filter(end -> end.compareTo(nulls.start()) < 0)
                        .orElse(nulls.start()));
    }

    private static Quantity minus(Quantity amount, Quantity off) {
        return Quantity.of(amount.dimension(), Math.subtractExact(amount.amount(), off.amount()));
    }

    /** Less than nothing, by more than the tester's own floor: the leads were nulled wrongly. */
    private Optional<String> negative(PlannedReading planned, Quantity counted) {
        long floor = planned.function()
                .flatMap(each -> Optional.ofNullable(plan.bench().accuracy().get(each)))
                .map(each -> each.floor().amount())
                .orElse(0L);
        return counted.amount() < -floor
                ? Optional.of(
                        "less than nothing by more than the tester's floor: the leads were nulled wrongly, or have"
                                + " changed; null again and repeat")
                : Optional.empty();
    }

    // ---- uncertainty

    /** Standard uncertainty at a value, in its base unit; empty where the kit does not state the tester's accuracy. */
    private Optional<Double> standard(
            PlannedReading planned, Quantity at, boolean atNominal, Optional<Quantity> leadsOff) {
        Optional<Accuracy> accuracy = planned.function()
                .flatMap(each -> Optional.ofNullable(plan.bench().accuracy().get(each)))
                .filter(each -> each.floor().dimension() == at.dimension());
        if (accuracy.isEmpty()) {
            return Optional.empty();
        }
        double factor = atNominal ? mains.factor() : 1;
        double shown = at.amount() / factor + leadsOff.map(Quantity::amount).orElse(0L);
        // Two readings of one instrument err together: their bounds add up, and so does the drift between two nulls.
        double half = Uncertainty.together(
                Uncertainty.halfWidth(accuracy.get(), shown) * factor,
                leadsOff.map(off -> Uncertainty.halfWidth(accuracy.get(), off.amount()))
                        .orElse(0.0),
                planned.isThroughLeads() ? premises.drift().amount() : 0);
        double own = Uncertainty.ofHalfWidth(half);
        return Optional.of(atNominal ? Uncertainty.independent(own, ofVoltage() * at.amount()) : own);
    }

    /** Relative standard uncertainty of the measured mains voltage; nothing where the kit does not state it. */
    private double ofVoltage() {
        Accuracy stated = plan.bench().accuracy().get("voltage");
        double volts = mains.measured().orElseThrow().amount();
        return stated == null ? 0 : Uncertainty.ofHalfWidth(Uncertainty.halfWidth(stated, volts)) / volts;
    }

    // ---- what a person must look at

    private void flag(
            PlannedReading planned,
            Limit limit,
            Quantity counted,
            Optional<Quantity> leadsOff,
            boolean accuracyKnown,
            List<String> flags) {
        if (Decision.inLastTenth(limit, counted)) {
            flags.add("above 90 % of the limit: compare with earlier values");
        }
        if (planned.isThroughLeads()) {
            leadsFlag(limit, counted, leadsOff, flags);
        }
        if (!accuracyKnown) {
            flags.add("the kit states no accuracy for this function: how near the limit counts is not known");
        }
    }

    private void leadsFlag(Limit limit, Quantity counted, Optional<Quantity> leadsOff, List<String> flags) {
        if (plan.bench().fourWire()) {
            return;
        }
        if (premises.nulls().isEmpty()) {
            flags.add(
                    counted.atMost(limit.value())
                            ? "the leads were not nulled: the value holds their resistance too"
                            : "the leads were not nulled: their resistance may be what is too much; null them and repeat");
            return;
        }
        Nulls nulls = premises.nulls().get();
        Quantity off = leadsOff.orElse(nulls.start());
        boolean onlyWithout =
                counted.atMost(limit.value()) && !counted.plus(off).atMost(limit.value());
        if (onlyWithout) {
            flags.add(
                    "inside the limit only because " + off.text()
                            + " of leads are taken off: see that the device's own cord was not in the path when they were nulled");
        }
        if (premises.drift().amount() > 0 && !plan.bench().accuracy().containsKey("earth")) {
            flags.add("the leads changed by " + premises.drift().text()
                    + " between start and end, and the kit does not state how much is too much");
        }
        if (nulls.end().isEmpty()) {
            flags.add("the leads were not read again at the end: a change in them is not seen");
        }
    }
}
