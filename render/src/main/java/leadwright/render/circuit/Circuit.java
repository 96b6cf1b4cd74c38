package leadwright.render.circuit;

import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/**
 * The way of the current in one reading: a closed loop of stations, and the conductors beside it. Words and figure are made
 * of the same stations, so that what is said is what is drawn.
 *
 * @param way stations in the order in which the current runs through them, from where it begins
 * @param end what is said after the last station
 * @param other the supply's conductor that the current does not leave by; empty where the device is not on the mains
 * @param earth the conductor that joins the device to earth beside the way; empty where there is none, or the way runs in it
 * @param broken whether the loop must not be closed: the reading looks for what ought not to be there
 */
public record Circuit(
        List<Station> way, String end, Optional<Conductor> other, Optional<Conductor> earth, boolean broken) {
    public Circuit {
        way = List.copyOf(way);
        if (way.size() < 2) {
            throw new IllegalArgumentException("a loop of one station");
        }
    }

    /**
     * A conductor beside the way.
     *
     * @param name what it is called
     * @param at whether it has a switch at the tester, and how that stands
     */
    public record Conductor(String name, At at) {}

    /** How a conductor is at the tester. */
    public enum At {
        CLOSED("closed"),
        OPEN("OPEN"),
        /** It does not pass the tester: fixed plant. */
        WITHOUT_SWITCH("");

        final String word;

        At(String word) {
            this.word = word;
        }
    }

    /** The way in words: a sentence. */
    public String words() {
        return way.stream().map(Station::phrase).collect(Collectors.joining()) + end;
    }

    /** The names of the stations in order, as the figure numbers them. */
    public List<String> labels() {
        return way.stream().map(Station::label).toList();
    }

    /** What the figure shows beside the way: the conductors and how they stand. */
    public String beside() {
        return java.util.stream.Stream.of(other, earth)
                .flatMap(Optional::stream)
                .map(each -> each.name() + (each.at().word.isEmpty() ? "" : " " + each.at().word))
                .collect(Collectors.joining(", "));
    }

    /** Whether both are drawn alike: the same boxes in the same places, and the same beside them. */
    public boolean looksLike(Circuit that) {
        return drawn().equals(that.drawn())
                && other.equals(that.other)
                && earth.equals(that.earth)
                && broken == that.broken;
    }

    private List<List<Object>> drawn() {
        return way.stream()
                .map(each -> List.<Object>of(each.zone(), each.row(), each.label()))
                .toList();
    }

    /** The same in other words, such as those of a department that says 'ground'. */
    public Circuit said(UnaryOperator<String> say) {
        return new Circuit(
                way.stream()
                        .map(each ->
                                new Station(each.zone(), each.row(), say.apply(each.label()), say.apply(each.phrase())))
                        .toList(),
                say.apply(end),
                other.map(each -> new Conductor(say.apply(each.name()), each.at())),
                earth.map(each -> new Conductor(say.apply(each.name()), each.at())),
                broken);
    }
}
