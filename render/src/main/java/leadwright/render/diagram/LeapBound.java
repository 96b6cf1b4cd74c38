package leadwright.render.diagram;

import java.util.Arrays;

/**
 * Crossings that lines in a given order still must make, whatever is done: a lower bound, the sum over pairs of ends.
 *
 * <p>A line counts for the end it runs to now; once gathered, for the end of the trunk. Of two fan-outs one gathers first, at a
 * place among the other's lines, and until then its lines cross all those between them and that place. Where both trunks run
 * to jacks, the one gathered then also crosses what keeps it from its side: the other's lines, or, when these
 * have been brought to one side, their trunk. Every crossing is counted for one pair only, so the sum is a bound.
 */
final class LeapBound {
    /** Place of the socket that an end is or leads to; -1 for a fan-out inside another. */
    private final int[] rank;

    private final boolean[] socket;

    /**
     * @param rank place among the sockets of an end that is one, or whose trunk runs to one; -1 for others
     * @param socket which ends are sockets
     */
    LeapBound(int[] rank, boolean[] socket) {
        this.rank = Arrays.copyOf(rank, rank.length);
        this.socket = Arrays.copyOf(socket, socket.length);
    }

    /** @param strands lines as {@link Strands} pack them */
    int of(String strands) {
        int[] present =
                strands.chars().map(each -> Strands.end((char) each)).distinct().toArray();
        int sum = 0;
        for (int end : present) {
            sum += of(strands, end);
        }
        return sum / 2;
    }

    /** What of it comes from the pairs of one end with the others. */
    int of(String strands, int end) {
        int[] ends = strands.chars().map(each -> Strands.end((char) each)).toArray();
        int[] lines = strands.chars().map(each -> Strands.lines((char) each)).toArray();
        boolean[] seen = new boolean[rank.length];
        seen[end] = true;
        int sum = 0;
        for (int other : ends) {
            sum += seen[other] ? 0 : pair(end, other, ends, lines);
            seen[other] = true;
        }
        return sum;
    }

    private int pair(int a, int b, int[] ends, int[] lines) {
        int[] above = new int[ends.length];
        int aLines = 0;
        int bLines = 0;
        for (int i = 0; i < ends.length; i++) {
            if (ends[i] == a) {
                above[i] = bLines;
                aLines += lines[i];
            } else if (ends[i] == b) {
                above[i] = aLines;
                bLines += lines[i];
            }
        }
        if (socket[a]) {
            return socket[b] ? outOfOrder(a, b, bLines, ends, lines, above) : beside(a, b, bLines, ends, above);
        }
        if (socket[b]) {
            return beside(b, a, aLines, ends, above);
        }
        return Math.min(first(a, b, bLines, ends, lines, above), first(b, a, aLines, ends, lines, above));
    }

    /** Lines to two sockets that stand in the other order than these. */
    private int outOfOrder(int a, int b, int others, int[] ends, int[] lines, int[] above) {
        int sum = 0;
        for (int i = 0; i < ends.length; i++) {
            int wrong = rank[a] < rank[b] ? above[i] : others - above[i];
            sum += ends[i] == a ? lines[i] * wrong : 0;
        }
        return sum;
    }

    /** A line to a socket among the lines to a fan-out. */
    private int beside(int one, int box, int others, int[] ends, int[] above) {
        int i = 0;
        while (ends[i] != one) {
            i++;
        }
        int up = above[i];
        int down = others - up;
        return rank[box] < 0 ? Math.min(up, down) : trunk(one, box, up, down);
    }

    /** Least crossings where the lines to {@code one} are gathered, at some place among those to {@code other}. */
    private int first(int one, int other, int others, int[] ends, int[] lines, int[] above) {
        boolean jacks = rank[one] >= 0 && rank[other] >= 0;
        int least = Integer.MAX_VALUE;
        for (int place = 0; place <= others; place++) {
            int crossings = jacks ? trunk(one, other, place, others - place) : 0;
            for (int i = 0; i < ends.length && crossings < least; i++) {
                crossings += ends[i] == one ? lines[i] * Math.abs(above[i] - place) : 0;
            }
            least = Math.min(least, crossings);
        }
        return least;
    }

    /** What a trunk must cross of the lines to a fan-out, so many above and below it, or of these and then of their trunk. */
    private int trunk(int one, int box, int up, int down) {
        int wrong = rank[one] < rank[box] ? up : down;
        return Math.min(wrong, up + down - wrong + 1);
    }
}
