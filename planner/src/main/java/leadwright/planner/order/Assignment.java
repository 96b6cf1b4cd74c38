package leadwright.planner.order;

import java.util.Arrays;

/**
 * Rows to columns, each at most once, for the greatest sum.
 *
 * <p>Gives the column of each row, or -1. Method: shortest augmenting paths with potentials (H. W. Kuhn, "The Hungarian
 * method for the assignment problem", 1955, in the form that is cubic). Cost: cubic in the larger side. Gains are not
 * negative; of equal sums the one found first.
 */
final class Assignment {
    private Assignment() {}

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
