package leadwright.catalog.house;

import java.util.Map;
import leadwright.catalog.quantity.Quantity;

/**
 * Bench times by action. The defaults are the table of actions in the project's planning guide: common practice, no
 * source; a house may change each.
 *
 * @param contacts join and part times by contact kind word ({@code snap}, {@code touch-proof}, {@code pinch},
 *     {@code lab-4mm}, {@code foil}, {@code bath}, {@code fluid})
 * @param actions single times by action word, see {@link #defaults()}
 */
public record Times(Map<String, JoinPart> contacts, Map<String, Quantity> actions) {
    public Times {
        contacts = Map.copyOf(contacts);
        actions = Map.copyOf(actions);
    }

    /** Times to join and to part one contact. */
    public record JoinPart(Quantity join, Quantity part) {}

    public JoinPart contact(String kind) {
        JoinPart times = contacts.get(kind);
        if (times == null) {
            throw new IllegalArgumentException("no times for contact kind '" + kind + "'");
        }
        return times;
    }

    public Quantity action(String word) {
        Quantity time = actions.get(word);
        if (time == null) {
            throw new IllegalArgumentException("no time for action '" + word + "'");
        }
        return time;
    }

    private static JoinPart jp(long join, long part) {
        return new JoinPart(Quantity.seconds(join), Quantity.seconds(part));
    }

    public static Times defaults() {
        return new Times(
                Map.ofEntries(
                        Map.entry("snap", jp(6, 3)),
                        Map.entry("touch-proof", jp(5, 3)),
                        Map.entry("pinch", jp(5, 3)),
                        Map.entry("lab-4mm", jp(5, 3)),
                        Map.entry("foil", jp(60, 15)),
                        // One figure covers fitting and taking off, wiping included: it is paid at the fitting.
                        Map.entry("bath", jp(180, 0)),
                        Map.entry("fluid", jp(150, 0))),
                Map.ofEntries(
                        Map.entry("clip", Quantity.seconds(10)),
                        Map.entry("unwind", Quantity.seconds(90)),
                        Map.entry("null", Quantity.seconds(20)),
                        Map.entry("outlet", Quantity.seconds(2)),
                        Map.entry("open-conductor", Quantity.seconds(2)),
                        Map.entry("polarity", Quantity.seconds(5)),
                        Map.entry("select", Quantity.seconds(2)),
                        Map.entry("touch", Quantity.seconds(8)),
                        Map.entry("read-first", Quantity.seconds(10)),
                        Map.entry("read", Quantity.seconds(5)),
                        Map.entry("read-earth", Quantity.seconds(10)),
                        Map.entry("flex-cord", Quantity.seconds(15)),
                        Map.entry("read-insulation", Quantity.seconds(30)),
                        Map.entry("discharge", Quantity.seconds(10)),
                        Map.entry("read-mains-on-part", Quantity.seconds(15)),
                        Map.entry("write", Quantity.seconds(5)),
                        Map.entry("look-over", Quantity.seconds(180)),
                        Map.entry("part-cables", Quantity.seconds(60)),
                        Map.entry("put-back", Quantity.seconds(120)),
                        Map.entry("label", Quantity.seconds(30))));
    }
}
