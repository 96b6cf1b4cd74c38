package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.kit.ItemKind;

/**
 * A kit in which only numbers of places count: what a connection goes into is an ordinary place (a jack, a branch of a fan-out
 * that takes all that a jack takes) or a branch of a comb, which takes one kind of leaf. Nothing has to reach.
 *
 * @param ordinary by leaf, ways into an ordinary place: scarce pieces of each, none of which takes no more than another
 * @param routes the same ways in items, position by position
 */
record PlainKit(
        List<List<int[]>> ordinary,
        List<List<Route>> routes,
        List<Comb> combs,
        List<Fan> fans,
        int[] gains,
        int furtherPlaces,
        int[] limits,
        int[] mostOrdinary) {

    private static final int MOST_SPLITS = 20_000;

    /** Fan-outs whose branches take one kind of leaf, through this route. */
    record Comb(Part part, int leaf, Route seat, Route trunk, int branches, int stock) {}

    /** Fan-outs whose branches take what a jack takes. */
    record Fan(Part part, Route trunk, int gain, int stock) {}

    /**
     * Ways taken.
     *
     * @param taken by leaf, by way, how many
     * @param earth position of the choice of earth lead, -1 where there is none
     */
    record Uses(int[][] taken, int earth) {}

    /** @param complete whether all ways were looked at where none was found */
    record Split(Optional<Uses> uses, boolean complete) {}

    /** The kit as the duty lets it be used, where it is plain. */
    static Optional<PlainKit> of(Tray tray, List<Leaf> leaves, String jackSocket) {
        if (leaves.stream().anyMatch(leaf -> leaf.reach() > 0)) {
            return Optional.empty();
        }
        return new Reader(tray, leaves, jackSocket).read();
    }

    boolean hasComb(int leaf) {
        return combs.stream().anyMatch(comb -> comb.leaf() == leaf);
    }

    boolean reaches(int leaf) {
        return !ordinary.get(leaf).isEmpty() || hasComb(leaf);
    }

    /** Most connections of a leaf that the stock lets into ordinary places. */
    int mostOrdinary(int leaf) {
        return mostOrdinary[leaf];
    }

    /**
     * A way for each of these connections that go into ordinary places, within the stock.
     *
     * @param earth scarce pieces of each choice of earth lead; empty where none is asked for
     */
    Split uses(int[] byLeaf, List<int[]> earth) {
        int[] tried = new int[1];
        List<int[]> choices = earth.isEmpty() ? List.of(new int[limits.length]) : earth;
        for (int choice = 0; choice < choices.size(); choice++) {
            int[] left = minus(limits, choices.get(choice), 1);
            int[][] taken = new int[byLeaf.length][];
            for (int leaf = 0; leaf < byLeaf.length; leaf++) {
                taken[leaf] = new int[ordinary.get(leaf).size()];
            }
            if (least(left) >= 0 && split(byLeaf, 0, 0, byLeaf.length == 0 ? 0 : byLeaf[0], left, taken, tried)) {
                return new Split(Optional.of(new Uses(taken, earth.isEmpty() ? -1 : choice)), true);
            }
        }
        return new Split(Optional.empty(), tried[0] <= MOST_SPLITS);
    }

    private boolean split(int[] byLeaf, int leaf, int way, int rest, int[] left, int[][] taken, int[] tried) {
        if (leaf == byLeaf.length) {
            return true;
        }
        if (rest == 0) {
            int next = leaf + 1;
            return split(byLeaf, next, 0, next == byLeaf.length ? 0 : byLeaf[next], left, taken, tried);
        }
        if (way == ordinary.get(leaf).size() || ++tried[0] > MOST_SPLITS) {
            return false;
        }
        int[] use = ordinary.get(leaf).get(way);
        int most = Math.min(rest, times(left, use));
        for (int count = most; count >= 0; count--) {
            taken[leaf][way] = count;
            if (split(byLeaf, leaf, way + 1, rest - count, minus(left, use, count), taken, tried)) {
                return true;
            }
        }
        taken[leaf][way] = 0;
        return false;
    }

    private static int times(int[] left, int[] use) {
        int times = Integer.MAX_VALUE;
        for (int piece = 0; piece < use.length; piece++) {
            if (use[piece] > 0) {
                times = Math.min(times, left[piece] / use[piece]);
            }
        }
        return times;
    }

    private static int[] minus(int[] left, int[] use, int count) {
        int[] next = left.clone();
        for (int piece = 0; piece < next.length; piece++) {
            next[piece] -= count * use[piece];
        }
        return next;
    }

    private static int least(int[] numbers) {
        return Arrays.stream(numbers).min().orElse(0);
    }

    /** Looks whether the kit is plain. */
    private static final class Reader {
        private final Tray tray;
        private final List<Leaf> leaves;
        private final Socket jack;
        private final List<Part> gathering;

        Reader(Tray tray, List<Leaf> leaves, String jackSocket) {
            this.tray = tray;
            this.leaves = leaves;
            this.jack = Socket.jack(jackSocket);
            this.gathering = tray.bench().parts().stream().filter(Part::gathers).toList();
        }

        Optional<PlainKit> read() {
            List<Comb> combs = new ArrayList<>();
            List<Fan> fans = new ArrayList<>();
            for (Part part : gathering) {
                boolean plain = part.item().kind() == ItemKind.FAN_OUT
                        && part.inlets().stream().noneMatch(inlet -> inlet.fill() || inlet.rear());
                if (!plain || !sort(part, combs, fans)) {
                    return Optional.empty();
                }
            }
            fans.sort(Comparator.comparingInt((Fan fan) -> -fan.gain())
                    .thenComparingInt(fan -> fan.part().piece()));
            combs.sort(Comparator.comparingInt((Comb comb) -> -comb.branches())
                    .thenComparingInt(comb -> comb.part().piece()));
            List<List<int[]>> ordinary = new ArrayList<>();
            List<List<Route>> routes = new ArrayList<>();
            for (Leaf leaf : leaves) {
                List<Route> best = best(leaf, jack);
                routes.add(best);
                ordinary.add(best.stream().map(this::scarce).toList());
            }
            int[] gains = fans.stream()
                    .flatMapToInt(fan ->
                            java.util.stream.IntStream.generate(fan::gain).limit(fan.stock()))
                    .toArray();
            int[] limits = Arrays.copyOf(tray.stock().limits(), tray.stock().limits().length - 1);
            int[] most = ordinary.stream().mapToInt(ways -> most(ways, limits)).toArray();
            return Optional.of(new PlainKit(
                    ordinary, routes, combs, fans, gains, Arrays.stream(gains).sum(), limits, most));
        }

        private static int most(List<int[]> ways, int[] limits) {
            long most = 0;
            for (int[] way : ways) {
                most += times(limits, way);
            }
            return (int) Math.min(most, Integer.MAX_VALUE);
        }

        /** Scarce pieces without the jacks. */
        private int[] scarce(Route route) {
            int[] use = tray.stock().of(route.use());
            return Arrays.copyOf(use, use.length - 1);
        }

        /** Ways without items that gather, none of which takes no more of what is scarce than another. */
        private List<Route> best(Leaf leaf, Socket socket) {
            List<Route> best = new ArrayList<>();
            for (Route route : tray.routes().into(leaf, socket)) {
                boolean gathers =
                        route.steps().stream().anyMatch(step -> step.part().gathers());
                if (!gathers && best.stream().noneMatch(other -> Routes.atMost(scarce(other), scarce(route)))) {
                    best.removeIf(other -> Routes.atMost(scarce(route), scarce(other)));
                    best.add(route);
                }
            }
            return best;
        }

        private static Socket branch(Part part) {
            Part.Inlet inlet = part.inlets().get(0);
            return new Socket(inlet.end(), inlet.also(), false, 0, false, 0);
        }

        /** Fan-out, comb, or of no use; false where the kit is not plain with it. */
        private boolean sort(Part part, List<Comb> combs, List<Fan> fans) {
            int stock = part.item().stock();
            Leaf trunk = Leaf.trunk(part.out());
            List<Route> into = best(trunk, jack);
            boolean reached = into.size() == 1 && taking(into.get(0)) == 0;
            if (into.isEmpty()) {
                return true;
            }
            if (likeJack(part)) {
                if (reached) {
                    fans.add(new Fan(part, into.get(0), part.inlets().size() - 1, stock));
                }
                return reached;
            }
            Socket branch = branch(part);
            if (gathering.stream()
                    .anyMatch(other -> !best(Leaf.trunk(other.out()), branch).isEmpty())) {
                return false;
            }
            List<Integer> takes = new ArrayList<>();
            for (int leaf = 0; leaf < leaves.size(); leaf++) {
                if (!best(leaves.get(leaf), branch).isEmpty()) {
                    takes.add(leaf);
                }
            }
            if (takes.isEmpty()) {
                return true;
            }
            List<Route> seats = best(leaves.get(takes.get(0)), branch);
            if (!reached || takes.size() > 1 || seats.size() > 1 || taking(seats.get(0)) > 0) {
                return false;
            }
            combs.add(new Comb(
                    part, takes.get(0), seats.get(0), into.get(0), part.inlets().size(), stock));
            return true;
        }

        private int taking(Route route) {
            return Arrays.stream(scarce(route)).sum();
        }

        /** Whether a branch takes all that a jack takes, through the same pieces. */
        private boolean likeJack(Part part) {
            Socket branch = branch(part);
            return leaves.stream().allMatch(leaf -> same(leaf, branch))
                    && gathering.stream().allMatch(other -> same(Leaf.trunk(other.out()), branch));
        }

        private boolean same(Leaf leaf, Socket branch) {
            List<String> at =
                    best(leaf, jack).stream().map(this::words).sorted().toList();
            List<String> there =
                    best(leaf, branch).stream().map(this::words).sorted().toList();
            return at.equals(there);
        }

        private String words(Route route) {
            return Arrays.toString(scarce(route));
        }
    }
}
