package leadwright.planner.foresee;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leadwright.catalog.device.Device;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.Method;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.table.Conductors;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;

/**
 * Makes the circuit of a reading: device, hookup, tester and state of the mains together.
 *
 * <p>Needs: an obligation, the hookup in which it is read. Gives: a circuit with a way to read it, or nothing where this model does
 * not know the arrangement (three-phase, isolated and d.c. supplies, permanent plant). Method: branches of device and hookup; jacks
 * tied to the measuring network, to earth or left open as the demand says.
 */
public final class Setups {
    private final Device device;
    private final Kit kit;
    private final Situation situation;
    private final Optional<Supplies> supply;
    private final List<Template.Branch> deviceBranches;
    private final Map<String, List<Template.Branch>> hookupBranches = new HashMap<>();

    public Setups(Device device, Kit kit, Situation situation) {
        this.device = device;
        this.kit = kit;
        this.situation = situation;
        this.supply = Supplies.of(device, kit)
                .map(rated -> situation.volts().map(rated::at).orElse(rated));
        this.deviceBranches = DeviceBranches.of(device);
    }

    List<Template.Branch> deviceBranches() {
        return deviceBranches;
    }

    List<Template.Branch> hookupBranches(Hookup hookup) {
        return hookupBranches.computeIfAbsent(hookup.id(), each -> HookupBranches.of(kit, hookup, warming()));
    }

    Device device() {
        return device;
    }

    Kit kit() {
        return kit;
    }

    Situation situation() {
        return situation;
    }

    Optional<Supplies> supply() {
        return supply;
    }

    /** Frequency of the supply, Hz. */
    double hertz() {
        return supply.map(Supplies::hertz)
                .orElse(device.supply().frequency().map(Quantity::inSi).orElse(50.0));
    }

    /** By what copper has more resistance than at 20 °C. */
    double warming() {
        return Conductors.builtIn().warming(20, situation.celsius());
    }

    /**
     * The circuit of a reading.
     *
     * @return empty where the reading is no current through a measuring network and no insulation resistance, or the model does not
     *     know the arrangement
     */
    public Optional<Setup> of(Obligation what, Optional<Hookup> hookup) {
        return of(what, hookup, Variation.NONE);
    }

    /** The same reading in an arrangement that differs from the plan's. */
    public Optional<Setup> of(Obligation what, Optional<Hookup> hookup, Variation variation) {
        if (what.state() == MainsState.INSTALLED_ON || what.state() == MainsState.ISOLATED) {
            return Optional.empty();
        }
        if (what.state().polarity() != MainsState.Polarity.NONE && supply.isEmpty()) {
            return Optional.empty();
        }
        Assembly bench = new Assembly(this, what, hookup, variation);
        return switch (what.quantity()) {
            case EARTH_LEAKAGE -> Optional.of(bench.earthLeakage(Nodes.EARTH_TERMINAL));
            case FUNCTIONAL_EARTH_LEAKAGE -> Optional.of(bench.earthLeakage(Nodes.FUNCTIONAL_EARTH));
            case TOUCH_CURRENT -> bench.touch();
            case EQUIPMENT_LEAKAGE -> bench.equipmentLeakage();
            case TOUCH_CURRENT_BETWEEN, PATIENT_AUXILIARY, LEAD_TO_LEAD -> bench.between();
            case PATIENT_LEAKAGE, TOTAL_PATIENT_LEAKAGE -> bench.toEarth();
            case APPLIED_PART_LEAKAGE ->
                what.method().filter(method -> method == Method.ALTERNATIVE).isPresent()
                        ? bench.alternativePart()
                        : bench.mainsOnPart();
            case MAINS_ON_APPLIED_PART, TOTAL_MAINS_ON_APPLIED_PART -> bench.mainsOnPart();
            case MAINS_ON_UNEARTHED_METAL, MAINS_ON_PORT -> bench.mainsElsewhere();
            case INSULATION_RESISTANCE -> bench.insulation();
            default -> Optional.empty();
        };
    }
}
