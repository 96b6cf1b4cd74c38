package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The upright tracks of lines that change places, one track for each, counted from the device.
 *
 * <p>Of the lines that go down the lowest turns first, of those that go up the highest: so lines that keep their
 * order never meet, and lines that change it cross once, at a right angle. Lines that do not come near each other may share a track.
 */
final class Tracks {
    private Tracks() {}

    /** Track of each line that changes places. */
    static Map<String, Integer> of(Routing routing, Lie lie) {
        Map<String, Integer> tracks = new LinkedHashMap<>();
        routing.exchanges().forEach(exchange -> tracks.putAll(of(exchange, lie)));
        return tracks;
    }

    private static Map<String, Integer> of(Routing.Exchange exchange, Lie lie) {
        List<String> order = new ArrayList<>(exchange.movers());
        order.removeIf(line -> Math.abs(lie.from().get(line) - lie.to().get(line)) < 0.005);
        order.sort(Comparator.comparing((String line) -> goesUp(lie, line))
                .thenComparing(line -> (goesUp(lie, line) ? 1 : -1) * lie.from().get(line)));
        Map<String, Integer> tracks = new LinkedHashMap<>();
        for (String line : arranged(order, lie)) {
            int track = 0;
            for (Map.Entry<String, Integer> other : tracks.entrySet()) {
                if (near(lie, line, other.getKey())) {
                    track = Math.max(track, other.getValue() + 1);
                }
            }
            tracks.put(line, track);
        }
        return tracks;
    }

    /** The lines so that each stands after those that must turn before it, else in the order given. */
    private static List<String> arranged(List<String> order, Lie lie) {
        List<String> left = new ArrayList<>(order);
        List<String> arranged = new ArrayList<>();
        while (!left.isEmpty()) {
            String next = left.stream()
                    .filter(line -> left.stream().noneMatch(other -> before(lie, other, line)))
                    .findFirst()
                    .orElse(left.get(0));
            arranged.add(next);
            left.remove(next);
        }
        return arranged;
    }

    /** Whether one line must turn before another: neighbours of one direction, or one whose row the other takes over. */
    private static boolean before(Lie lie, String a, String b) {
        if (a.equals(b) || !near(lie, a, b)) {
            return false;
        }
        if (goesUp(lie, a) != goesUp(lie, b)) {
            return Math.abs(lie.to().get(b) - lie.from().get(a)) < Page.TRACK;
        }
        boolean lower = lie.from().get(a) > lie.from().get(b);
        return goesUp(lie, a) ? !lower : lower;
    }

    /** Number of tracks of one exchange. */
    static int count(Routing.Exchange exchange, Map<String, Integer> tracks) {
        return exchange.movers().stream()
                .filter(tracks::containsKey)
                .map(tracks::get)
                .mapToInt(track -> track + 1)
                .max()
                .orElse(0);
    }

    private static boolean goesUp(Lie lie, String line) {
        return lie.to().get(line) < lie.from().get(line);
    }

    private static boolean near(Lie lie, String a, String b) {
        double aTop = Math.min(lie.from().get(a), lie.to().get(a));
        double aEnd = Math.max(lie.from().get(a), lie.to().get(a));
        double bTop = Math.min(lie.from().get(b), lie.to().get(b));
        double bEnd = Math.max(lie.from().get(b), lie.to().get(b));
        return aTop < bEnd + Page.TRACK && bTop < aEnd + Page.TRACK;
    }
}
