package leadwright.planner;

import java.time.LocalDate;
import java.util.Optional;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.rules.RuleSet;
import leadwright.planner.foresee.Situation;
import leadwright.planner.plan.Occasion;

/**
 * What is to be planned.
 *
 * @param on the date of the test; without it no calendar is looked at
 * @param situation what is known of the day: temperature of the leads, mains voltage
 * @param proposals whether additions to the kit are looked for where it falls short; this takes most of the time then
 */
public record Request(
        Device device,
        Kit kit,
        RuleSet rules,
        House house,
        Occasion occasion,
        Optional<LocalDate> on,
        boolean proposals,
        Situation situation) {

    /** On an ordinary day. */
    public Request(
            Device device,
            Kit kit,
            RuleSet rules,
            House house,
            Occasion occasion,
            Optional<LocalDate> on,
            boolean proposals) {
        this(device, kit, rules, house, occasion, on, proposals, Situation.ORDINARY);
    }

    /** With proposals, on an ordinary day. */
    public Request(Device device, Kit kit, RuleSet rules, House house, Occasion occasion, Optional<LocalDate> on) {
        this(device, kit, rules, house, occasion, on, true);
    }
}
