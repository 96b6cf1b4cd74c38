package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Phase 6: heights of rows, lines, boxes and jacks. A row keeps its height in every hookup of the plan.
 *
 * <p>Every wire that does not change places is one horizontal line on its row; a box is as tall as the rows it gathers; what
 * leaves it stands level with their middle, and so does its jack. Where some hookup needs more room between two rows, for lanes of
 * lines that change places or for free jacks, the rows move apart for the whole plan. Only distances grow, so this ends.
 *
 * @param rows height of each row's middle
 * @param bottom where the last row ends
 */
record Heights(List<Double> rows, double bottom) {
    private static final int ROUNDS = 1000;

    Heights {
        rows = List.copyOf(rows);
    }

    /** The hookups laid out. */
    record Laid(Heights heights, List<Lie> lies) {}

    /** Heights with which every hookup has the room it needs; nothing where the sheet is too low for that. */
    static Optional<Laid> of(
            Fit fit, double lowest, List<Row> rows, List<Net> nets, List<Routing> routings, List<Socket> sockets) {
        double[] gap = least(fit, rows);
        Map<Lie.Pair, Double> apart = new HashMap<>();
        for (int round = 0; round < ROUNDS; round++) {
            Heights heights = stacked(gap);
            if (heights.bottom > lowest + 1e-6) {
                return Optional.empty();
            }
            List<Lie> lies = new ArrayList<>();
            for (int h = 0; h < nets.size(); h++) {
                lies.add(new Laying(fit, rows, heights, nets.get(h), routings.get(h), sockets, apart).lie());
            }
            List<Lie.Shortage> shortages =
                    lies.stream().flatMap(lie -> lie.shortage().stream()).toList();
            if (shortages.isEmpty()) {
                return Optional.of(new Laid(heights, lies));
            }
            widen(gap, apart, shortages);
        }
        return Optional.empty();
    }

    /** Makes room; where several hookups want it above one row, for the one that wants most. */
    private static void widen(double[] gap, Map<Lie.Pair, Double> apart, List<Lie.Shortage> shortages) {
        Map<Integer, Double> byRow = new TreeMap<>();
        for (Lie.Shortage shortage : shortages) {
            // A hair more than is wanting, so that rounding never asks twice.
            double by = shortage.by() + 1e-6;
            shortage.pair()
                    .ifPresentOrElse(
                            pair -> apart.merge(pair, by, Double::sum),
                            () -> byRow.merge(shortage.row(), by, Math::max));
        }
        byRow.forEach((row, by) -> gap[row] += by);
    }

    /** From the top to the middle of the first row, from each to the next, and from the last to the end. */
    private static double[] least(Fit fit, List<Row> rows) {
        double[] gap = new double[rows.size() + 1];
        for (int i = 0; i < rows.size(); i++) {
            double before = i == 0 ? 0 : rows.get(i - 1).height() / 2;
            gap[i] = before + rows.get(i).above() + rows.get(i).height() / 2;
        }
        gap[rows.size()] = rows.isEmpty() ? 0 : rows.get(rows.size() - 1).height() / 2 + fit.pad() / 2;
        return gap;
    }

    private static Heights stacked(double[] gap) {
        List<Double> rows = new ArrayList<>();
        double y = Page.TOP;
        for (int i = 0; i < gap.length - 1; i++) {
            y += gap[i];
            rows.add(y);
        }
        return new Heights(rows, y + gap[gap.length - 1]);
    }
}
