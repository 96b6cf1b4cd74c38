package leadwright.planner.rehearse;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import leadwright.planner.Plan;
import leadwright.planner.foresee.Situation;
import leadwright.planner.mistake.Cause;
import leadwright.planner.mistake.Fault;
import leadwright.planner.mistake.Faults;
import leadwright.planner.mistake.Shown;
import leadwright.planner.mistake.Slip;
import leadwright.planner.mistake.SlipKind;
import leadwright.planner.mistake.Slips;

/**
 * Makes practice sheets.
 *
 * <p>Needs: a plan, a seed. Gives: a sheet with one hidden cause, or none, that no other cause offered explains. Method: every slip and
 * every fault of the plan is solved for every reading; a cause explains a sheet when each reading on it is within the tester's
 * accuracy of what the cause gives. The hidden cause is drawn among those that a person sees in at least one reading, the others among
 * those that some reading of the sheet contradicts so far that a person sees it; some of them are those that the fewest readings
 * contradict. Cost: as the search for silent slips. Proof: by solving all others.
 */
public final class Rehearsal {
    /** Causes offered. */
    static final int CHOICES = 8;

    /** Fewest that make a question. */
    private static final int FEWEST = 3;

    /** Of the wrong ones, those that lie nearest. */
    private static final int NEAR = 3;

    /** Most of one kind. */
    private static final int OF_A_KIND = 2;

    /** Drawings before a seed is given up. */
    private static final int TRIES = 60;

    private static final int NOTHING = -1;

    private final List<Cause> causes = new ArrayList<>();
    private final List<Shown> table;
    private final List<Integer> visible = new ArrayList<>();
    private final Eye eye;
    private final RowChoice rowChoice;

    private Rehearsal(Plan plan, Situation situation) {
        this.eye = new Eye(plan);
        Slips.of(plan).stream()
                .filter(slip -> slip.kind() != SlipKind.NEIGHBOUR_BRANCH)
                // A value below zero gives itself away.
                .filter(slip -> slip.kind() != SlipKind.NULL_TIPS_APART)
                .forEach(causes::add);
        causes.addAll(Faults.of(plan));
        this.table = Shown.of(plan, situation, causes);
        this.rowChoice = new RowChoice(table, eye);
        for (int i = 0; i < causes.size(); i++) {
            int cause = i;
            if (table.stream().anyMatch(row -> rowChoice.moved(row, cause))) {
                visible.add(i);
            }
        }
    }

    /** A rehearsal of a plan: make it once, then draw as many sheets as wanted. */
    public static Rehearsal of(Plan plan, Situation situation) {
        return new Rehearsal(plan, situation);
    }

    /** Every cause that may be hidden or offered. */
    public List<Cause> causes() {
        return List.copyOf(causes);
    }

    /** Those that a person sees in some reading: only they are hidden. */
    public List<Cause> visible() {
        return visible.stream().map(causes::get).toList();
    }

    /**
     * The sheet of a seed, the same for the same plan and seed.
     *
     * @return empty where too little that can go wrong with this plan shows in a reading
     */
    public Optional<Practice> sheet(long seed) {
        Random random = new Random(mixed(seed));
        // One sheet in eight has nothing wrong.
        boolean nothing = random.nextInt(8) == 0;
        for (int i = 0; i < TRIES && !visible.isEmpty(); i++) {
            int hidden = nothing ? NOTHING : drawn(visible, random);
            Optional<Practice> practice = sheet(seed, hidden, random);
            if (practice.isPresent()) {
                return practice;
            }
        }
        return Optional.empty();
    }

    /** Seeds in a row must not begin alike; the constants are those of a common mixing function for 64 bits (SplitMix). */
    private static long mixed(long seed) {
        long z = seed + 0x9E3779B97F4A7C15L;
        z = (z ^ z >>> 30) * 0xBF58476D1CE4E5B9L;
        z = (z ^ z >>> 27) * 0x94D049BB133111EBL;
        return z ^ z >>> 31;
    }

    private Optional<Practice> sheet(long seed, int hidden, Random random) {
        List<Shown> rows = rowChoice.rows(hidden, random);
        // By the row itself: to hash all that a row holds, at each look, takes longer than the look.
        Map<Shown, Display> now = new IdentityHashMap<>();
        List<Practice.Row> written = new ArrayList<>();
        for (Shown row : rows) {
            double exact = RowChoice.value(row, hidden);
            double read = exact
                    + (random.nextDouble() - 0.5) * eye.accuracy(row.reading().obligation(), exact);
            Display display = eye.display(row.reading().obligation(), exact == 0 ? 0 : read);
            now.put(row, display);
            written.add(new Practice.Row(
                    row.reading().id(),
                    eye.display(row.reading().obligation(), row.planned()),
                    display,
                    eye.apart(row.reading().obligation(), row.planned(), display)));
        }
        boolean sound = explains(hidden, rows, now)
                && (hidden == NOTHING || !against(NOTHING, rows, now).isEmpty());
        if (!sound) {
            return Optional.empty();
        }
        Map<Integer, List<Practice.Against>> apart = new HashMap<>();
        List<Integer> others = new ArrayList<>();
        List<Cause> alike = new ArrayList<>();
        for (int i = 0; i < causes.size(); i++) {
            List<Practice.Against> against = i == hidden ? List.of() : against(i, rows, now);
            if (!against.isEmpty()) {
                apart.put(i, against);
                others.add(i);
            } else if (i != hidden) {
                alike.add(causes.get(i));
            }
        }
        List<Integer> chosen = offered(hidden, rows, others, apart, random);
        if (hidden != NOTHING) {
            chosen.add(NOTHING);
            apart.put(NOTHING, against(NOTHING, rows, now));
        }
        if (chosen.size() < FEWEST) {
            return Optional.empty();
        }
        List<Integer> shuffled = shuffled(chosen, random);
        List<Practice.Choice> choices = shuffled.stream()
                .map(i -> new Practice.Choice(
                        i == NOTHING ? Optional.empty() : Optional.of(causes.get(i)), apart.getOrDefault(i, List.of())))
                .toList();
        return Optional.of(new Practice(seed, written, choices, shuffled.indexOf(hidden), alike));
    }

    private static List<Integer> shuffled(List<Integer> places, Random random) {
        List<Integer> left = new ArrayList<>(places);
        List<Integer> shuffled = new ArrayList<>();
        while (!left.isEmpty()) {
            shuffled.add(left.remove(random.nextInt(left.size())));
        }
        return shuffled;
    }

    /** The hidden one, some that lie near it, and some more; at most one that moves no reading of the sheet, but where others lack. */
    private List<Integer> offered(
            int hidden,
            List<Shown> rows,
            List<Integer> others,
            Map<Integer, List<Practice.Against>> apart,
            Random random) {
        List<Integer> mixed = shuffled(others, random);
        List<Integer> busy = new ArrayList<>(mixed.stream()
                .filter(i -> rows.stream().anyMatch(row -> rowChoice.moved(row, i)))
                .toList());
        List<Integer> near = busy.stream()
                .sorted(Comparator.comparingInt(i -> apart.get(i).size()))
                .toList();
        List<Integer> chosen = new ArrayList<>(List.of(hidden));
        int wanted = CHOICES - (hidden == NOTHING ? 0 : 1);
        take(near, chosen, Math.min(wanted, 1 + NEAR));
        List<Integer> silent = mixed.stream().filter(i -> !near.contains(i)).toList();
        // On every second sheet one that moves nothing: what has no trace cannot be what left one.
        if (!silent.isEmpty() && random.nextBoolean()) {
            take(List.of(drawn(silent, random)), chosen, wanted);
        }
        busy.removeAll(chosen);
        while (chosen.size() < wanted && !busy.isEmpty()) {
            int next = drawn(busy, random);
            busy.remove(Integer.valueOf(next));
            take(List.of(next), chosen, wanted);
        }
        take(mixed, chosen, Math.min(wanted, FEWEST + 1));
        return chosen;
    }

    private void take(List<Integer> from, List<Integer> chosen, int upTo) {
        for (int next : from) {
            long ofKind = chosen.stream()
                    .filter(i -> i != NOTHING && kind(i).equals(kind(next)))
                    .count();
            if (chosen.size() < upTo && ofKind < OF_A_KIND && !chosen.contains(next)) {
                chosen.add(next);
            }
        }
    }

    /** The kind is drawn first, so that many wires of one part do not crowd out the rest. */
    private int drawn(List<Integer> among, Random random) {
        Set<String> kinds = new LinkedHashSet<>();
        among.forEach(i -> kinds.add(kind(i)));
        String kind = List.copyOf(kinds).get(random.nextInt(kinds.size()));
        List<Integer> those = among.stream().filter(i -> kind(i).equals(kind)).toList();
        return those.get(random.nextInt(those.size()));
    }

    private String kind(int cause) {
        Cause which = causes.get(cause);
        return which instanceof Slip slip
                ? slip.kind().word()
                : ((Fault) which).kind().word();
    }

    /** Whether a cause explains what a sheet shows. */
    private boolean explains(int cause, List<Shown> rows, Map<Shown, Display> now) {
        return rows.stream()
                .allMatch(row -> eye.same(row.reading().obligation(), RowChoice.value(row, cause), now.get(row)));
    }

    /** Readings that a person sees to be other than a cause gives, the clearest first. */
    private List<Practice.Against> against(int cause, List<Shown> rows, Map<Shown, Display> now) {
        return rows.stream()
                .filter(row -> eye.apart(row.reading().obligation(), RowChoice.value(row, cause), now.get(row)))
                .sorted(Comparator.comparingDouble(
                        row -> -eye.distance(row.reading().obligation(), RowChoice.value(row, cause), now.get(row))))
                .map(row -> new Practice.Against(
                        row.reading().id(), eye.display(row.reading().obligation(), RowChoice.value(row, cause))))
                .toList();
    }
}
