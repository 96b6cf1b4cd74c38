package leadwright.planner.compare;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Like changes in one sentence.
 *
 * @param changes at least one, all of the kind
 */
public record Line(Kind kind, List<Change> changes, String sentence) {
    public Line {
        changes = List.copyOf(changes);
    }

    static List<Line> gather(List<Change> changes) {
        Map<List<Object>, List<Change>> groups = new LinkedHashMap<>();
        for (Change each : changes) {
            groups.computeIfAbsent(likeness(each), absent -> new ArrayList<>()).add(each);
        }
        return groups.values().stream()
                .map(group -> new Line(group.get(0).kind(), group, Wording.of(group)))
                .toList();
    }

    /** Changes of the same likeness are told in one sentence. */
    private static List<Object> likeness(Change each) {
        return switch (each.kind()) {
            case READING, CAUTION, FLOAT_JOINED, READING_MOVED -> List.of(each.kind(), each.trend(), each.family());
            case NOT_APPLICABLE -> List.of(each.kind(), each.trend());
            case LIMIT, LIMIT_ORIGIN, CLAUSE, TAKEN_OTHERWISE, ON_FAIL, REMARK, TAKEN_IN ->
                List.of(each.kind(), each.family(), each.before(), each.after());
            case MAINS_ON_PART -> List.of(each.kind(), each.before(), each.after());
            case JACK, CHAIN ->
                each.trend() == Trend.OTHERWISE
                        ? List.of(each.kind(), each.before(), each.after(), each.inA(), each.inB())
                        : List.of(each.kind(), each.trend(), each.inA(), each.inB());
            case ITEMS, ACTS, SPLIT -> List.of(each.kind());
            default -> List.of(each.kind(), each.subject(), each.trend(), each.inA(), each.inB());
        };
    }
}
