package leadwright.planner.order;

/** Least re-plugging from a site to a hookup, through other hookups too, by what the pose allows. */
final class Ways {
    private static final int OFF = 0;
    private static final int ON = 1;
    private static final int LIVE = 2;

    private final Problem problem;
    private final Gates gates;
    private final int[][][] ways = new int[3][][];

    Ways(Problem problem, Gates gates) {
        this.problem = problem;
        this.gates = gates;
        for (int kind = 0; kind < ways.length; kind++) {
            ways[kind] = shortest(kind);
        }
    }

    private int[][] shortest(int kind) {
        int n = problem.hookups();
        int[][] way = new int[2 * n][n];
        for (int from = 0; from < 2 * n; from++) {
            for (int to = 0; to < n; to++) {
                way[from][to] = from % n == to ? here(from, n) : one(from, to, kind);
            }
        }
        for (int over = 0; over < n; over++) {
            for (int from = 0; from < 2 * n; from++) {
                for (int to = 0; to < n; to++) {
                    if (from % n != over && way[from][over] < Stay.FAR && way[over][to] < Stay.FAR) {
                        way[from][to] = Math.min(way[from][to], way[from][over] + way[over][to]);
                    }
                }
            }
        }
        return way;
    }

    /** The earth lead comes off on the way to another hookup only: without it, a hookup is come to over another one. */
    private static int here(int from, int hookups) {
        return from < hookups ? 0 : Stay.FAR;
    }

    private int one(int from, int to, int kind) {
        Replugs.Replug replug = problem.replugs().between(from, to);
        boolean allowed = switch (kind) {
            case OFF -> true;
            case ON -> !replug.therapy();
            default -> replug.underPower();
        };
        return allowed ? replug.seconds() : Stay.FAR;
    }

    int at(int site, int hookup, int gate) {
        int kind = !gates.dead(gate) ? LIVE : gates.on(gate) ? ON : OFF;
        return ways[kind][site][hookup];
    }

    /** Whatever the gate. */
    int least(int site, int hookup) {
        return Math.min(ways[OFF][site][hookup], ways[LIVE][site][hookup]);
    }

    /** Least that one more stay in a hookup costs. */
    int detour(int hookup) {
        int least = Stay.FAR;
        for (int from = 0; from < 2 * problem.hookups(); from++) {
            if (problem.hookupOf(from) == hookup) {
                continue;
            }
            least = Math.min(least, least(from, hookup));
            for (int to = 0; to < problem.hookups(); to++) {
                if (to != hookup && to != problem.hookupOf(from)) {
                    least = Math.min(least, least(from, hookup) + least(hookup, to) - least(from, to));
                }
            }
        }
        return Math.max(0, least);
    }
}
