package leadwright.planner.foresee;

import java.util.Optional;
import leadwright.catalog.device.Device;
import leadwright.catalog.kit.Kit;

/**
 * The supply that a plan counts on.
 *
 * @param volts rated voltage between the two conductors
 * @param hertz rated frequency
 */
public record Mains(double volts, double hertz) {
    /** Empty where no outlet of the kit has a supply for the device that is modelled. */
    public static Optional<Mains> of(Device device, Kit kit) {
        return Supplies.of(device, kit).map(supply -> new Mains(supply.volts(), supply.hertz()));
    }

    /** By what a current through capacitance changes on another supply. */
    public double ratioTo(Mains other) {
        return other.volts * other.hertz / (volts * hertz);
    }
}
