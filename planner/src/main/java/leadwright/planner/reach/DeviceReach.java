package leadwright.planner.reach;

import java.util.Collection;
import java.util.Optional;
import leadwright.catalog.device.Device;
import leadwright.planner.Plan;

/**
 * What a kit does for one device.
 *
 * @param file as it was given
 * @param plan empty where nothing may be planned
 * @param refusal why nothing may be planned; empty where there is a plan
 */
public record DeviceReach(String file, Device device, Optional<Plan> plan, Optional<String> refusal) {

    /** Readings that the plan takes. */
    public int possible() {
        return plan.map(each -> each.readings().size()).orElse(0);
    }

    /** Readings that are due and stopped, as far as they can be counted: a test that the tester lacks may be more. */
    public int stopped() {
        return (int) plan.stream()
                .flatMap(each -> each.shortfalls().stream())
                .map(each -> each.readings())
                .flatMap(Collection::stream)
                .distinct()
                .count();
    }

    /** Whether everything due can be read. */
    public boolean full() {
        return plan.map(each -> !each.partial()).orElse(false);
    }

    public int hookups() {
        return plan.map(each -> each.hookups().size()).orElse(0);
    }

    public int seconds() {
        return plan.map(each -> each.time().total()).orElse(0);
    }

    /** Whether this is better than another for the same device: more readings, then fewer hookups, then less time. */
    boolean betterThan(DeviceReach other) {
        if (possible() != other.possible() || stopped() != other.stopped()) {
            return possible() > other.possible() || stopped() < other.stopped();
        }
        return hookups() < other.hookups() || hookups() == other.hookups() && seconds() < other.seconds();
    }
}
