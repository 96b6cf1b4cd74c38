package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Phase 7: where the columns stand, the same on every sheet of a plan: items at the device's end, fan-outs with the items
 * after them, the tester. After each column there is room for the numbers of the joints that begin there, and before
 * a column of fan-outs or the tester for the tracks of lines that change places.
 *
 * @param hand columns of items before a fan-out
 * @param boxes columns of fan-outs
 * @param after columns of items behind the fan-outs of each column
 * @param channels left end of the tracks before each column of fan-outs, and before the tester
 * @param panelPlate width of the number plates next to the panel
 * @param panelGap width of the gap next to the panel
 * @param trackPitch distance of neighbouring tracks
 * @param scale width of the boxes over what they want
 */
record Columns(
        double panelEnd,
        double panelPlate,
        double panelGap,
        List<Column> hand,
        List<Column> boxes,
        List<List<Column>> after,
        List<Double> channels,
        double tester,
        double trackPitch,
        double scale) {

    /** @param plate width of the number plates right of the column */
    record Column(double left, double width, double plate) {
        double right() {
            return left + width;
        }
    }

    /** The least gap between two columns. */
    static final double GAP = 6;

    /** Room of a ribbon's oblique stroke. */
    static final double RIBBON = 2.6;

    /** Wire that shows on either side of a plate. */
    static final double STUB = 1.6;

    /**
     * One hookup on one sheet.
     *
     * @param rowHeight room of each line's row
     */
    record Drawn(Net net, Routing routing, Lie lie, Map<String, Integer> tracks, Map<String, Double> rowHeight) {}

    /** Roomy tracks where there is room, then no tables in fan-outs, then narrower boxes, then narrower tracks. */
    static Columns of(double panelEnd, double tester, List<Drawn> all) {
        Wants wants = new Wants(all, BoxPainter.Detail.TABLE);
        Columns columns = new Builder(panelEnd, tester, wants, ROOMY, 1).build();
        for (double pitch = ROOMY; columns.overfull() && pitch > Page.TRACK; pitch -= 0.25) {
            columns = new Builder(panelEnd, tester, wants, Math.max(pitch, Page.TRACK), 1).build();
        }
        for (BoxPainter.Detail detail : List.of(BoxPainter.Detail.ORDER, BoxPainter.Detail.RANGE)) {
            if (columns.overfull()) {
                wants = new Wants(all, detail);
                columns = new Builder(panelEnd, tester, wants, Page.TRACK, 1).build();
            }
        }
        for (double scale = 1; columns.overfull() && scale > 0.35; scale -= 0.05) {
            columns = new Builder(panelEnd, tester, wants, Page.TRACK, scale).build();
        }
        for (double pitch = Page.TRACK; columns.overfull() && pitch > 0.5; pitch -= 0.25) {
            columns = new Builder(panelEnd, tester, wants, pitch, 0.4).build();
        }
        return columns;
    }

    private static final double ROOMY = 4.2;

    private boolean overfull() {
        return channels.get(channels.size() - 1) < panelEnd;
    }

    /** Index among the plan's columns of a hookup's column: a hookup with fewer columns has them at the tester's side. */
    int shift(Routing routing) {
        return boxes.size() - routing.columns().size();
    }

    /**
     * Places columns from the left. A column of fan-outs stands right of the items on the lines that enter it; items on other lines
     * may stand above or below its boxes. Only tracks, which run across the rows, keep clear of all items.
     */
    private static final class Builder {
        private final double panelEnd;
        private final double tester;
        private final Wants wants;
        private final double pitch;
        private final double scale;
        private final List<Column> hand = new ArrayList<>();

        Builder(double panelEnd, double tester, Wants wants, double pitch, double scale) {
            this.panelEnd = panelEnd;
            this.tester = tester;
            this.wants = wants;
            this.pitch = pitch;
            this.scale = scale;
        }

        Columns build() {
            double x = panelEnd + panelGap();
            for (int i = 0; i < wants.hands(); i++) {
                Column column = new Column(x, wants.handWidth(i) * scale, wants.plate(-1, i + 1));
                hand.add(column);
                x = column.right() + gap(column.plate());
            }
            Columns tight = placed(0);
            double last = tight.channels().get(wants.columns());
            double spare = tester - last - tracks(wants.columns());
            if (spare < 0) {
                // Marks the attempt as one that does not fit.
                List<Double> channels = new ArrayList<>(tight.channels());
                channels.set(wants.columns(), panelEnd - 1);
                return new Columns(
                        panelEnd,
                        tight.panelPlate(),
                        tight.panelGap(),
                        tight.hand(),
                        tight.boxes(),
                        tight.after(),
                        channels,
                        tester,
                        pitch,
                        scale);
            }
            return placed(spare / (wants.columns() + 1));
        }

        private Columns placed(double spare) {
            List<Column> boxes = new ArrayList<>();
            List<List<Column>> after = new ArrayList<>();
            List<Double> channels = new ArrayList<>();
            double x = panelEnd + panelGap();
            for (int c = 0; c < wants.columns(); c++) {
                x = Math.max(x, handEnd(Math.max(wants.itemsInto(c), wants.itemsBeside(c)))) + spare;
                channels.add(x);
                Column box = new Column(x + tracks(c), wants.boxWidth(c) * scale, wants.plate(c, 0));
                boxes.add(box);
                x = box.right() + gap(box.plate());
                List<Column> behind = new ArrayList<>();
                for (int i = 0; i < wants.afterCount(c); i++) {
                    Column item = new Column(x, wants.afterWidth(c, i) * scale, wants.plate(c, i + 1));
                    behind.add(item);
                    x = item.right() + gap(item.plate());
                }
                after.add(List.copyOf(behind));
            }
            channels.add(Math.max(x, handEnd(wants.hands())));
            return new Columns(
                    panelEnd,
                    wants.plate(-1, 0),
                    panelGap(),
                    List.copyOf(hand),
                    List.copyOf(boxes),
                    List.copyOf(after),
                    List.copyOf(channels),
                    tester,
                    pitch,
                    scale);
        }

        /** Where the gap after so many items ends. */
        private double handEnd(int items) {
            return items == 0
                    ? panelEnd + panelGap()
                    : hand.get(items - 1).right() + gap(hand.get(items - 1).plate());
        }

        private double tracks(int column) {
            int tracks = wants.tracks(column);
            return tracks == 0 ? 0 : tracks * pitch + 2;
        }

        private double panelGap() {
            double gap = gap(wants.plate(-1, 0));
            return wants.ribbons() ? Math.max(gap + RIBBON, Texts.width("10 wires", Type.NOTE) + 2 * STUB) : gap;
        }

        private static double gap(double plate) {
            return Math.max(GAP, plate + 2 * STUB);
        }
    }

    static double plateWidth(Net.Piece piece) {
        return piece.number().isEmpty() ? 0 : Texts.width(piece.number(), Type.NUMBER) + 1.6;
    }
}
