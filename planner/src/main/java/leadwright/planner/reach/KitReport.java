package leadwright.planner.reach;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.rules.RuleSet;
import leadwright.planner.Outcome;
import leadwright.planner.Plan;
import leadwright.planner.Request;
import leadwright.planner.plan.Occasion;

/**
 * What a kit does for some devices, and what one piece more would change.
 *
 * @param rules id of the rule set
 * @param devices in the order in which they were given
 * @param more pieces that change something, the most useful first
 */
public record KitReport(Kit kit, String rules, List<DeviceReach> devices, List<OneMore.Change> more) {
    public KitReport {
        devices = List.copyOf(devices);
        more = List.copyOf(more);
    }

    /** A device and the file it came from. */
    public record Given(String file, Device device) {}

    /**
     * Plans every device once with the kit, and again with pieces more.
     *
     * @param planner plans; what comes of it must be planned or refused
     * @throws IllegalStateException when the audit refuses a plan: a fault of the program
     */
    public static KitReport of(
            Kit kit, List<Given> given, RuleSet rules, House house, Function<Request, Outcome> planner) {
        List<DeviceReach> devices = new ArrayList<>();
        for (Given each : given) {
            Request request = new Request(each.device(), kit, rules, house, Occasion.RECURRENT, Optional.empty());
            devices.add(reach(each, planner.apply(request)));
        }
        List<OneMore.Change> more = OneMore.of(kit, devices, (each, with) -> {
            Request request =
                    new Request(each.device(), with, rules, house, Occasion.RECURRENT, Optional.empty(), false);
            return reach(new Given(each.file(), each.device()), planner.apply(request));
        });
        return new KitReport(kit, rules.id(), devices, more);
    }

    private static DeviceReach reach(Given given, Outcome outcome) {
        if (outcome instanceof Outcome.Planned planned) {
            Plan plan = planned.plan();
            return new DeviceReach(given.file(), given.device(), Optional.of(plan), Optional.empty());
        }
        if (outcome instanceof Outcome.Refused refused) {
            return new DeviceReach(given.file(), given.device(), Optional.empty(), Optional.of(refused.reason()));
        }
        throw new IllegalStateException(given.file() + ": the audit refused the plan: " + outcome);
    }

    /** Whether everything due can be read on every device. */
    public boolean full() {
        return devices.stream().allMatch(DeviceReach::full);
    }
}
