package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Phase 6: does a set of requirements fit one hookup?
 *
 * <p>Needs: scene. Gives: yes, no, or unknown where a budget ended. Method: the requirements cut their connections into
 * cells; the cells need a row of jacks in which all is tied (phase 5), and one option each (phase 4) that together take no
 * more than the stock and the jacks. Answers are kept by what they depend on: the kinds of cell, the duty, the earth lead.
 * Cost: menus once a kind of cell; then sums of options, dominated ones dropped. Proof: the wiring may join only what is in
 * one cell, so bundles are parts of cells; what no requirement names can be left out of any hookup; so a set fits exactly
 * when its cells can be brought to jacks.
 */
final class Fit {
    private static final int MOST_SUMS = 6_000;
    /** Where a plain kit gives a fitting without prices. */
    private static final int MOST_PRICED_SUMS = 300;

    private final Scene scene;
    private final EarthLead earthLead;
    private final List<Leaf> leaves;
    private final int[] leafOf;
    private final Map<Duty, Tray> trays = new HashMap<>();
    private final Map<String, Verdict> known = new HashMap<>();
    private final Map<Duty, Boolean> links = new HashMap<>();
    private final PlainFit plainFit;
    private final int mostArrangements;
    private final boolean mayBePlain;

    Fit(Scene scene, EarthLead earthLead) {
        this(scene, earthLead, Gather.MOST_ARRANGEMENTS);
    }

    /** @param mostArrangements budget of a menu: what needs more is unknown */
    Fit(Scene scene, EarthLead earthLead, int mostArrangements) {
        this(scene, earthLead, mostArrangements, true);
    }

    /** @param mayBePlain whether plain kits are told by the number of places */
    Fit(Scene scene, EarthLead earthLead, int mostArrangements, boolean mayBePlain) {
        this.scene = scene;
        this.mayBePlain = mayBePlain;
        this.mostArrangements = mostArrangements;
        this.earthLead = earthLead;
        this.leaves = scene.leaves().stream().distinct().toList();
        this.leafOf = scene.leaves().stream().mapToInt(leaves::indexOf).toArray();
        this.plainFit = new PlainFit(scene, leaves, this::tray);
    }

    /**
     * How each cell is brought to jacks.
     *
     * @param row cells in the order of their jacks; a cell comes several times where it is linked to further jacks
     * @param priced whether it is the cheapest
     */
    record Fitting(List<Option> options, Optional<EarthLead.Choice> earth, List<Integer> row, boolean priced) {}

    /** A draft that already fits, with one requirement more. */
    Verdict fits(Draft draft, Requirement more) {
        boolean may = draft.suits(scene, more) && draft.cellsWith(more, scene.jackCount()) <= scene.jackCount();
        return may ? fits(draft.with(more)) : Verdict.NO;
    }

    /** Whether the draft fits; that its members may share a hookup has been seen to. */
    Verdict fits(Draft draft) {
        for (Requirement member : draft.members()) {
            if (scene.conflict()[member.index()][member.index()]) {
                return Verdict.NO;
            }
        }
        if (draft.cells() > scene.jackCount()) {
            return Verdict.NO;
        }
        if (draft.cells() == 0 && !draft.earth()) {
            return Verdict.YES;
        }
        if (!scene.runs() && plain(draft)) {
            Verdict verdict = plainFit.verdict(draft, counts(draft));
            if (verdict != Verdict.UNKNOWN) {
                return verdict;
            }
        }
        if (scene.runs() && plain(draft)) {
            boolean row = Row.isOrderable(draft.cells(), draft.ties());
            if (!row && !mayLink(draft.duty())) {
                return Verdict.NO;
            }
            Verdict verdict = row ? plainFit.verdict(draft, counts(draft)) : Verdict.UNKNOWN;
            if (verdict != Verdict.UNKNOWN) {
                return verdict;
            }
        }
        List<Cluster> clusters = clusters(draft);
        return known.computeIfAbsent(
                key(draft, clusters), key -> search(draft, clusters, false).verdict());
    }

    /** Whether some cell could stand on several jacks that kit items join. */
    boolean mayLink(Duty wanted) {
        return links.computeIfAbsent(
                wanted,
                duty -> scene.linksHelp() && tray(duty).mostLinks() + tray(duty).unsearchedLinks() > 0);
    }

    /**
     * The cheapest fitting of a draft that fits: least handling at the patient connections, then fewest contacts, then items,
     * then least lead where mains is put on, then least lead.
     */
    Fitting best(Draft draft) {
        List<Cluster> clusters = clusters(draft);
        boolean quick = plain(draft) && plainFit.tooManyWays(draft, clusters);
        Found found = quick ? Found.unknown() : search(draft, clusters, true);
        if (found.verdict() != Verdict.YES) {
            // Cost makes more options worth keeping: without it the search is the one that said yes.
            found = search(draft, clusters, false);
        }
        return found.fitting().orElseThrow();
    }

    /** What the menus have cost so far: a measure that is the same on every machine. */
    long work() {
        return trays.values().stream().mapToLong(Tray::work).sum();
    }

    Tray tray(Duty duty) {
        return trays.computeIfAbsent(duty, wanted -> new Tray(scene, earthLead, wanted, mostArrangements));
    }

    private record Found(Verdict verdict, Optional<Fitting> fitting) {
        static Found no() {
            return new Found(Verdict.NO, Optional.empty());
        }

        static Found unknown() {
            return new Found(Verdict.UNKNOWN, Optional.empty());
        }
    }

    private Found search(Draft draft, List<Cluster> clusters, boolean priced) {
        if (!scene.runs()) {
            return kit(draft, clusters, priced, natural(draft.cells()));
        }
        Optional<List<Integer>> order = Row.order(draft.cells(), draft.ties());
        if (order.isPresent()) {
            return kit(draft, clusters, priced, order.get());
        }
        return scene.linksHelp() ? linked(draft, clusters, priced) : Found.no();
    }

    private static List<Integer> natural(int cells) {
        List<Integer> all = new ArrayList<>();
        for (int cell = 0; cell < cells; cell++) {
            all.add(cell);
        }
        return all;
    }

    /** Some cells on several jacks each, joined by kit items: fewest further jacks first. */
    private Found linked(Draft draft, List<Cluster> clusters, boolean priced) {
        int free = scene.jackCount() - draft.cells();
        int spare = Math.min(free, tray(draft.duty()).mostLinks());
        int unsearched = tray(draft.duty()).unsearchedLinks();
        int hope = Math.min(free, spare + unsearched);
        if (hope == 0) {
            // Nothing joins two jacks, and a cell in two bundles only makes every run longer.
            return Found.no();
        }
        int[] most = new int[draft.cells()];
        Arrays.fill(most, 1 + hope);
        Row.Linked any = Row.linked(draft.cells(), draft.ties(), draft.cells() + hope, most);
        if (any.verdict() == Verdict.NO) {
            return Found.no();
        }
        boolean unknown = any.verdict() == Verdict.UNKNOWN || unsearched > 0;
        String socket = scene.jackSocket();
        for (int links = 1; links <= spare; links++) {
            for (int[] extra : Shares.of(links, draft.cells())) {
                List<Cluster> linkedClusters = new ArrayList<>();
                int[] jacks = new int[extra.length];
                for (int cell = 0; cell < extra.length; cell++) {
                    linkedClusters.add(clusters.get(cell).linked(socket, extra[cell]));
                    jacks[cell] = 1 + extra[cell];
                }
                Found kit = kit(draft, linkedClusters, priced, List.of());
                if (kit.verdict() == Verdict.NO) {
                    continue;
                }
                Row.Linked row = Row.linked(draft.cells(), draft.ties(), draft.cells() + links, jacks);
                if (kit.verdict() == Verdict.YES && row.verdict() == Verdict.YES) {
                    Fitting fitting = kit.fitting().orElseThrow();
                    return new Found(
                            Verdict.YES,
                            Optional.of(new Fitting(fitting.options(), fitting.earth(), row.row(), priced)));
                }
                unknown |= row.verdict() != Verdict.NO;
            }
        }
        // A cell in two bundles, one of them linked, is not searched: then a no is not proven.
        boolean divisible =
                scene.jackCount() > draft.cells() + 1 && clusters.stream().anyMatch(cluster -> cluster.size() > 1);
        return unknown || divisible ? Found.unknown() : Found.no();
    }

    /**
     * One option for every cell, and the earth lead where wanted, within stock and jacks.
     *
     * @param row empty where cells stand on several jacks that are linked: then each has one bundle
     */
    private Found kit(Draft draft, List<Cluster> clusters, boolean priced, List<Integer> row) {
        Tray tray = tray(draft.duty());
        if (!priced && !row.isEmpty() && plain(draft)) {
            PlainFit.Found found = plainFit.find(draft, counts(draft), row);
            if (found.verdict() != Verdict.UNKNOWN) {
                return new Found(found.verdict(), found.fitting());
            }
        }
        Stock stock = tray.stock();
        long[] capacitance = new long[(int) Caps.capped(draft).count()];
        List<Sum> sums = List.of(Sum.none(new int[stock.limits().length], capacitance));
        boolean complete = true;
        if (draft.earth()) {
            List<Sum> next = new ArrayList<>();
            for (EarthLead.Choice choice : tray.earth()) {
                add(next, sums.get(0).and(choice, stock.of(choice.use())), priced);
            }
            next.removeIf(sum -> !stock.holds(sum.use()));
            sums = next;
        }
        List<Menu> menus =
                clusters.stream().map(cluster -> tray.menu(cluster, priced)).toList();
        for (int cell : fewestOptionsFirst(menus)) {
            complete &= menus.get(cell).complete();
            boolean mains = priced && mainsOn(draft, cell);
            List<Sum> next = new ArrayList<>();
            for (Sum sum : sums) {
                for (Option option : menus.get(cell).options()) {
                    if (row.isEmpty() && option.layout().jacks() > 1) {
                        continue;
                    }
                    int[] use = plus(sum.use(), option.use());
                    long[] capacity = Caps.plus(sum.capacitance(), option, draft, cell);
                    if (stock.holds(use) && Caps.withinCapacitance(capacity, draft)) {
                        add(next, sum.and(option, mains, use, capacity), priced);
                    }
                }
                if (next.size() > (priced && plain(draft) ? MOST_PRICED_SUMS : MOST_SUMS)) {
                    return Found.unknown();
                }
            }
            sums = next;
        }
        if (sums.isEmpty()) {
            return complete ? Found.no() : Found.unknown();
        }
        Sum cheapest = sums.stream().min(Sum.CHEAPEST).orElseThrow();
        return new Found(Verdict.YES, Optional.of(fitting(cheapest, menus, row, priced)));
    }

    /** Whether only numbers of places count, so that phase 6a tells. */
    private boolean plain(Draft draft) {
        return mayBePlain
                && (!draft.duty().mains() || Caps.capped(draft).findAny().isEmpty())
                && plainFit.isPlain(draft);
    }

    private int[][] counts(Draft draft) {
        int[][] counts = new int[draft.cells()][leaves.size()];
        for (int e = 0; e < leafOf.length; e++) {
            if (draft.cellOf(e) >= 0) {
                counts[draft.cellOf(e)][leafOf[e]]++;
            }
        }
        return counts;
    }

    private static List<Integer> fewestOptionsFirst(List<Menu> menus) {
        return natural(menus.size()).stream()
                .sorted(Comparator.comparingInt(
                                (Integer cell) -> menus.get(cell).options().size())
                        .thenComparing(Comparator.naturalOrder()))
                .toList();
    }

    private static Fitting fitting(Sum last, List<Menu> menus, List<Integer> row, boolean priced) {
        Option[] options = new Option[menus.size()];
        EarthLead.Choice earth = null;
        List<Integer> order = new ArrayList<>(fewestOptionsFirst(menus));
        java.util.Collections.reverse(order);
        Sum sum = last;
        for (int cell : order) {
            options[cell] = sum.option();
            sum = sum.before();
        }
        if (sum.before() != null) {
            earth = sum.earth();
        }
        return new Fitting(List.of(options), Optional.ofNullable(earth), row, priced);
    }

    private static void add(List<Sum> sums, Sum next, boolean priced) {
        for (Sum other : sums) {
            if (beats(other, next, priced)) {
                return;
            }
        }
        sums.removeIf(other -> beats(next, other, priced));
        sums.add(next);
    }

    private static boolean beats(Sum one, Sum other, boolean priced) {
        if (!Routes.atMost(one.use(), other.use()) || priced && Sum.CHEAPEST.compare(one, other) > 0) {
            return false;
        }
        for (int i = 0; i < one.capacitance().length; i++) {
            if (one.capacitance()[i] > other.capacitance()[i]) {
                return false;
            }
        }
        return true;
    }

    /** Whether some reading of the draft puts mains on this cell. */
    private static boolean mainsOn(Draft draft, int cell) {
        int first = draft.connectionsOf(cell).nextSetBit(0);
        return draft.members().stream()
                .anyMatch(member -> member.duty().mains() && member.role()[first] == Requirement.MEASURED);
    }

    private static int[] plus(int[] one, int[] other) {
        int[] sum = one.clone();
        for (int i = 0; i < sum.length; i++) {
            sum[i] += other[i];
        }
        return sum;
    }

    private List<Cluster> clusters(Draft draft) {
        return Arrays.stream(counts(draft))
                .map(each -> Cluster.of(leaves, each))
                .toList();
    }

    private String key(Draft draft, List<Cluster> clusters) {
        List<String> cells = new ArrayList<>();
        boolean ordered = scene.runs() || Caps.capped(draft).findAny().isPresent();
        for (Cluster cluster : clusters) {
            cells.add(cluster.groups().stream()
                    .map(group -> leaves.indexOf(group.leaf()) + "x" + group.count())
                    .reduce("", (a, b) -> a + b + " "));
        }
        if (!ordered) {
            cells.sort(Comparator.naturalOrder());
        }
        StringBuilder key = new StringBuilder();
        key.append(draft.duty()).append(draft.earth()).append(cells);
        if (scene.runs()) {
            key.append(draft.ties());
        }
        Caps.capped(draft).forEach(member -> {
            key.append(';').append(member.capacitance().getAsLong());
            for (int cell = 0; cell < draft.cells(); cell++) {
                int first = draft.connectionsOf(cell).nextSetBit(0);
                key.append(member.role()[first] == Requirement.MEASURED ? '1' : '0');
            }
        });
        return key.toString();
    }
}
