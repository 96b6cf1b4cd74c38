package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.List;

/**
 * How the texts inside the device are set.
 *
 * @param end right edge of the device
 * @param bottom lower edge of the device at the lowest: what stands below it takes its room from the rows
 */
record Labels(double end, double bottom) {

    /** From wide to narrow: a narrower device leaves the wires more room. */
    static List<Labels> all(double bottom) {
        return List.of(new Labels(82, bottom), new Labels(74, bottom), new Labels(66, bottom));
    }

    static final double MARK = 4.8;

    /** Side of the square that shows a wire's colour. */
    static final double SQUARE = 3;

    /** How far the colour's square stands from the edge. */
    static final double INSET = 1.6;

    private static final String CONTINUED = ", continued";

    /** A group's name on its lines, and how these are set. */
    record Name(List<String> lines, Type type) {}

    /**
     * A group's name with the type in letters, which is never cut: that it is read right matters more than anything else
     * here. A name that would be cut is set smaller first.
     */
    Name name(Panel.Group group, List<Unit> units, Fit fit) {
        return name(group, units, fit, "", Integer.MAX_VALUE);
    }

    /** The same where the group goes on from the sheet before, on no more lines than its name has otherwise. */
    Name continued(Panel.Group group, List<Unit> units, Fit fit) {
        return name(
                group, units, fit, CONTINUED, name(group, units, fit).lines().size());
    }

    private Name name(Panel.Group group, List<Unit> units, Fit fit, String suffix, int lineLimit) {
        boolean ribbons = units.stream().anyMatch(Unit::ribbon);
        // Beside several rows a few lines cost no height.
        int rows = Math.min(units.size(), 3);
        int most = ribbons ? 1 : rows == 1 ? Math.min(2, fit.nameLines()) : Math.max(rows, fit.nameLines());
        int atMost = Math.min(lineLimit, most);
        double room = ribbons ? end - nameLeft(group) - 2 : nameRoom(group);
        String letters = group.type().map(each -> " (" + each.word() + ")").orElse("") + suffix;
        Type type = Type.GROUP;
        for (double pt = Type.GROUP.pt(); pt >= 8.5; pt -= 0.5) {
            type = new Type(pt, true, Ink.BLACK);
            List<String> whole = Texts.wrap(group.name() + letters, room, type, atMost + 1);
            if (whole.size() <= atMost) {
                return new Name(whole, type);
            }
        }
        List<String> lines = new ArrayList<>(Texts.wrap(group.name(), room, type, atMost));
        String last = lines.isEmpty() ? "" : lines.remove(lines.size() - 1);
        lines.add(Texts.fit(last, room - Texts.width(letters, type), type) + letters);
        return new Name(lines, type);
    }

    /** Lines of the labels of a ribbon's pins. */
    List<String> ribbonLines(Unit unit) {
        String labels =
                String.join("  ", unit.pins().stream().map(Panel.Pin::label).toList());
        return Texts.wrap(labels, end - Page.LEFT - 6, Type.KIT, 4);
    }

    double nameLeft(Panel.Group group) {
        return Page.LEFT
                + 2
                + group.mark().map(mark -> MARK * mark.ratio() + 1.6).orElse(0.0);
    }

    /** Right end of the labels of a group: at the edge, or left of the squares of its colours. */
    double labelEnd(Panel.Group group) {
        return end - (wordRoom(group) > 0 ? INSET + SQUARE + 1 : 2.2);
    }

    double labelRoom(Panel.Group group) {
        double widest = group.pins().stream()
                .mapToDouble(pin -> Texts.width(Texts.clean(pin.label()), Type.FOLLOWED))
                .max()
                .orElse(0);
        return Math.min(widest, group.below() ? belowLabel() : 34);
    }

    double wordRoom(Panel.Group group) {
        return group.pins().stream()
                .mapToDouble(pin -> Texts.width(pin.colourWords(), Type.SMALL))
                .max()
                .orElse(0);
    }

    private double nameRoom(Panel.Group group) {
        double words = wordRoom(group);
        return labelEnd(group) - labelRoom(group) - (words > 0 ? words + 2 : 0) - 3 - nameLeft(group);
    }

    /** Widest label of the group of housing, earth and mains. */
    double belowLabel() {
        return end - Page.LEFT - 19;
    }
}
