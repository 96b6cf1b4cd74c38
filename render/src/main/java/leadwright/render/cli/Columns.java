package leadwright.render.cli;

import java.util.ArrayList;
import java.util.List;

/** Rows of words set in columns, two blanks between them. */
final class Columns {
    private Columns() {}

    /** @param rows equally long; the first is the head */
    static List<String> of(List<List<String>> rows) {
        int[] width = new int[rows.get(0).size()];
        for (List<String> row : rows) {
            for (int column = 0; column < width.length; column++) {
                width[column] = Math.max(width[column], row.get(column).length());
            }
        }
        List<String> lines = new ArrayList<>();
        for (List<String> row : rows) {
            StringBuilder line = new StringBuilder();
            for (int column = 0; column < width.length; column++) {
                line.append(row.get(column))
                        .append(" ".repeat(width[column] - row.get(column).length() + 2));
            }
            lines.add(line.toString().stripTrailing());
        }
        return lines;
    }
}
