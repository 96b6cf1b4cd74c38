package leadwright.planner.order;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import leadwright.planner.plan.Joint;
import leadwright.planner.plan.NaturalOrder;

/**
 * Phase 2: which instance of one arrangement serves as which like instance of the next, so that most of the joints, by
 * their times, may stay as they are.
 *
 * <p>Needs the joints of both. Gives the greatest weight (join + part) of joints kept and the pairing. Method: depth-first
 * over the instances of the first arrangement, those with most joints first, each tried as every free like instance of
 * the second and as none; a branch ends when what it keeps and what its open joints could still keep is no better than the
 * best. A joint to a connection or jack is kept only by the item that stands there in the second arrangement; joints
 * between two items are counted by their pair of kinds. The second arrangement may be several laid over each other: a joint
 * counts as often as it occurs in them. Cost: exponential at worst, a handful of cases in practice; a limit on the cases
 * leaves {@code proven} false.
 */
final class Likeness {
    private static final int CASES = 200_000;

    /**
     * Result.
     *
     * @param kept seconds of joining and parting that are saved
     * @param atMost no pairing saves more
     * @param standsFor instance of the first arrangement to the instance of the second that it becomes
     */
    record Pairing(int kept, int atMost, Map<String, String> standsFor) {
        boolean proven() {
            return kept == atMost;
        }
    }

    private final Map<Joint, Integer> second = new HashMap<>();
    private final List<String> order;
    private final Map<String, List<String>> likes = new HashMap<>();
    private final List<List<Contact>> closing = new ArrayList<>();
    private final int[] open;
    private final Map<String, String> chosen = new LinkedHashMap<>();
    private final Set<String> used = new LinkedHashSet<>();
    private Map<String, String> best = Map.of();
    private int bestKept = -1;
    private int cases;
    private final int ceiling;

    private Likeness(List<Contact> from, List<Contact> to) {
        to.forEach(each -> second.merge(each.plain(), 1, Integer::sum));
        Map<String, Integer> joints = new TreeMap<>(NaturalOrder.IDS);
        for (Contact each : from) {
            for (String end : List.of(each.from(), each.to())) {
                if (Scene.isItem(end)) {
                    joints.merge(end, 1, Integer::sum);
                }
            }
        }
        order = connected(joints, from);
        for (String mine : order) {
            Set<String> like = new java.util.TreeSet<>(NaturalOrder.IDS);
            for (Contact each : to) {
                for (String end : List.of(each.from(), each.to())) {
                    if (Scene.isItem(end) && Scene.kind(end).equals(Scene.kind(mine))) {
                        like.add(end);
                    }
                }
            }
            likes.put(mine, List.copyOf(like));
        }
        for (int i = 0; i < order.size(); i++) {
            closing.add(new ArrayList<>());
        }
        for (Contact each : from) {
            int last = Math.max(order.indexOf(each.from()), order.indexOf(each.to()));
            closing.get(last).add(each);
        }
        open = new int[order.size() + 1];
        for (int i = order.size() - 1; i >= 0; i--) {
            open[i] = open[i + 1]
                    + closing.get(i).stream()
                            .mapToInt(each -> each.both() * most(each, to))
                            .sum();
        }
        ceiling = ceiling(from, to);
    }

    static Pairing between(List<Contact> from, List<Contact> to) {
        Likeness likeness = new Likeness(from, to);
        likeness.search(0, 0);
        boolean finished = likeness.cases < CASES;
        return new Pairing(
                likeness.bestKept, finished ? likeness.bestKept : likeness.ceiling, Map.copyOf(likeness.best));
    }

    /** How often a joint may count at most. */
    private int most(Contact contact, List<Contact> to) {
        return to.stream()
                .filter(other -> type(contact).equals(type(other)))
                .mapToInt(other -> second.get(other.plain()))
                .max()
                .orElse(0);
    }

    /** Items with most joints first, each followed by its neighbours, so that joints close early. */
    private static List<String> connected(Map<String, Integer> joints, List<Contact> from) {
        List<String> byDegree = new ArrayList<>(joints.keySet());
        byDegree.sort(Comparator.comparing((String each) -> -joints.get(each)).thenComparing(NaturalOrder.IDS));
        Set<String> placed = new LinkedHashSet<>();
        for (String root : byDegree) {
            List<String> queue = new ArrayList<>(List.of(root));
            for (int i = 0; i < queue.size(); i++) {
                String next = queue.get(i);
                if (!placed.add(next)) {
                    continue;
                }
                for (Contact each : from) {
                    Optional<String> other = each.from().equals(next)
                            ? Optional.of(each.to())
                            : each.to().equals(next) ? Optional.of(each.from()) : Optional.empty();
                    other.filter(joints::containsKey).ifPresent(queue::add);
                }
            }
        }
        return List.copyOf(placed);
    }

    /** Most that any pairing keeps: joints to fixed ends by their ends, joints between items by kinds. */
    private static int ceiling(List<Contact> from, List<Contact> to) {
        Map<String, Integer> there = new HashMap<>();
        to.forEach(each -> there.merge(type(each), 1, Integer::sum));
        int most = 0;
        for (Contact each : from) {
            int left = there.getOrDefault(type(each), 0);
            if (left > 0) {
                there.put(type(each), left - 1);
                most += each.both();
            }
        }
        return most;
    }

    private static String type(Contact contact) {
        return Scene.kind(contact.from()) + " " + Scene.kind(contact.to());
    }

    private void search(int depth, int kept) {
        if (++cases >= CASES || bestKept == ceiling || kept + open[depth] <= bestKept) {
            return;
        }
        if (depth == order.size()) {
            bestKept = kept;
            best = new LinkedHashMap<>(chosen);
            return;
        }
        String mine = order.get(depth);
        List<Choice> choices = new ArrayList<>();
        for (String theirs : likes.get(mine)) {
            if (!used.contains(theirs)) {
                chosen.put(mine, theirs);
                choices.add(new Choice(Optional.of(theirs), gain(depth)));
                chosen.remove(mine);
            }
        }
        choices.add(new Choice(Optional.empty(), 0));
        // A stable sort: equal gains stay in natural order.
        choices.sort(Comparator.comparingInt((Choice each) -> -each.gain()));
        for (Choice choice : choices) {
            choice.theirs().ifPresent(theirs -> {
                chosen.put(mine, theirs);
                used.add(theirs);
            });
            search(depth + 1, kept + choice.gain());
            choice.theirs().ifPresent(theirs -> {
                chosen.remove(mine);
                used.remove(theirs);
            });
        }
    }

    private record Choice(Optional<String> theirs, int gain) {}

    private int gain(int depth) {
        int gain = 0;
        for (Contact each : closing.get(depth)) {
            Optional<String> from = image(each.from());
            Optional<String> to = image(each.to());
            if (from.isPresent() && to.isPresent()) {
                gain += each.both() * second.getOrDefault(new Joint(from.get(), to.get()), 0);
            }
        }
        return gain;
    }

    private Optional<String> image(String name) {
        return Scene.isItem(name) ? Optional.ofNullable(chosen.get(name)) : Optional.of(name);
    }
}
