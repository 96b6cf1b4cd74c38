package leadwright.planner.plan;

import java.util.List;

/**
 * Something the kit or tester cannot do; the plan becomes partial.
 *
 * @param about the kit item, tester property or connection concerned
 * @param connections full names of the connections concerned; empty where none
 * @param because what is missing and why, for a person
 * @param additions the smallest additions that would do, each spelled out; first those of items, then what else would help
 * @param proposals those of the additions that are items of the kit; each alone takes this cause away, no piece of it is needless
 * @param readings keys of the obligations that are stopped, as far as they have one yet
 */
public record Shortfall(
        String about,
        List<String> connections,
        String because,
        List<String> additions,
        List<Proposal> proposals,
        List<String> readings) {
    /** How the reason begins where no reading can say that the protective earth is sound. */
    public static final String EARTH_NOT_KNOWN =
            "no earth resistance can be read: whether the earth is sound is not known";

    public Shortfall {
        connections = List.copyOf(connections);
        additions = List.copyOf(additions);
        proposals = List.copyOf(proposals);
        readings = List.copyOf(readings);
    }

    /** What no item of a kit can help. */
    public Shortfall(String about, List<String> connections, String because, List<String> additions) {
        this(about, connections, because, additions, List.of(), List.of());
    }
}
