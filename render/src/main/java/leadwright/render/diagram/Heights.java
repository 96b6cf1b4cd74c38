package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

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
    private static final int ROUNDS = 2000;

    /** Distance from the top of the rows to the middle of the first, from each to the next, and from the last to the end. */
    static Optional<Heights> of(Fit fit, List<Row> rows, List<Net> nets, List<Routing> routings, List<Socket> sockets) {
        double[] gap = new double[rows.size() + 1];
        for (int i = 0; i < rows.size(); i++) {
            gap[i] = i == 0
                    ? rows.get(0).above() + rows.get(0).height() / 2
                    : rows.get(i - 1).height() / 2
                            + rows.get(i).above()
                            + rows.get(i).height() / 2;
        }
        gap[rows.size()] = rows.isEmpty() ? 0 : rows.get(rows.size() - 1).height() / 2 + fit.pad() / 2;
        for (int round = 0; round < ROUNDS; round++) {
            List<Double> ys = new ArrayList<>();
            double y = Page.TOP;
            for (int i = 0; i < rows.size(); i++) {
                y += gap[i];
                ys.add(y);
            }
            double bottom = y + gap[rows.size()];
            if (bottom > Page.BOTTOM + 1e-6) {
                return Optional.empty();
            }
            Optional<Lie.Shortage> shortage = Optional.empty();
            for (int h = 0; h < nets.size() && shortage.isEmpty(); h++) {
                shortage = Lie.of(fit, rows, ys, bottom, nets.get(h), routings.get(h), sockets)
                        .shortage();
            }
            if (shortage.isEmpty()) {
                return Optional.of(new Heights(List.copyOf(ys), bottom));
            }
            gap[shortage.get().row()] += shortage.get().by() + 1e-6;
        }
        return Optional.empty();
    }
}
