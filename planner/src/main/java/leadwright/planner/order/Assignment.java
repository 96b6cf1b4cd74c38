package leadwright.planner.order;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/**
 * Rows to columns, each at most once, for the greatest sum.
 *
 * <p>Gives the column of each row, or -1. Method: shortest augmenting paths with potentials (H. W. Kuhn, "The Hungarian
 * method for the assignment problem", 1955, in the form that is cubic). Cost: cubic in the larger side. Gains are not
 * negative; of equal sums the one found first.
 */
final class Assignment {
    private Assignment() {}

    /**
     * The same where few pairs gain anything: rows and columns that no gain links are assigned on their own. A row that gains
     * nothing has no column. Cost: as for the largest of the linked sets.
     */
    static int[] apart(int[][] gains) {
        int rows = gains.length;
        int columns = rows == 0 ? 0 : gains[0].length;
        int[] columnOf = new int[rows];
        Arrays.fill(columnOf, -1);
        boolean[] seenRow = new boolean[rows];
        boolean[] seenColumn = new boolean[columns];
        for (int first = 0; first < rows; first++) {
            if (seenRow[first]) {
                continue;
            }
            List<Integer> ownRows = new ArrayList<>(List.of(first));
            List<Integer> ownColumns = new ArrayList<>();
            seenRow[first] = true;
            int columnsDone = 0;
            for (int i = 0; i < ownRows.size(); i++) {
                for (int c = 0; c < columns; c++) {
                    if (!seenColumn[c] && gains[ownRows.get(i)][c] > 0) {
                        seenColumn[c] = true;
                        ownColumns.add(c);
                    }
                }
                for (; columnsDone < ownColumns.size(); columnsDone++) {
                    for (int r = 0; r < rows; r++) {
                        if (!seenRow[r] && gains[r][ownColumns.get(columnsDone)] > 0) {
                            seenRow[r] = true;
                            ownRows.add(r);
                        }
                    }
                }
            }
            place(gains, ownRows, ownColumns, columnOf);
        }
        return columnOf;
    }

    private static void place(int[][] gains, List<Integer> rows, List<Integer> columns, int[] columnOf) {
        Collections.sort(rows);
        Collections.sort(columns);
        int[][] part = new int[rows.size()][columns.size()];
        for (int r = 0; r < part.length; r++) {
            for (int c = 0; c < part[r].length; c++) {
                part[r][c] = gains[rows.get(r)][columns.get(c)];
            }
        }
        int[] best = best(part);
        for (int r = 0; r < best.length; r++) {
            columnOf[rows.get(r)] = best[r] < 0 ? -1 : columns.get(best[r]);
        }
    }

    static int[] best(int[][] gains) {
        int rows = gains.length;
        int columns = rows == 0 ? 0 : gains[0].length;
        int size = Math.max(rows, columns);
        int[] rowAt = new int[size + 1];
        int[] way = new int[size + 1];
        int[] rowPrice = new int[size + 1];
        int[] columnPrice = new int[size + 1];
        for (int row = 1; row <= size; row++) {
            rowAt[0] = row;
            int column = 0;
            int[] least = new int[size + 1];
            Arrays.fill(least, Integer.MAX_VALUE);
            boolean[] done = new boolean[size + 1];
            do {
                done[column] = true;
                int from = rowAt[column];
                int step = Integer.MAX_VALUE;
                int next = 0;
                for (int c = 1; c <= size; c++) {
                    if (!done[c]) {
                        int cost = -gain(gains, from - 1, c - 1) - rowPrice[from] - columnPrice[c];
                        if (cost < least[c]) {
                            least[c] = cost;
                            way[c] = column;
                        }
                        if (least[c] < step) {
                            step = least[c];
                            next = c;
                        }
                    }
                }
                for (int c = 0; c <= size; c++) {
                    if (done[c]) {
                        rowPrice[rowAt[c]] += step;
                        columnPrice[c] -= step;
                    } else {
                        least[c] -= step;
                    }
                }
                column = next;
            } while (rowAt[column] != 0);
            do {
                int before = way[column];
                rowAt[column] = rowAt[before];
                column = before;
            } while (column != 0);
        }
        int[] columnOf = new int[rows];
        Arrays.fill(columnOf, -1);
        for (int c = 1; c <= columns; c++) {
            if (rowAt[c] <= rows) {
                columnOf[rowAt[c] - 1] = c - 1;
            }
        }
        return columnOf;
    }

    private static int gain(int[][] gains, int row, int column) {
        return row < gains.length && column < gains[row].length ? gains[row][column] : 0;
    }
}
