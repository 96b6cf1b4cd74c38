package leadwright.planner.oblige;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.Outlet;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.rules.RuleSet;
import leadwright.catalog.rules.TestRow;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Occasion;
import leadwright.planner.plan.Shortfall;

/**
 * From device, rule set and house to the readings that are due.
 *
 * <p>Needs: a device and a kit that their readers accepted. Gives: every reading that the rule set asks for and this
 * tester can take, in clause order, each with its state, demand and limit; what is not done, with reason and clause; what
 * the tester cannot do; warnings; or the reason why nothing may be planned. Method: the rows of the rule set, one after
 * the other. Cost: in proportion to the readings.
 */
public final class Oblige {
    private static final List<QuantityKind> OF_PARTS = List.of(
            QuantityKind.APPLIED_PART_LEAKAGE,
            QuantityKind.PATIENT_LEAKAGE,
            QuantityKind.TOTAL_PATIENT_LEAKAGE,
            QuantityKind.PATIENT_AUXILIARY,
            QuantityKind.LEAD_TO_LEAD,
            QuantityKind.MAINS_ON_APPLIED_PART,
            QuantityKind.TOTAL_MAINS_ON_APPLIED_PART,
            QuantityKind.MAINS_ON_UNEARTHED_METAL);

    private static final Set<QuantityKind> OF_THE_DEVICE = Set.of(
            QuantityKind.EARTH_RESISTANCE,
            QuantityKind.BONDING_RESISTANCE,
            QuantityKind.BONDING_VOLTAGE,
            QuantityKind.INSULATION_RESISTANCE,
            QuantityKind.SUPPLY_CURRENT,
            QuantityKind.EQUIPMENT_LEAKAGE,
            QuantityKind.EARTH_LEAKAGE,
            QuantityKind.FUNCTIONAL_EARTH_LEAKAGE,
            QuantityKind.TOUCH_CURRENT,
            QuantityKind.TOUCH_CURRENT_BETWEEN);

    private Oblige() {}

    /**
     * What is due.
     *
     * @param rules as loaded; the house's extra tests are added to it
     */
    public static Obligations oblige(Device device, Kit kit, RuleSet rules, House house, Occasion occasion) {
        Remarks remarks = new Remarks();
        DeviceFacts facts = DeviceFacts.of(SwitchedOff.with(device, rules));
        OutletFit fit = OutletFit.of(facts, kit);
        List<String> loosened = Limits.loosened(house, rules);
        if (!loosened.isEmpty() || fit.refusal().isPresent()) {
            List<String> reasons = new ArrayList<>(loosened);
            fit.refusal().ifPresent(reasons::add);
            return refused(String.join("; ", reasons));
        }
        fit.warnings().forEach(remarks::warn);
        Asking asking = ExtraTests.with(new Asking(facts, kit, rules, house, occasion), remarks);
        unplanned(rules, remarks);
        List<Draft> due = readings(asking, remarks);
        NotDone.add(asking, due, remarks);
        List<Draft> taken = new TesterFit(asking, fit.outlet()).takeable(due, remarks);
        if (due.isEmpty() && remarks.shortfalls().isEmpty()) {
            return refused(nothing(asking, remarks));
        }
        Warnings.add(asking, fit.outlet(), taken, remarks);
        List<Draft> drafts = withChecks(asking, fit.outlet(), taken, remarks);
        Limits limits = new Limits(asking, remarks);
        List<Obligation> wanted = drafts.stream()
                .map(draft -> madeSafe(draft, facts.therapy()))
                .map(draft -> {
                    Limits.Found found = limits.of(draft);
                    return draft.obligation(rules.network(), found.limit(), found.notes());
                })
                .toList();
        Optional<Quantity> earthCurrent = wanted.stream().anyMatch(each -> each.phase() == Obligation.Phase.EARTH)
                ? EarthCurrent.set(asking)
                : Optional.empty();
        Obligations all = new Obligations(
                wanted,
                remarks.notApplicable(),
                remarks.shortfalls(),
                remarks.warnings(),
                Optional.empty(),
                earthCurrent,
                EarthUnread.points(asking));
        return EarthUnread.withheld(all, List.of());
    }

    private static Obligations refused(String reason) {
        return new Obligations(
                List.of(), List.of(), List.of(), List.of(), Optional.of(reason), Optional.empty(), List.of());
    }

    /** Why the rule set asks nothing of this device: not the kit's doing. */
    private static String nothing(Asking asking, Remarks remarks) {
        return "rule set " + asking.rules().id() + " (" + asking.rules().name() + ") asks for no reading of "
                + asking.device().name() + ": "
                + remarks.notApplicable().stream()
                        .map(each -> each.test() + ": " + each.because())
                        .collect(Collectors.joining("; "));
    }

    private static Draft madeSafe(Draft draft, Therapy therapy) {
        return draft.demand().all().stream()
                .flatMap(connection -> therapy.outputOf(connection).stream())
                .findFirst()
                .map(output -> draft.note("therapy output " + output + ": made safe before it is plugged"))
                .orElse(draft);
    }

    /** A rule set may know more than this phase: what it does not plan is missing, never silently left out. */
    private static void unplanned(RuleSet rules, Remarks remarks) {
        rules.tests().stream()
                .map(TestRow::quantity)
                .distinct()
                .filter(quantity -> !OF_PARTS.contains(quantity) && !OF_THE_DEVICE.contains(quantity))
                .forEach(quantity -> remarks.shortfall(new Shortfall(
                        "rule set " + rules.id(),
                        List.of(),
                        quantity.word() + " is asked for and not planned by this program",
                        List.of())));
    }

    private static List<Draft> readings(Asking asking, Remarks remarks) {
        List<Draft> due = new ArrayList<>();
        due.addAll(EarthReadings.of(asking, remarks));
        due.addAll(InsulationReadings.of(asking, remarks));
        due.addAll(WholeDeviceReadings.supplyCurrent(asking));
        due.addAll(WholeDeviceReadings.equipment(asking, remarks));
        due.addAll(WholeDeviceReadings.inEarthConductor(asking, QuantityKind.EARTH_LEAKAGE, remarks));
        due.addAll(WholeDeviceReadings.inEarthConductor(asking, QuantityKind.FUNCTIONAL_EARTH_LEAKAGE, remarks));
        due.addAll(TouchReadings.toEarth(asking, remarks));
        due.addAll(TouchReadings.between(asking, remarks));
        due.addAll(TouchReadings.bondingVoltage(asking, remarks));
        OF_PARTS.forEach(quantity -> due.addAll(PartReadings.of(asking, quantity, remarks)));
        return due;
    }

    private static List<Draft> withChecks(Asking asking, Optional<Outlet> outlet, List<Draft> taken, Remarks remarks) {
        List<Draft> all = new ArrayList<>(taken.isEmpty() ? List.of() : CheckReadings.supply(outlet));
        all.addAll(CheckReadings.tester(asking, outlet, "start", taken, remarks));
        all.addAll(taken);
        all.addAll(CheckReadings.earthLeadOff(asking, taken));
        all.addAll(CheckReadings.tester(asking, outlet, "end", taken, remarks));
        return all;
    }
}
