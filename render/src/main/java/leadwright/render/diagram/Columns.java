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
 * @param end where the columns end; beyond the tester where they do not fit
 * @param setting how roomy they are set
 * @param names what stands in the boxes of items
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
        double end,
        Setting setting,
        Names names) {

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

    /**
     * One hookup on one sheet.
     *
     * @param rowHeight room of each line's row
     */
    record Drawn(Net net, Routing routing, Lie lie, Map<String, Integer> tracks, Map<String, Double> rowHeight) {}

    /** The roomiest setting that fits; the tightest where none does. */
    static Columns of(double panelEnd, double tester, List<Drawn> all) {
        Columns columns = new Builder(panelEnd, tester, all, Setting.ALL.get(0)).build();
        for (Setting setting : Setting.ALL) {
            if (columns.end <= tester + 1e-9) {
                break;
            }
            columns = new Builder(panelEnd, tester, all, setting).build();
        }
        return columns;
    }

    /** Where the first tracks or fan-outs begin, or the tester where there are none. */
    double clearOfPanel() {
        return boxes.isEmpty() ? tester : channels.get(0);
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
        private final Setting setting;
        private final Names names;
        private final List<Column> hand = new ArrayList<>();

        Builder(double panelEnd, double tester, List<Drawn> all, Setting setting) {
            this.panelEnd = panelEnd;
            this.tester = tester;
            this.setting = setting;
            this.names = setting.lettered() ? Names.lettered(all) : Names.WRITTEN;
            this.wants = new Wants(all, setting, names);
        }

        Columns build() {
            double x = panelEnd + panelGap();
            for (int i = 0; i < wants.hands(); i++) {
                Column column = new Column(x, wants.handWidth(i) * setting.scale(), wants.plate(-1, i + 1));
                hand.add(column);
                x = column.right() + gap(column.plate());
            }
            Columns tight = placed(0);
            double spare = tester - tight.end();
            return spare <= 0 ? tight : placed(spare / (wants.columns() + 1));
        }

        private Columns placed(double spare) {
            List<Column> boxes = new ArrayList<>();
            List<List<Column>> after = new ArrayList<>();
            List<Double> channels = new ArrayList<>();
            double x = panelEnd + panelGap();
            for (int c = 0; c < wants.columns(); c++) {
                x = Math.max(x, handEnd(Math.max(wants.itemsInto(c), wants.itemsBeside(c))));
                x = (wants.open() ? Math.max(x, panelEnd + EndsPainter.openRoom()) : x) + spare;
                channels.add(x);
                Column box = new Column(x + tracks(c), wants.boxWidth(c) * setting.scale(), wants.plate(c, 0));
                boxes.add(box);
                x = box.right() + gap(box.plate());
                List<Column> behind = new ArrayList<>();
                for (int i = 0; i < wants.afterCount(c); i++) {
                    Column item = new Column(x, wants.afterWidth(c, i) * setting.scale(), wants.plate(c, i + 1));
                    behind.add(item);
                    x = item.right() + gap(item.plate());
                }
                after.add(List.copyOf(behind));
            }
            double last = Math.max(x, handEnd(wants.hands()));
            channels.add(last);
            return new Columns(
                    panelEnd,
                    wants.plate(-1, 0),
                    panelGap(),
                    List.copyOf(hand),
                    List.copyOf(boxes),
                    List.copyOf(after),
                    List.copyOf(channels),
                    tester,
                    last + tracks(wants.columns()),
                    setting,
                    names);
        }

        /** Where the gap after so many items ends. */
        private double handEnd(int items) {
            return items == 0
                    ? panelEnd + panelGap()
                    : hand.get(items - 1).right() + gap(hand.get(items - 1).plate());
        }

        private double tracks(int column) {
            int tracks = wants.tracks(column);
            return tracks == 0 ? 0 : tracks * setting.pitch() + 2;
        }

        private double panelGap() {
            double gap = gap(wants.plate(-1, 0));
            return wants.ribbons()
                    ? Math.max(gap + RIBBON, Texts.width("10 wires", Type.NOTE) + 2 * setting.stub())
                    : gap;
        }

        private double gap(double plate) {
            return Math.max(setting.plates() ? GAP : 2 * setting.stub(), plate + 2 * setting.stub());
        }
    }

    static double plateWidth(Net.Piece piece) {
        return piece.number().isEmpty() ? 0 : Texts.width(piece.number(), Type.NUMBER) + 1.6;
    }
}
