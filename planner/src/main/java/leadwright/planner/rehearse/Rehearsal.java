package leadwright.planner.rehearse;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import leadwright.catalog.kit.Accuracy;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.planner.Plan;
import leadwright.planner.foresee.Amounts;
import leadwright.planner.foresee.Situation;
import leadwright.planner.mistake.Cause;
import leadwright.planner.mistake.Faults;
import leadwright.planner.mistake.Shown;
import leadwright.planner.mistake.Slip;
import leadwright.planner.mistake.SlipKind;
import leadwright.planner.mistake.Slips;
import leadwright.planner.plan.Reading;

/**
 * Makes practice sheets.
 *
 * <p>Needs: a plan, a seed. Gives: a sheet with one hidden cause, or none, that no other cause offered explains. Method: every slip and
 * every fault of the plan is solved for every reading; a cause explains a sheet when each reading on it is within the tester's
 * accuracy of what the cause gives. The hidden cause is drawn among those that at least one reading shows, the others among those that
 * do not explain the sheet. Cost: as the search for silent slips. Proof: by solving all others.
 */
public final class Rehearsal {
    /** Most readings on a sheet. */
    static final int ROWS = 40;

    /** Causes offered. */
    static final int CHOICES = 8;

    private final Plan plan;
    private final List<Cause> causes = new ArrayList<>();
    private final List<Shown> table;

    private Rehearsal(Plan plan, Situation situation) {
        this.plan = plan;
        Slips.of(plan).stream()
                .filter(slip -> slip.kind() != SlipKind.NEIGHBOUR_BRANCH)
                .forEach(causes::add);
        causes.addAll(Faults.of(plan));
        this.table = Shown.of(plan, situation, causes);
    }

    /** A rehearsal of a plan: make it once, then draw as many sheets as wanted. */
    public static Rehearsal of(Plan plan, Situation situation) {
        return new Rehearsal(plan, situation);
    }

    /** Every cause that may be hidden or offered. */
    public List<Cause> causes() {
        return List.copyOf(causes);
    }

    /**
     * The sheet of a seed.
     *
     * @return empty where nothing that can go wrong with this plan shows in a reading
     */
    public Optional<Practice> sheet(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Integer> visible = new ArrayList<>();
        for (int i = 0; i < causes.size(); i++) {
            if (shows(i)) {
                visible.add(i);
            }
        }
        if (visible.isEmpty()) {
            return Optional.empty();
        }
        // One sheet in eight has nothing wrong.
        int hidden = random.nextInt(8) == 0 ? -1 : drawn(visible, random);
        List<Shown> rows = rows(hidden, random);
        Map<String, Double> now = new LinkedHashMap<>();
        List<Practice.Row> written = new ArrayList<>();
        for (Shown row : rows) {
            double exact = value(row, hidden);
            double read = exact + (random.nextDouble() - 0.5) * accuracy(row, exact);
            Dimension dimension = Amounts.dimension(row.reading().obligation());
            Quantity rounded = Amounts.rounded(dimension, Math.max(0, read));
            now.put(row.reading().id(), rounded.inSi());
            written.add(new Practice.Row(row.reading().id(), Amounts.rounded(dimension, row.planned()), rounded));
        }
        List<Integer> others = new ArrayList<>();
        List<Cause> alike = new ArrayList<>();
        for (int i = 0; i < causes.size(); i++) {
            if (i != hidden && explains(i, rows, now)) {
                alike.add(causes.get(i));
            } else if (i != hidden) {
                others.add(i);
            }
        }
        boolean nothing = hidden >= 0 && !explains(-1, rows, now);
        return Optional.of(offered(seed, written, hidden, others, nothing, alike, random));
    }

    /** The kind is drawn first, so that many wires of one part do not crowd out the rest. */
    private int drawn(List<Integer> among, SplittableRandom random) {
        List<String> kinds =
                among.stream().map(i -> kind(causes.get(i))).distinct().toList();
        String kind = kinds.get(random.nextInt(kinds.size()));
        List<Integer> those =
                among.stream().filter(i -> kind(causes.get(i)).equals(kind)).toList();
        return those.get(random.nextInt(those.size()));
    }

    private static String kind(Cause cause) {
        return cause instanceof Slip slip
                ? slip.kind().word()
                : ((leadwright.planner.mistake.Fault) cause).kind().word();
    }

    private Practice offered(
            long seed,
            List<Practice.Row> rows,
            int hidden,
            List<Integer> others,
            boolean nothing,
            List<Cause> alike,
            SplittableRandom random) {
        List<Integer> chosen = new ArrayList<>(List.of(hidden));
        if (nothing) {
            chosen.add(-1);
        }
        List<Integer> left = new ArrayList<>(others);
        List<String> kinds = new ArrayList<>();
        while (chosen.size() < CHOICES && !left.isEmpty()) {
            int next = drawn(left, random);
            left.remove(Integer.valueOf(next));
            String kind = kind(causes.get(next));
            // Two of a kind at most.
            if (kinds.stream().filter(kind::equals).count() < 2) {
                chosen.add(next);
                kinds.add(kind);
            }
        }
        List<Integer> shuffled = new ArrayList<>();
        while (!chosen.isEmpty()) {
            shuffled.add(chosen.remove(random.nextInt(chosen.size())));
        }
        List<Optional<Cause>> choices = shuffled.stream()
                .map(i -> i < 0 ? Optional.<Cause>empty() : Optional.of(causes.get(i)))
                .toList();
        return new Practice(seed, rows, choices, shuffled.indexOf(hidden), alike);
    }

    /** Whether a cause moves some reading by more than the tester tells apart. */
    private boolean shows(int cause) {
        return table.stream().anyMatch(row -> moved(row, cause));
    }

    private boolean moved(Shown row, int cause) {
        return Math.abs(value(row, cause) - row.planned()) > 2 * accuracy(row, row.planned());
    }

    /** What is on the sheet: earth readings, and of the others those of one hookup, where there are too many. */
    private List<Shown> rows(int hidden, SplittableRandom random) {
        if (table.size() <= ROWS) {
            return table;
        }
        List<String> hookups = table.stream()
                .filter(row -> hidden < 0 || moved(row, hidden))
                .flatMap(row -> row.reading().hookup().stream())
                .distinct()
                .toList();
        String hookup = hookups.isEmpty() ? "" : hookups.get(random.nextInt(hookups.size()));
        List<Shown> telling = new ArrayList<>();
        List<Shown> rest = new ArrayList<>();
        for (Shown row : table) {
            if (row.reading().hookup().equals(Optional.of(hookup))) {
                (hidden >= 0 && moved(row, hidden) ? telling : rest).add(row);
            }
        }
        List<Shown> chosen = new ArrayList<>(telling.subList(0, Math.min(telling.size(), ROWS / 2)));
        chosen.addAll(rest.subList(0, Math.min(rest.size(), ROWS - chosen.size())));
        return table.stream().filter(chosen::contains).toList();
    }

    /** Whether a cause explains what a sheet shows; -1 for none. */
    private boolean explains(int cause, List<Shown> rows, Map<String, Double> now) {
        for (Shown row : rows) {
            double expected = value(row, cause);
            double read = now.get(row.reading().id());
            if (Math.abs(expected - read) > accuracy(row, Math.max(expected, read))) {
                return false;
            }
        }
        return true;
    }

    /** Whether one of the plan's causes explains a sheet, or nothing being wrong does. */
    public boolean explains(Optional<Cause> cause, Practice practice) {
        List<Shown> rows = new ArrayList<>();
        Map<String, Double> now = new LinkedHashMap<>();
        Map<String, Practice.Row> byReading = practice.byReading();
        for (Shown row : table) {
            Practice.Row written = byReading.get(row.reading().id());
            if (written != null) {
                rows.add(row);
                now.put(written.reading(), written.now().inSi());
            }
        }
        return explains(cause.map(causes::indexOf).orElse(-1), rows, now);
    }

    private static double value(Shown row, int cause) {
        return cause < 0 ? row.planned() : row.shown().getOrDefault(cause, row.planned());
    }

    private double accuracy(Shown row, double value) {
        Reading reading = row.reading();
        boolean ohms = Amounts.dimension(reading.obligation()) == Dimension.RESISTANCE;
        Accuracy accuracy = Amounts.accuracy(plan.kit(), ohms ? "earth" : "leakage");
        return accuracy.reading().inSi() * Math.abs(value) + accuracy.floor().inSi();
    }
}
