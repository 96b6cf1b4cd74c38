package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import leadwright.planner.plan.NaturalOrder;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Proposal;
import leadwright.planner.plan.Shortfall;

/** One cause with everything that it stops, gathered reading by reading. */
final class Cause {
    private final String about;
    private final String because;
    private final List<String> otherwise;
    private final SortedSet<String> connections = new TreeSet<>(NaturalOrder.IDS);
    private final List<Obligation> readings = new ArrayList<>();
    private final List<Want> wants = new ArrayList<>();

    /** @param otherwise what would help and is no item of a kit */
    Cause(String about, String because, List<String> otherwise) {
        this.about = about;
        this.because = because;
        this.otherwise = List.copyOf(otherwise);
    }

    /** @param want the reading without what other causes keep away */
    void stops(Want want, Collection<String> names) {
        connections.addAll(names);
        readings.addAll(want.readings());
        wants.add(want);
    }

    /** As above, where no item makes it possible. */
    void stopsForGood(Want want, Collection<String> names) {
        connections.addAll(names);
        readings.addAll(want.readings());
    }

    /** What items must make possible. */
    List<Want> wants() {
        return List.copyOf(wants);
    }

    /** @param settled whether the first proposal is proven smallest */
    Shortfall shortfall(List<Proposal> proposals, boolean settled) {
        List<String> additions =
                new ArrayList<>(proposals.stream().map(Proposal::text).toList());
        if (additions.isEmpty()) {
            additions.addAll(otherwise);
        }
        return new Shortfall(
                about,
                List.copyOf(connections),
                because
                        + (settled || proposals.isEmpty()
                                ? ""
                                : " (whether fewer pieces would do was not searched further)")
                        + "; not measured: " + words(readings),
                additions,
                proposals,
                readings.stream().map(Obligation::key).distinct().toList());
    }

    /** {@code touch current (2 readings), patient leakage current (1 reading)}. */
    static String words(List<Obligation> readings) {
        Map<String, Long> counts = readings.stream()
                .distinct()
                .collect(Collectors.groupingBy(
                        each -> each.quantity().word(), LinkedHashMap::new, Collectors.counting()));
        return counts.entrySet().stream()
                .map(each ->
                        each.getKey() + " (" + each.getValue() + (each.getValue() == 1 ? " reading)" : " readings)"))
                .collect(Collectors.joining(", "));
    }
}
