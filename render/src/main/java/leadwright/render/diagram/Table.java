package leadwright.render.diagram;

import java.util.List;
import java.util.Optional;

/** The posts of a fan-out that a ribbon takes, written as a small table inside the box, column after column. */
record Table(List<String> entries, int columns, int lines, double columnWidth) {
    static final Type TYPE = new Type(8.5, false, Ink.BLACK);
    static final double LINE = 3.7;
    private static final double WIDEST = 62;

    /** The table, if it has room in a box of this height; the ribbon's pins are listed at the device in any case. */
    static Optional<Table> of(List<String> entries, double height) {
        double width = entries.stream()
                        .mapToDouble(entry -> Texts.width(Texts.clean(entry), TYPE))
                        .max()
                        .orElse(0)
                + 2.5;
        int most = Math.max(1, (int) ((height - 0.8) / LINE));
        int columns = (entries.size() + most - 1) / most;
        if (columns * width > WIDEST) {
            return Optional.empty();
        }
        return Optional.of(new Table(List.copyOf(entries), columns, (entries.size() + columns - 1) / columns, width));
    }

    /** What stands in the box instead where the table has no room: in many words, in few, or the bare numbers. */
    static String instead(List<String> entries, boolean few, boolean bare) {
        List<String> posts =
                entries.stream().map(entry -> entry.split(" : ", 2)[0]).toList();
        boolean numbers = posts.stream().allMatch(post -> post.matches("\\d{1,6}"));
        return (bare ? "" : "posts ")
                + (numbers ? Changes.ranges(posts.stream().map(Integer::valueOf).toList()) : String.join(" ", posts))
                + (few || bare ? "" : " in this order");
    }

    double width() {
        return columns * columnWidth;
    }
}
