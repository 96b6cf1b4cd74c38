package leadwright.planner.oblige;

import java.util.ArrayList;
import java.util.List;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.MainsSwitch;
import leadwright.catalog.device.OperatingMode;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.RuleSet;

/**
 * Some rule sets also read a device that is plugged in and switched off at its own switch. For the plan that is one more
 * operating mode: it is reached by shutting down, and left by starting.
 */
public final class SwitchedOff {
    /** Id of the mode. */
    static final String MODE = "switched-off";

    private SwitchedOff() {}

    /** The device with that mode, where the rule set asks for it and the device has a switch; else the device as it is. */
    public static Device with(Device device, RuleSet rules) {
        boolean asked = rules.tests().stream().anyMatch(row -> row.switchedOffToo());
        boolean known = device.modes().stream().anyMatch(mode -> mode.id().equals(MODE));
        boolean plugged = DeviceFacts.of(device).onOutlet();
        if (!asked || known || !plugged || device.mainsSwitch() == MainsSwitch.NONE) {
            return device;
        }
        List<OperatingMode> modes = new ArrayList<>();
        if (device.modes().isEmpty()) {
            modes.add(new OperatingMode(StateInMode.ON, "On", device.startUp()));
        }
        // From switched off every mode is reached by starting.
        device.modes()
                .forEach(mode ->
                        modes.add(new OperatingMode(mode.id(), mode.name(), larger(mode.reach(), device.startUp()))));
        modes.add(new OperatingMode(MODE, "Switched off at its own switch, plugged in", device.shutDown()));
        return device.inModes(modes);
    }

    private static Quantity larger(Quantity one, Quantity other) {
        return one.atLeast(other) ? one : other;
    }
}
