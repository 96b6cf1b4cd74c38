package leadwright.planner.rehearse;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.mistake.Shown;
import leadwright.planner.plan.Obligation;

/** Which readings stand on a sheet: all that anything moves, or of too many those of one hookup, one of each sort in turn. */
final class RowChoice {
    /** Most readings on a sheet. */
    static final int ROWS = 40;

    private final List<Shown> lively;
    private final Eye eye;

    RowChoice(List<Shown> table, Eye eye) {
        this.eye = eye;
        this.lively = table.stream()
                .filter(row -> row.shown().keySet().stream().anyMatch(cause -> moved(row, cause)))
                .toList();
    }

    /** What a reading shows with a cause at work; as planned below 0. */
    static double value(Shown row, int cause) {
        return cause < 0 ? row.planned() : row.shown().getOrDefault(cause, row.planned());
    }

    /** Whether a person sees a cause in a reading. */
    boolean moved(Shown row, int cause) {
        return cause >= 0
                && row.shown().containsKey(cause)
                && eye.apart(row.reading().obligation(), row.shown().get(cause), row.planned());
    }

    /** In the plan's order. */
    List<Shown> rows(int hidden, Random random) {
        if (lively.size() <= ROWS) {
            return lively;
        }
        List<String> hookups = lively.stream()
                .filter(row -> hidden < 0 || moved(row, hidden))
                .flatMap(row -> row.reading().hookup().stream())
                .distinct()
                .toList();
        Optional<String> hookup =
                hookups.isEmpty() ? Optional.empty() : Optional.of(hookups.get(random.nextInt(hookups.size())));
        List<Shown> telling = new ArrayList<>();
        List<Shown> rest = new ArrayList<>();
        for (Shown row : lively) {
            boolean earth = row.reading().obligation().quantity() == QuantityKind.EARTH_RESISTANCE;
            if (earth || row.reading().hookup().equals(hookup)) {
                (moved(row, hidden) ? telling : rest).add(row);
            }
        }
        List<Shown> chosen = new ArrayList<>(first(telling, ROWS / 2));
        chosen.addAll(first(rest, ROWS - chosen.size()));
        telling.removeAll(chosen);
        chosen.addAll(first(telling, ROWS - chosen.size()));
        return lively.stream().filter(chosen::contains).toList();
    }

    /** So many, one of each sort in turn. */
    private static List<Shown> first(List<Shown> rows, int most) {
        Map<String, List<Shown>> sorts = new LinkedHashMap<>();
        rows.forEach(row -> sorts.computeIfAbsent(sort(row.reading().obligation()), each -> new ArrayList<>())
                .add(row));
        List<Shown> chosen = new ArrayList<>();
        for (int turn = 0; chosen.size() < Math.min(most, rows.size()); turn++) {
            for (List<Shown> sort : sorts.values()) {
                if (turn < sort.size() && chosen.size() < most) {
                    chosen.add(sort.get(turn));
                }
            }
        }
        return chosen;
    }

    private static String sort(Obligation what) {
        return what.quantity() + "/" + what.state() + "/" + what.component() + "/" + what.method();
    }
}
