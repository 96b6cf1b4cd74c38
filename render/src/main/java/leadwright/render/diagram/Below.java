package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.List;

/**
 * The words under a drawing: notes, then what letters, parted fan-outs and ties mean.
 *
 * @param notes in one line at the left; on one line alone the rest begins where the wires do
 * @param x where the rest begins on the first line; on further lines it begins at the left
 * @param rest at least one line, which may be empty
 */
record Below(String notes, double x, List<String> rest) {

    /** Distance of its lines. */
    private static final double LINE = 3.5;

    /** More lines are not set. */
    private static final int MOST = 5;

    Below {
        rest = List.copyOf(rest);
    }

    static Below of(Labels labels, List<String> left, List<String> right) {
        String notes = String.join("; ", left);
        String words = String.join(". ", right);
        double after = Page.LEFT + Texts.width(notes, Type.NOTE) + 6;
        double x = Math.max(labels.end() + 4, after);
        if (Texts.width(words, Type.NOTE) <= Page.RIGHT - x) {
            return new Below(notes, x, List.of(words));
        }
        // What does not fit one line runs on over the sheet's whole width.
        List<String> lines = new ArrayList<>();
        String first = Texts.wrap(words, Page.RIGHT - after, Type.NOTE, MOST).get(0);
        lines.add(first);
        lines.addAll(
                Texts.wrap(Texts.clean(words).substring(first.length()), Page.RIGHT - Page.LEFT, Type.NOTE, MOST - 1));
        return new Below(notes, after, lines);
    }

    /** Lower edge of the device at the lowest, where so many lines stand below it. */
    static double bottom(int lines) {
        return Page.BOTTOM - (lines - 1) * LINE;
    }

    int lines() {
        return rest.size();
    }

    void draw(Svg svg) {
        double y = Page.BELOW - (rest.size() - 1) * LINE;
        svg.text(Page.LEFT, y, Svg.Anchor.START, notes, Type.NOTE);
        for (int i = 0; i < rest.size(); i++) {
            if (!rest.get(i).isEmpty()) {
                svg.text(i == 0 ? x : Page.LEFT, y + i * LINE, Svg.Anchor.START, rest.get(i), Type.NOTE);
            }
        }
    }
}
