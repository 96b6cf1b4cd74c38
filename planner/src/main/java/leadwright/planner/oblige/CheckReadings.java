package leadwright.planner.oblige;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.SupplySystem;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.KnownResistor;
import leadwright.catalog.kit.Outlet;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.QuantityKind;

/** What is read before the device is plugged in, and the tester's own check at start and end. */
final class CheckReadings {
    private static final String CLAUSE = "bench practice";

    /** A known resistor below this checks the earth test, one above it the leakage readings. */
    private static final Quantity EARTH_RESISTOR = new Quantity(Dimension.RESISTANCE, 1_000_000_000L);

    private CheckReadings() {}

    /** The tester's outlet, before the device is plugged in. */
    static List<Draft> supply(Optional<Outlet> outlet) {
        if (outlet.isEmpty()) {
            return List.of();
        }
        return switch (outlet.get().system()) {
            case SPLIT_PHASE, PHASE_PHASE ->
                List.of(
                        supply("leg-1-to-earth", "near half of leg to leg on a split-phase supply"),
                        supply("leg-2-to-earth", "near half of leg to leg on a split-phase supply"),
                        supply("leg-to-leg", "the rated voltage"));
            case DC ->
                List.of(
                        supply("positive-to-earth", "write down"),
                        supply("negative-to-earth", "write down"),
                        supply("positive-to-negative", "the rated voltage"));
            default ->
                List.of(
                        supply(
                                "line-to-earth",
                                "within 10 % of line to neutral, which is read third: tick this one then"),
                        supply("neutral-to-earth", "below a few volts"),
                        supply("line-to-neutral", "the rated voltage"));
        };
    }

    private static Draft supply(String subject, String expected) {
        return Draft.of(QuantityKind.SUPPLY_VOLTAGE, CLAUSE, subject, List.of("outlet"), StateInMode.OFF)
                .note("before the device is plugged in; expected: " + expected
                        + "; else the supply is not earth-referenced and no leakage is read");
    }

    /** One check per known resistor that serves a kind of reading which is due. */
    static List<Draft> tester(Asking asking, Optional<Outlet> outlet, String when, List<Draft> due, Remarks remarks) {
        List<Draft> checks = new ArrayList<>();
        boolean earth = due.stream().anyMatch(draft -> draft.quantity() == QuantityKind.EARTH_RESISTANCE);
        boolean leakage = due.stream().anyMatch(Draft::isLeakage);
        for (KnownResistor resistor : asking.kit().checks()) {
            boolean forEarth = !resistor.value().atLeast(EARTH_RESISTOR);
            if (forEarth ? earth : leakage) {
                expected(resistor, forEarth, outlet, remarks)
                        .ifPresent(note ->
                                checks.add(check(resistor, forEarth, when).note(note)));
            }
        }
        return checks;
    }

    /**
     * The earth lead shown to be off before leakage is read, where its jack does not rest open: the lead would be a second
     * way to earth. A licensed person's plant keeps its own earth beside the lead, so that nothing is proven there.
     */
    static List<Draft> earthLeadOff(Asking asking, List<Draft> due) {
        boolean earth = due.stream().anyMatch(draft -> draft.quantity() == QuantityKind.EARTH_RESISTANCE);
        boolean leakage = due.stream().anyMatch(Draft::isLeakage);
        boolean open = asking.tester()
                .earthJack()
                .flatMap(jack -> jack.atRest())
                .filter(rest -> rest == AtRest.OPEN)
                .isPresent();
        if (!earth || !leakage || open || asking.facts().fixedPlant()) {
            return List.of();
        }
        return List.of(Draft.of(QuantityKind.PROOF, CLAUSE, "earth-lead-off", List.of("earth-lead"), StateInMode.OFF)
                .note("expected: no reading, the earth test finds no path; a value means that the lead is still on"));
    }

    private static Draft check(KnownResistor resistor, boolean forEarth, String when) {
        Draft draft = Draft.of(
                QuantityKind.TESTER_CHECK, CLAUSE, resistor.id() + "/" + when, List.of(resistor.id()), StateInMode.OFF);
        return forEarth ? draft : draft.component(Optional.of(Component.AC));
    }

    private static Optional<String> expected(
            KnownResistor resistor, boolean forEarth, Optional<Outlet> outlet, Remarks remarks) {
        String within = " within " + resistor.tolerance().text();
        if (forEarth) {
            return Optional.of("expected: " + resistor.value().text() + within);
        }
        if (outlet.isEmpty()) {
            return Optional.of("expected: supply voltage divided by "
                    + resistor.value().text() + "," + within + " and that of the voltage");
        }
        Quantity volts = outlet.get().voltage();
        if (resistor.voltage().isEmpty() || !resistor.voltage().get().atLeast(volts)) {
            remarks.warn("the known resistor '" + resistor.id() + "' is not rated for " + volts.text()
                    + ": it is not put on the supply");
            return Optional.empty();
        }
        return Optional.of("expected at " + volts.text() + ": about " + current(volts, resistor.value()) + "," + within
                + " and that of the voltage; zero means a blown fuse or a stuck relay");
    }

    /** Microvolts by microohms is amperes; shown in whole microamperes. */
    private static String current(Quantity volts, Quantity ohms) {
        return BigDecimal.valueOf(volts.amount())
                        .movePointRight(6)
                        .divide(BigDecimal.valueOf(ohms.amount()), 0, RoundingMode.HALF_EVEN)
                        .toPlainString()
                + " uA";
    }

    /** Systems in which a leakage reading means nothing: nothing flows back through an earth that is not joined. */
    static boolean withoutEarthReference(Optional<Outlet> outlet) {
        return outlet.filter(each -> each.system() == SupplySystem.ISOLATED).isPresent();
    }
}
