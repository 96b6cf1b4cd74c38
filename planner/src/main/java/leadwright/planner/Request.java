package leadwright.planner;

import java.time.LocalDate;
import java.util.Optional;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.rules.RuleSet;
import leadwright.planner.plan.Occasion;

/**
 * What is to be planned.
 *
 * @param on the date of the test; without it no calendar is looked at
 */
public record Request(Device device, Kit kit, RuleSet rules, House house, Occasion occasion, Optional<LocalDate> on) {}
