package leadwright.render.diagram;

import java.util.List;

/**
 * The rows of one sheet, and every hookup of the plan laid on them.
 *
 * @param continued whether the first group begins on the sheet before
 * @param drawn one for each hookup, in the plan's order
 */
record Sheet(List<Row> rows, Heights heights, boolean continued, List<Columns.Drawn> drawn) {
    Sheet {
        rows = List.copyOf(rows);
        drawn = List.copyOf(drawn);
    }
}
