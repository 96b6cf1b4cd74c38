package leadwright.planner.judge;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.readings.Readings;
import leadwright.catalog.readings.Shown;
import leadwright.catalog.readings.Taken;
import leadwright.catalog.text.Located;
import leadwright.catalog.text.Place;
import leadwright.catalog.text.Problem;
import leadwright.catalog.text.Spelling;

/** Whether readings are those of a plan: every mistake is collected, none is mended. */
final class Match {

    private static final Quantity LEAKAGE_OUT_OF_REACH = Quantity.of(Dimension.CURRENT, 1_000_000_000L);
    private static final Quantity CURRENT_OUT_OF_REACH = Quantity.of(Dimension.CURRENT, 1_000_000_000_000L);
    private static final Quantity VOLTAGE_OUT_OF_REACH = Quantity.volts(1_000);
    private static final Quantity PATH_OUT_OF_REACH = Quantity.milliOhms(1_000_000);
    private static final Quantity INSULATION_OUT_OF_REACH = Quantity.of(Dimension.RESISTANCE, 100_000_000_000_000_000L);
    private static final Quantity ONE_OHM = Quantity.milliOhms(1_000);

    private final PlannedTest plan;
    private final Readings readings;
    private final List<Problem> problems = new ArrayList<>();

    private Match(PlannedTest plan, Readings readings) {
        this.plan = plan;
        this.readings = readings;
    }

    /** Every way in which the readings are not those of the plan, in the order of the file. */
    static List<Problem> problems(PlannedTest plan, Readings readings, Optional<LocalDate> on) {
        Match match = new Match(plan, readings);
        match.plan();
        match.day(on);
        match.lines();
        match.mains();
        return match.problems.stream()
                .sorted(java.util.Comparator.comparingInt(Problem::line).thenComparingInt(Problem::column))
                .toList();
    }

    private void problem(Place at, String message) {
        problems.add(new Problem(readings.file(), at.line(), at.column(), message));
    }

    private void plan() {
        if (!plan.fingerprint().startsWith(readings.plan().value())) {
            problem(
                    readings.plan().at(),
                    "these are readings for plan "
                            + Spelling.show(readings.plan().value()) + "; the plan given is "
                            + plan.fingerprint()
                                    .substring(
                                            0, Math.min(12, plan.fingerprint().length()))
                            + " of '" + plan.device().name() + "'");
        }
        readings.occasion()
                .filter(word -> !word.value().equals(plan.occasion()))
                .ifPresent(word -> problem(
                        word.at(),
                        "the plan is for the occasion '" + plan.occasion() + "'; plan again for another one"));
    }

    private void day(Optional<LocalDate> on) {
        Optional<Located<LocalDate>> date = readings.date();
        if (date.isEmpty() && on.isEmpty()) {
            problem(readings.at(), "key 'date' is missing; the day of the readings is due, here or with --on");
        }
        if (date.isPresent() && on.isPresent() && !date.get().value().equals(on.get())) {
            problem(
                    date.get().at(),
                    "the readings are of " + date.get().value() + ", and --on says " + on.get() + "; leave one out");
        }
    }

    private void lines() {
        Map<String, PlannedReading> due = new LinkedHashMap<>();
        plan.readings().forEach(each -> due.put(each.id(), each));
        Set<String> given =
                readings.taken().stream().map(each -> each.id().value()).collect(Collectors.toSet());
        for (Taken taken : readings.taken()) {
            PlannedReading planned = due.get(taken.id().value());
            if (planned == null) {
                problem(
                        taken.id().at(),
                        "the plan has no reading " + Spelling.show(taken.id().value()) + "; "
                                + Spelling.instead(taken.id().value(), due.keySet()));
            } else {
                taken.shown().ifPresent(shown -> value(planned, shown));
            }
        }
        List<String> missing =
                due.keySet().stream().filter(id -> !given.contains(id)).toList();
        if (!missing.isEmpty()) {
            problem(
                    readings.at(),
                    (missing.size() == 1
                                    ? "this reading of the plan is missing: "
                                    : "these readings of the plan are missing: ")
                            + String.join(", ", missing)
                            + "; write each with its value, or with 'not-taken' and the reason");
        }
    }

    private void value(PlannedReading planned, Located<Shown> shown) {
        Optional<Dimension> due = planned.dimension();
        Optional<Quantity> amount = amount(shown.value());
        if (amount.isEmpty()) {
            if (due.isPresent() && due.get() != Dimension.RESISTANCE) {
                problem(
                        shown.at(),
                        "'open' is for resistances; " + planned.quantity().word() + " has a value");
            }
            return;
        }
        if (due.isPresent() && amount.get().dimension() != due.get()) {
            problem(
                    shown.at(),
                    Spelling.show(shown.value().text()) + " is no value of " + planned.id() + ", "
                            + planned.quantity().word() + ", which is read in "
                            + due.get().units().stream()
                                    .map(Dimension.Unit::symbol)
                                    .collect(Collectors.joining(", ")));
            return;
        }
        outOfReach(planned, amount.get())
                .ifPresent(why -> problem(
                        shown.at(),
                        Spelling.show(shown.value().text()) + " cannot be "
                                + planned.quantity().word() + " (" + planned.id() + "): " + why));
    }

    /** The values that nobody reads on a bench: a slip of the unit, most often. */
    private static Optional<String> outOfReach(PlannedReading planned, Quantity amount) {
        return switch (amount.dimension()) {
            case CURRENT -> {
                boolean supply = planned.function().isEmpty();
                yield amount.atLeast(supply ? CURRENT_OUT_OF_REACH : LEAKAGE_OUT_OF_REACH)
                        ? Optional.of(
                                (supply ? "1000 A" : "1 A") + " and more; compare the unit with the tester's display")
                        : Optional.empty();
            }
            case VOLTAGE ->
                amount.atLeast(VOLTAGE_OUT_OF_REACH)
                        ? Optional.of("1 kV and more; compare the unit with the tester's display")
                        : Optional.empty();
            default -> resistanceOutOfReach(planned, amount);
        };
    }

    private static Optional<String> resistanceOutOfReach(PlannedReading planned, Quantity amount) {
        if (planned.isThroughLeads() && amount.atLeast(PATH_OUT_OF_REACH)) {
            return Optional.of("1 kohm and more is no path; was mohm meant? Where none was found, write 'open'");
        }
        boolean insulation = planned.function().equals(Optional.of("insulation"));
        if (insulation && amount.amount() != 0 && !amount.atLeast(ONE_OHM)) {
            return Optional.of(amount.amount() < 0 ? "less than nothing" : "less than 1 ohm; was Mohm meant?");
        }
        return insulation && amount.atLeast(INSULATION_OUT_OF_REACH)
                ? Optional.of("100 Gohm and more; write what the tester's range ends at, such as '> 200 Mohm'")
                : Optional.empty();
    }

    private static Optional<Quantity> amount(Shown shown) {
        if (shown instanceof Shown.Value value) {
            return Optional.of(value.amount());
        }
        if (shown instanceof Shown.Above above) {
            return Optional.of(above.amount());
        }
        return shown instanceof Shown.Below below ? Optional.of(below.amount()) : Optional.empty();
    }

    /** Where the rule set has leakage corrected to the nominal mains voltage, the measured one is part of the record. */
    private void mains() {
        Mains mains = Mains.of(plan, readings);
        if (mains.missing()) {
            problem(
                    readings.at(),
                    "key 'mains-voltage' is missing; " + plan.rules().name()
                            + " has leakage corrected to the nominal voltage ("
                            + plan.rules().nominalMains().orElse("") + "), which needs the measured one");
        }
        if (mains.unlike()) {
            problem(
                    mainsAt(mains.measured().orElseThrow()),
                    "the mains voltage is stated or read as "
                            + mains.measured().orElseThrow().text()
                            + ", less than half or more than one and a half of the outlet's "
                            + mains.nominal().orElseThrow().text());
        }
    }

    /** Where this voltage stands: at the statement if it is that, else at the reading that shows it. */
    private Place mainsAt(Quantity volts) {
        Optional<Place> stated = readings.mainsVoltage()
                .filter(each -> each.value().equals(volts))
                .map(Located::at);
        return stated.or(() -> readings.taken().stream()
                        .flatMap(taken -> taken.shown().stream())
                        .filter(shown -> shown.value() instanceof Shown.Value value
                                && value.amount().equals(volts))
                        .map(Located::at)
                        .findFirst())
                .orElse(readings.at());
    }
}
