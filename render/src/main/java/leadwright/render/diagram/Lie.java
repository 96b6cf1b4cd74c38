package leadwright.render.diagram;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How the lines of one hookup lie, given the heights of the rows.
 *
 * @param from height at which each line starts
 * @param to height at which it ends; another one only for a line that changes places
 * @param boxes top and bottom of each box
 * @param shortage the first place where there is too little room
 */
record Lie(Map<String, Double> from, Map<String, Double> to, Map<String, Span> boxes, Optional<Shortage> shortage) {

    Lie {
        from = Map.copyOf(from);
        to = Map.copyOf(to);
        boxes = Map.copyOf(boxes);
    }

    record Span(double top, double bottom) {}

    /** Two neighbouring lines after an exchange. */
    record Pair(String hookup, String above, String below) {}

    /**
     * @param row the row above which {@code by} millimetres are wanting; the number of rows for below the last
     * @param pair lines whose lanes must lie further apart instead, where rows cannot help
     */
    record Shortage(int row, double by, Optional<Pair> pair) {}

    /** Boxes in the strip from one socket to the next used one; a long run of jacks that are not used here
     * takes two: one for the free, one for those on other sheets.
     */
    static int slots(List<Socket> sockets, int from, int to, int shortRuns) {
        int slots = 0;
        int run = 0;
        for (int i = from + 1; i < to; i++) {
            if (sockets.get(i).jack() > 0) {
                run++;
            } else {
                slots += (run >= shortRuns ? Math.min(run, 2) : run) + 1;
                run = 0;
            }
        }
        return slots + (run >= shortRuns ? Math.min(run, 2) : run);
    }
}
