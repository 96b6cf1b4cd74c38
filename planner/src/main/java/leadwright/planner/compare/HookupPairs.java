package leadwright.planner.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.NaturalOrder;
import org.jgrapht.alg.matching.KuhnMunkresMinimalWeightBipartitePerfectMatching;
import org.jgrapht.graph.DefaultWeightedEdge;
import org.jgrapht.graph.SimpleWeightedGraph;

/**
 * Hookups of two plans, matched by what is wired in them.
 *
 * <p>Needs: the hookups of both. Gives: pairs whose wiring differs least in sum; hookups that have neither a connection nor
 * a place of the earth lead in common stay alone, unless each plan has but the one. Method: a perfect matching of least weight (Kuhn and Munkres) over the hookups of both, the shorter list filled up
 * with stand-ins that cost nothing; among equal sums the one that keeps the order best. Cost: n³. Proof: whichever plan is
 * the first, the list that comes first by its content is the one whose rows are matched, so ties fall the same way.
 */
record HookupPairs(List<Pair> both, List<Hookup> onlyA, List<Hookup> onlyB) {
    HookupPairs {
        both = List.copyOf(both);
        onlyA = List.copyOf(onlyA);
        onlyB = List.copyOf(onlyB);
    }

    /** One hookup as each plan has it. */
    record Pair(Hookup a, Hookup b) {}

    /** A row or column of the matching; those beyond the list are stand-ins. */
    private record Corner(boolean row, int index) {}

    static HookupPairs of(List<Hookup> a, List<Hookup> b) {
        List<Pair> both = content(a).compareTo(content(b)) <= 0
                ? matched(a, b)
                : matched(b, a).stream()
                        .map(pair -> new Pair(pair.b(), pair.a()))
                        .toList();
        List<Pair> ordered = both.stream()
                .filter(pair -> a.size() == 1 && b.size() == 1 || related(pair.a(), pair.b()))
                .sorted(Comparator.comparing(pair -> a.indexOf(pair.a())))
                .toList();
        Set<String> usedA = ordered.stream().map(pair -> pair.a().id()).collect(Collectors.toSet());
        Set<String> usedB = ordered.stream().map(pair -> pair.b().id()).collect(Collectors.toSet());
        return new HookupPairs(
                ordered,
                a.stream().filter(each -> !usedA.contains(each.id())).toList(),
                b.stream().filter(each -> !usedB.contains(each.id())).toList());
    }

    /** The hookup of the second plan that stands for one of the first, where there is one. */
    Optional<String> counterpart(String idInA) {
        return both.stream()
                .filter(pair -> pair.a().id().equals(idInA))
                .map(pair -> pair.b().id())
                .findFirst();
    }

    private static String content(List<Hookup> hookups) {
        return hookups.stream().map(Hookup::toString).collect(Collectors.joining("\n"));
    }

    private static List<Pair> matched(List<Hookup> rows, List<Hookup> columns) {
        int size = Math.max(rows.size(), columns.size());
        SimpleWeightedGraph<Corner, DefaultWeightedEdge> graph = new SimpleWeightedGraph<>(DefaultWeightedEdge.class);
        List<Corner> left =
                IntStream.range(0, size).mapToObj(i -> new Corner(true, i)).toList();
        List<Corner> right =
                IntStream.range(0, size).mapToObj(i -> new Corner(false, i)).toList();
        left.forEach(graph::addVertex);
        right.forEach(graph::addVertex);
        // Far above what all distances of order can come to, so that they only break ties; both stay whole numbers.
        long unit = (long) size * size * size + 1;
        for (Corner row : left) {
            for (Corner column : right) {
                boolean real = row.index() < rows.size() && column.index() < columns.size();
                long away = row.index() - column.index();
                long weight =
                        real ? unit * difference(rows.get(row.index()), columns.get(column.index())) + away * away : 0;
                graph.setEdgeWeight(graph.addEdge(row, column), weight);
            }
        }
        List<Pair> pairs = new ArrayList<>();
        if (size > 0) {
            for (DefaultWeightedEdge edge : new KuhnMunkresMinimalWeightBipartitePerfectMatching<>(
                            graph, new LinkedHashSet<>(left), new LinkedHashSet<>(right))
                    .getMatching()) {
                int row = graph.getEdgeSource(edge).index();
                int column = graph.getEdgeTarget(edge).index();
                if (row < rows.size() && column < columns.size()) {
                    pairs.add(new Pair(rows.get(row), columns.get(column)));
                }
            }
        }
        return pairs;
    }

    /** How much work it is to make one of the other: a wire that is there or not weighs more than one that moves. */
    private static long difference(Hookup a, Hookup b) {
        long sum = 0;
        for (String connection : connections(a, b)) {
            Optional<Chain> inA = a.chainOf(connection);
            Optional<Chain> inB = b.chainOf(connection);
            if (inA.isEmpty() || inB.isEmpty()) {
                sum += 3;
            } else {
                sum += inA.get().jack() == inB.get().jack() ? 0 : 2;
                sum += kinds(inA.get().items()).equals(kinds(inB.get().items())) ? 0 : 1;
            }
        }
        Set<String> earth = new HashSet<>(earth(a));
        Set<String> other = new HashSet<>(earth(b));
        earth.removeAll(earth(b));
        other.removeAll(earth(a));
        return sum + earth.size() + other.size();
    }

    /** Connections wired in either, in natural order. */
    static Set<String> connections(Hookup a, Hookup b) {
        Set<String> all = new TreeSet<>(NaturalOrder.IDS);
        a.chains().forEach(chain -> all.add(chain.connection()));
        b.chains().forEach(chain -> all.add(chain.connection()));
        return all;
    }

    private static boolean related(Hookup a, Hookup b) {
        return a.chains().stream()
                        .anyMatch(chain -> b.chainOf(chain.connection()).isPresent())
                || earth(a).stream().anyMatch(earth(b)::contains);
    }

    private static List<String> earth(Hookup hookup) {
        return hookup.earth().stream()
                .map((EarthPath path) -> path.pole() + path.point())
                .toList();
    }

    /** Kinds of the items of a chain, for which one of a kind is used does not matter. */
    static List<String> kinds(List<String> items) {
        return items.stream().map(HookupPairs::kind).toList();
    }

    static String kind(String item) {
        int slash = item.indexOf('/');
        return slash < 0 ? item : item.substring(0, slash);
    }
}
