package leadwright.planner.judge;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leadwright.catalog.house.DecisionRule;
import leadwright.catalog.kit.SourceReading;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.readings.Readings;
import leadwright.catalog.readings.Taken;
import leadwright.catalog.text.Outcome;
import leadwright.catalog.text.Problem;

/**
 * From a plan and its readings to a record.
 *
 * <p>Needs: a plan, readings. Gives: every reading judged and a result for the device, or every way in which the readings
 * are not those of the plan. Method: docs/judging.md.
 */
public final class Judge {

    /** IEC 61557-1: the share of the nominal voltage between which a tester has to keep its accuracy. */
    private static final long RATED_FROM = 85;

    private static final long RATED_TO = 110;

    private Judge() {}

    /**
     * What the person asks for.
     *
     * @param decision the decision rule; the house's where empty
     * @param on the day of the readings, where their file does not say it
     * @param previous the last record of the device
     */
    public record Options(Optional<DecisionRule> decision, Optional<LocalDate> on, Optional<Previous> previous) {}

    /** Judges readings; when they are not the plan's, nothing is judged and every problem is given. */
    public static Outcome<TestRecord> judge(PlannedTest plan, Readings readings, Options options) {
        List<Problem> problems = new ArrayList<>(Match.problems(plan, readings, options.on()));
        Optional<LocalDate> day = readings.date().map(each -> each.value()).or(options::on);
        options.previous()
                .ifPresent(previous -> problems.addAll(previous.problems(plan, readings, day.orElse(previous.date()))));
        if (!problems.isEmpty()) {
            return new Outcome.Refused<>(problems);
        }
        return new Outcome.Read<>(record(plan, readings, day.orElseThrow(), options), List.of());
    }

    private static TestRecord record(PlannedTest plan, Readings readings, LocalDate day, Options options) {
        DecisionRule rule = options.decision().orElse(plan.house().decision());
        Mains mains = Mains.of(plan, readings);
        Premises premises = new Premises(plan, readings, mains, day);
        Weighing weighing = new Weighing(plan, rule, mains, premises, new Twins(plan, readings), options.previous());
        Map<String, Taken> taken = new HashMap<>();
        readings.taken().forEach(each -> taken.put(each.id().value(), each));
        List<Judged> judged = plan.readings().stream()
                .map(each -> weighing.judge(each, taken.get(each.id())))
                .toList();
        Result result = result(plan, judged, rule, premises.pastDue());
        return new TestRecord(
                plan,
                readings,
                day,
                rule,
                mains,
                judged,
                result.result(),
                result.because(),
                notes(plan, readings, mains, rule),
                options.previous().map(Previous::date));
    }

    private record Result(TestRecord.Result result, List<String> because) {}

    private static Result result(PlannedTest plan, List<Judged> judged, DecisionRule rule, Optional<String> pastDue) {
        List<String> because = new ArrayList<>();
        if (pastDue.isPresent() || plan.training()) {
            pastDue.ifPresent(because::add);
            if (plan.training()) {
                because.add("the plan is a training copy and no record");
            }
            partial(plan).ifPresent(because::add);
            return new Result(TestRecord.Result.VOID, because);
        }
        List<Judged> rejected =
                judged.stream().filter(each -> each.verdict().rejected(rule)).toList();
        List<Judged> voided =
                judged.stream().filter(each -> each.verdict() == Verdict.VOID).toList();
        List<Judged> open = judged.stream().filter(Judge::isOpen).toList();
        name("not accepted", rejected, because);
        name("void", voided, because);
        name("not taken, or not to be compared with its limit", open, because);
        partial(plan).ifPresent(because::add);
        if (!rejected.isEmpty()) {
            return new Result(TestRecord.Result.FAIL, because);
        }
        if (!voided.isEmpty()) {
            return new Result(TestRecord.Result.VOID, because);
        }
        if (!open.isEmpty() || plan.partial()) {
            return new Result(TestRecord.Result.NOT_COMPLETE, because);
        }
        long accepted =
                judged.stream().filter(each -> each.verdict().accepted(rule)).count();
        if (accepted == 0) {
            because.add("no reading of the plan has a limit");
            return new Result(TestRecord.Result.NOT_COMPLETE, because);
        }
        because.add(
                accepted == 1
                        ? "the one reading with a limit is inside it"
                        : "all " + accepted + " readings with a limit are inside it");
        return new Result(TestRecord.Result.PASS, because);
    }

    private static Optional<String> partial(PlannedTest plan) {
        List<String> missing = plan.shortfalls().stream()
                .map(each -> each.about() + ": " + each.because())
                .toList();
        return plan.partial()
                ? Optional.of("PARTIAL: the kit cannot take every reading that is due; not tested: "
                        + String.join("; ", missing))
                : Optional.empty();
    }

    /** Due, and without an answer. */
    private static boolean isOpen(Judged each) {
        return each.verdict() == Verdict.NOT_JUDGED
                && (each.limit().isPresent() || each.taken().shown().isEmpty());
    }

    private static void name(String what, List<Judged> those, List<String> because) {
        if (!those.isEmpty()) {
            because.add(what + ": "
                    + String.join(
                            ", ",
                            those.stream().map(each -> each.planned().id()).toList()));
        }
    }

    private static List<String> notes(PlannedTest plan, Readings readings, Mains mains, DecisionRule rule) {
        List<String> notes = new ArrayList<>();
        if (plan.bench().calibratedUntil().isEmpty()) {
            notes.add("the kit does not state until when the tester is calibrated: look at its certificate");
        }
        plan.bench()
                .source()
                .filter(source -> source.reading() == SourceReading.RAW)
                .filter(source -> plan.readings().stream().anyMatch(PlannedReading::isFromSource))
                .ifPresent(source ->
                        notes.add("readings of the limited source are raw: they are compared with 1/(1/limit + 1/"
                                + source.shortCircuit().text() + "), the least that a device at its limit shows"));
        if (plan.bench().fourWire() && readings.nulls().isPresent()) {
            notes.add(
                    "the earth test measures with four wires: the leads do not count, and nothing is taken off for them");
        }
        if (rule != plan.house().decision()) {
            notes.add("the house's decision rule is " + plan.house().decision().word()
                    + "; these readings were judged by " + rule.word());
        }
        if (mains.due()) {
            notes.add("leakage that the mains drives is corrected to "
                    + mains.nominal().orElseThrow().text() + ", times nominal over measured ("
                    + plan.rules().nominalMains().orElse("") + ")");
            if (!plan.bench().accuracy().containsKey("voltage")) {
                notes.add("the kit states no accuracy for voltage: the measured mains voltage counts as exact");
            }
        } else if (plan.rules().nominalMains().isPresent()) {
            notes.add("no reading is corrected to a nominal mains voltage here");
        }
        readings.mainsVoltage()
                .filter(stated -> mains.measured()
                        .filter(used -> used.equals(stated.value()))
                        .isEmpty())
                .ifPresent(stated -> notes.add(
                        "the mains voltage is stated as " + stated.value().text() + " and read as "
                                + mains.measured().map(Quantity::text).orElse("") + ": the lower is taken"));
        outsideRated(mains).ifPresent(notes::add);
        return notes;
    }

    private static Optional<String> outsideRated(Mains mains) {
        if (mains.nominal().isEmpty() || mains.measured().isEmpty()) {
            return Optional.empty();
        }
        long hundred = Math.multiplyExact(mains.measured().get().amount(), 100L);
        long nominal = mains.nominal().get().amount();
        boolean inside = hundred >= nominal * RATED_FROM && hundred <= nominal * RATED_TO;
        return inside
                ? Optional.empty()
                : Optional.of(
                        "the mains voltage is outside 85 % to 110 % of nominal, where a tester need not keep its accuracy"
                                + " (IEC 61557-1)");
    }
}
