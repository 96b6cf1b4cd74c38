package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.List;

/**
 * How roomy columns are set.
 *
 * @param detail what fan-outs say of a ribbon's posts
 * @param pitch distance of neighbouring tracks
 * @param stub wire that shows on either side of a number plate
 * @param scale width of boxes over what they want
 * @param lettered whether letters stand for the names of items
 * @param plates whether numbers of joints have room; else they are left to the bench sheet and the titles of the wires
 */
record Setting(BoxPainter.Detail detail, double pitch, double stub, double scale, boolean lettered, boolean plates) {

    static final double STUB = 1.6;
    private static final double SHORT_STUB = 0.9;

    /** With it a name set in the smallest type just fits. */
    private static final double LEAST_SCALE = 0.85;

    /** From roomy to tight. */
    static final List<Setting> ALL = all();

    /** Whether every text has the room it wants. */
    boolean easy() {
        return scale == 1 && !lettered;
    }

    private static List<Setting> all() {
        List<Setting> all = new ArrayList<>();
        for (double pitch : new double[] {4.2, 3.9, 3.6, 3.4, Page.TRACK}) {
            all.add(new Setting(BoxPainter.Detail.TABLE, pitch, STUB, 1, false, true));
        }
        all.add(new Setting(BoxPainter.Detail.ORDER, Page.TRACK, STUB, 1, false, true));
        all.add(new Setting(BoxPainter.Detail.RANGE, Page.TRACK, STUB, 1, false, true));
        for (double scale : new double[] {0.95, 0.9, LEAST_SCALE}) {
            all.add(new Setting(BoxPainter.Detail.RANGE, Page.TRACK, STUB, scale, false, true));
        }
        all.add(new Setting(BoxPainter.Detail.RANGE, Page.TRACK, SHORT_STUB, LEAST_SCALE, false, true));
        for (double pitch : new double[] {Page.TRACK, 2.4, 1.6}) {
            all.add(new Setting(BoxPainter.Detail.RANGE, pitch, STUB, 1, true, true));
        }
        for (double pitch : new double[] {Page.TRACK, 1.6, 0.8, 0.4}) {
            all.add(new Setting(BoxPainter.Detail.RANGE, pitch, STUB, 1, true, false));
        }
        return List.copyOf(all);
    }
}
