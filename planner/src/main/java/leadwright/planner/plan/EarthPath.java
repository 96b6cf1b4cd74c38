package leadwright.planner.plan;

import java.util.List;

/**
 * The earth lead of a hookup.
 *
 * @param pole {@code part} for the lead to the clip's first point, {@code reference} for the second lead of two-lead readings
 * @param point touch point or earth point id, or {@code inlet-earth}, {@code cord-earth}, {@code reference-earth}
 * @param socket tester socket it starts from: {@code earth-jack}, {@code second-jack}
 * @param items item instances from the tester to the device
 */
public record EarthPath(String pole, String point, String socket, List<String> items) {
    public EarthPath {
        items = List.copyOf(items);
    }
}
