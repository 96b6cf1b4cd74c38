package leadwright.planner.plan;

import java.util.Map;

/**
 * Bench time in seconds.
 *
 * @param parts seconds by account; they sum to {@code total}
 * @param plainOrder total of the plain order: hookup after hookup, in clause order
 * @param startUps number of times the device is started
 */
public record TimeSplit(int total, Map<Step.Account, Integer> parts, int plainOrder, int startUps) {
    public TimeSplit {
        parts = Map.copyOf(parts);
    }
}
