package leadwright.planner.foresee;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.Supply;
import leadwright.catalog.device.SupplySystem;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.Outlet;
import leadwright.catalog.quantity.Quantity;
import leadwright.planner.circuit.Circuit;
import leadwright.planner.circuit.Element;

/**
 * The supply behind the tester's outlet, as two sources against earth.
 *
 * @param volts rated voltage between the two conductors
 * @param hertz rated frequency
 */
record Supplies(SupplySystem system, double volts, double hertz) {
    static final String FIRST = "supply-1";
    static final String SECOND = "supply-2";
    private static final double UNSTATED_HERTZ = 50;
    /** Of an isolated supply to earth, F; common practice, no source. */
    private static final double STRAY = 2e-9;

    /** The outlet that has the device's supply; empty where nothing of the mains is modelled. */
    static Optional<Supplies> of(Device device, Kit kit) {
        Supply supply = device.supply();
        double hertz = supply.frequency().map(Quantity::inSi).orElse(UNSTATED_HERTZ);
        return kit.tester().outlets().stream()
                .filter(outlet -> outlet.system() == supply.system() && fits(supply, outlet))
                .findFirst()
                .or(() -> kit.tester().outlets().stream()
                        .filter(outlet -> outlet.system() == supply.system())
                        .findFirst())
                .filter(outlet -> modelled(outlet.system()))
                .map(outlet -> new Supplies(outlet.system(), outlet.voltage().inSi(), hertz));
    }

    private static boolean fits(Supply supply, Outlet outlet) {
        return supply.lowest()
                        .filter(low -> outlet.voltage().inSi() >= 0.9 * low.inSi())
                        .isPresent()
                && supply.highest()
                        .filter(high -> outlet.voltage().inSi() <= 1.1 * high.inSi())
                        .isPresent();
    }

    private static boolean modelled(SupplySystem system) {
        return switch (system) {
            case LINE_NEUTRAL, SPLIT_PHASE, PHASE_PHASE -> true;
            case THREE_PHASE, ISOLATED, DC -> false;
        };
    }

    Supplies at(double otherVolts) {
        return new Supplies(system, otherVolts, hertz);
    }

    /** Both conductors against earth; the second is the neutral where there is one. */
    List<Element> sources(String first, String second) {
        double leg = switch (system) {
            case SPLIT_PHASE -> volts / 2;
            case PHASE_PHASE -> volts / Math.sqrt(3);
            default -> volts;
        };
        double other = system == SupplySystem.LINE_NEUTRAL ? 0 : leg;
        double degrees = system == SupplySystem.PHASE_PHASE ? -120 : 180;
        List<Element> both = new ArrayList<>();
        both.add(new Element.Voltage(FIRST, first, Circuit.EARTH, leg, 0));
        both.add(new Element.Voltage(SECOND, second, Circuit.EARTH, other, other == 0 ? 0 : degrees));
        return both;
    }

    /** A supply without any tie to earth but the stray capacitance of its own windings and wires. */
    List<Element> unearthed(String first, String second) {
        String middle = "supply-middle";
        return List.of(
                new Element.Voltage(FIRST, first, middle, volts / 2, 0),
                new Element.Voltage(SECOND, second, middle, volts / 2, 180),
                new Element.Capacitance("C:stray", middle, Circuit.EARTH, STRAY));
    }
}
