package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.List;

/**
 * How roomy a sheet is laid out.
 *
 * @param pitch distance of neighbouring rows
 * @param pad room between two groups
 * @param nameLines most lines of a group's name
 * @param shortRuns from how many free jacks in a row one box stands for all of them
 * @param lane least distance of wires side by side
 * @param jack least distance of neighbouring jacks
 */
record Fit(double pitch, double pad, int nameLines, int shortRuns, double lane, double jack) {

    /** From roomy to tight. */
    static final List<Fit> ALL = all();

    private static List<Fit> all() {
        List<Fit> all = new ArrayList<>();
        for (int tenths = 70; tenths > 48; tenths -= 2) {
            all.add(new Fit(tenths / 10.0, Math.min(3, tenths / 20.0), 3, 5, 3.2, 5));
        }
        all.add(new Fit(4.8, 2, 2, 4, 3.2, 5));
        all.add(new Fit(4.8, 1, 1, 2, 3.05, 4.7));
        return List.copyOf(all);
    }
}
