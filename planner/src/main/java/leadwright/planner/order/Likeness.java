package leadwright.planner.order;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import leadwright.planner.plan.NaturalOrder;

/**
 * Phase 2: which instance of one arrangement serves as which like instance of the next, so that most of the joints, by
 * their times, may stay as they are.
 *
 * <p>Needs the joints of both. Gives the greatest worth of joints kept and the pairing. Method: branch and
 * bound over the instances of the first arrangement, those with most joints first. At each node the open instances are
 * paired by the best {@link Assignment}, kind by kind; a joint between two open instances counts there as kept wherever the
 * second arrangement has one like it, which bounds the node. If that pairing keeps as much as it counted, the node is
 * solved; if not, the next instance is tried as every free like instance (of those that nothing tells apart, one) and as
 * none. The second arrangement may be several laid over each other: a joint counts as often as it occurs in them. Cost:
 * exponential at worst, a handful of nodes in practice; where the limit on nodes ends it, {@code atMost} is the bound of the
 * first node.
 */
final class Likeness {
    private static final int NODES = 20_000;
    /** A node costs the square of the number of instances. */
    private static final long WORK = 6_000_000;

    private static final int NONE = -1;

    /**
     * Result.
     *
     * @param kept worth of the joints kept
     * @param atMost no pairing keeps more
     * @param standsFor instance of the first arrangement to the instance of the second that it becomes
     */
    record Pairing(int kept, int atMost, Map<String, String> standsFor) {}

    private final List<String> mine;
    private final List<String> theirs;
    /** Weight of joints to connections and jacks that x keeps as y. */
    private final int[][] fixed;
    /** How often y is joined to y' in the second arrangement, y nearer the device. */
    private final int[][] joined;
    /** Joints of x to instances placed before it: the other, and whether x is nearer the device. */
    private final List<List<Pair>> closing = new ArrayList<>();

    private final int[][] likes;
    private int[] twin = new int[0];
    private final int[] chosen;
    private final boolean[] used;
    private int[] best;
    private int bestKept = -1;
    private int atMost;
    private int nodes;

    private record Pair(int other, boolean from, int weight) {}

    private Likeness(List<Contact> from, List<Contact> to) {
        mine = connected(from);
        theirs = List.copyOf(items(to));
        int n = mine.size();
        int m = theirs.size();
        fixed = new int[n][m];
        joined = new int[m][m];
        Map<String, Integer> placeOf = new HashMap<>();
        theirs.forEach(each -> placeOf.put(each, placeOf.size()));
        Map<String, List<Contact>> ending = new HashMap<>();
        for (Contact each : to) {
            if (Scene.isItem(each.from()) && Scene.isItem(each.to())) {
                joined[placeOf.get(each.from())][placeOf.get(each.to())]++;
            } else {
                ending.computeIfAbsent(Scene.isItem(each.from()) ? each.to() : each.from(), key -> new ArrayList<>())
                        .add(each);
            }
        }
        Map<String, Integer> rankOf = new HashMap<>();
        mine.forEach(each -> rankOf.put(each, rankOf.size()));
        mine.forEach(each -> closing.add(new ArrayList<>()));
        for (Contact each : from) {
            int a = rankOf.getOrDefault(each.from(), NONE);
            int b = rankOf.getOrDefault(each.to(), NONE);
            if (a >= 0 && b >= 0) {
                closing.get(Math.max(a, b)).add(new Pair(Math.min(a, b), a > b, each.worth()));
            } else {
                ending.getOrDefault(a >= 0 ? each.to() : each.from(), List.of())
                        .forEach(other -> fix(each, other, a, b, placeOf));
            }
        }
        Map<String, int[]> ofKind = new HashMap<>();
        for (int y = 0; y < m; y++) {
            String kind = Scene.kind(theirs.get(y));
            int here = y;
            ofKind.merge(kind, new int[] {y}, (all, one) -> {
                int[] more = Arrays.copyOf(all, all.length + 1);
                more[all.length] = here;
                return more;
            });
        }
        likes = new int[n][];
        for (int x = 0; x < n; x++) {
            likes[x] = ofKind.getOrDefault(Scene.kind(mine.get(x)), new int[0]);
        }
        chosen = new int[n];
        used = new boolean[m];
        best = new int[n];
        Arrays.fill(best, NONE);
    }

    private void fix(Contact one, Contact other, int a, int b, Map<String, Integer> placeOf) {
        boolean same = a >= 0
                ? one.to().equals(other.to()) && Scene.isItem(other.from())
                : one.from().equals(other.from()) && Scene.isItem(other.to());
        if (same && Math.max(a, b) >= 0) {
            fixed[Math.max(a, b)][placeOf.get(a >= 0 ? other.from() : other.to())] += one.worth();
        }
    }

    /** The first instance that no instance of the first arrangement tells apart from y. */
    private int firstTwin(int y) {
        for (int other = 0; other < y; other++) {
            int twin = other;
            boolean same = Scene.kind(theirs.get(other)).equals(Scene.kind(theirs.get(y)))
                    && Arrays.stream(fixed).allMatch(row -> row[twin] == row[y])
                    && Arrays.equals(joined[twin], joined[y])
                    && Arrays.stream(joined).allMatch(row -> row[twin] == row[y]);
            if (same) {
                return other;
            }
        }
        return y;
    }

    static Pairing between(List<Contact> from, List<Contact> to) {
        Likeness likeness = new Likeness(from, to);
        likeness.search(0, 0);
        Map<String, String> standsFor = new LinkedHashMap<>();
        for (int x = 0; x < likeness.best.length; x++) {
            if (likeness.best[x] != NONE) {
                standsFor.put(likeness.mine.get(x), likeness.theirs.get(likeness.best[x]));
            }
        }
        boolean finished = likeness.nodes < likeness.most();
        return new Pairing(likeness.bestKept, finished ? likeness.bestKept : likeness.atMost, standsFor);
    }

    private static Set<String> items(List<Contact> contacts) {
        Set<String> items = new TreeSet<>(NaturalOrder.IDS);
        for (Contact each : contacts) {
            List.of(each.from(), each.to()).stream().filter(Scene::isItem).forEach(items::add);
        }
        return items;
    }

    /** Items with most joints first, each followed by its neighbours, so that joints close early. */
    private static List<String> connected(List<Contact> contacts) {
        Map<String, Set<String>> neighbours = new LinkedHashMap<>();
        items(contacts).forEach(each -> neighbours.put(each, new LinkedHashSet<>()));
        for (Contact each : contacts) {
            neighbours.getOrDefault(each.from(), new LinkedHashSet<>()).add(each.to());
            neighbours.getOrDefault(each.to(), new LinkedHashSet<>()).add(each.from());
        }
        List<String> byDegree = new ArrayList<>(neighbours.keySet());
        byDegree.sort(
                Comparator.comparing((String each) -> -neighbours.get(each).size())
                        .thenComparing(NaturalOrder.IDS));
        Set<String> placed = new LinkedHashSet<>();
        for (String root : byDegree) {
            List<String> queue = new ArrayList<>(List.of(root));
            for (int i = 0; i < queue.size(); i++) {
                if (placed.add(queue.get(i))) {
                    neighbours.get(queue.get(i)).stream().filter(Scene::isItem).forEach(queue::add);
                }
            }
        }
        return List.copyOf(placed);
    }

    private long most() {
        long size = Math.max(1, mine.size());
        return Math.max(50, Math.min(NODES, WORK / (size * size)));
    }

    private void search(int x, int kept) {
        if (nodes >= most()) {
            return;
        }
        nodes++;
        int bound = kept + assign(x);
        atMost = nodes == 1 ? bound : atMost;
        if (bound <= bestKept) {
            return;
        }
        int[] assigned = chosen.clone();
        int real = kept;
        for (int i = x; i < mine.size(); i++) {
            real += gain(i, chosen[i]);
        }
        if (real > bestKept) {
            bestKept = real;
            best = assigned;
        }
        if (real == bound) {
            return;
        }
        if (twin.length == 0) {
            twin = IntStream.range(0, theirs.size()).map(this::firstTwin).toArray();
        }
        List<Integer> choices = new ArrayList<>();
        Set<Integer> classes = new LinkedHashSet<>();
        if (assigned[x] != NONE) {
            choices.add(assigned[x]);
            classes.add(twin[assigned[x]]);
        }
        for (int y : likes[x]) {
            if (!used[y] && classes.add(twin[y])) {
                choices.add(y);
            }
        }
        for (int y : choices) {
            chosen[x] = y;
            used[y] = true;
            search(x + 1, kept + gain(x, y));
            used[y] = false;
        }
        chosen[x] = NONE;
        search(x + 1, kept);
    }

    /** Pairs the instances from x on as well as can be, kind by kind; joints among them count as kept where they may be. */
    private int assign(int x) {
        int sum = 0;
        boolean[] placed = new boolean[mine.size()];
        for (int i = x; i < mine.size(); i++) {
            if (placed[i]) {
                continue;
            }
            String kind = Scene.kind(mine.get(i));
            int[] rows = IntStream.range(i, mine.size())
                    .filter(other -> Scene.kind(mine.get(other)).equals(kind))
                    .toArray();
            int[] columns = Arrays.stream(likes[i]).filter(y -> !used[y]).toArray();
            int[][] gains = new int[rows.length][columns.length];
            for (int r = 0; r < rows.length; r++) {
                placed[rows[r]] = true;
                for (int c = 0; c < columns.length; c++) {
                    gains[r][c] = hope(rows[r], columns[c], x);
                }
            }
            int[] columnOf = Assignment.apart(gains);
            for (int r = 0; r < rows.length; r++) {
                boolean some = columnOf[r] != NONE;
                chosen[rows[r]] = some ? columns[columnOf[r]] : NONE;
                sum += some ? gains[r][columnOf[r]] : 0;
            }
        }
        return sum;
    }

    /** The most that instance i adds as y when those before x are decided. */
    private int hope(int i, int y, int x) {
        int gain = fixed[i][y];
        for (Pair pair : closing.get(i)) {
            int times = 0;
            if (pair.other() < x) {
                int other = chosen[pair.other()];
                times = other == NONE ? 0 : times(pair, y, other);
            } else {
                for (int other : likes[pair.other()]) {
                    times = used[other] ? times : Math.max(times, times(pair, y, other));
                }
            }
            gain += times * pair.weight();
        }
        return gain;
    }

    private int times(Pair pair, int y, int other) {
        return pair.from() ? joined[y][other] : joined[other][y];
    }

    private int gain(int x, int y) {
        if (y == NONE) {
            return 0;
        }
        int gain = fixed[x][y];
        for (Pair pair : closing.get(x)) {
            int other = chosen[pair.other()];
            if (other != NONE) {
                gain += pair.weight() * times(pair, y, other);
            }
        }
        return gain;
    }
}
