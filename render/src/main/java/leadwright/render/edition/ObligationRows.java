package leadwright.render.edition;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Collectors;
import leadwright.catalog.rules.Limit;
import leadwright.planner.Plan;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;
import leadwright.render.paper.Words;
import leadwright.render.sheet.Vocabulary;

/** What is due: readings of one quantity, subject and limit in one row, with the states in which they are taken. */
final class ObligationRows {

    static final List<String> HEAD = List.of("No.", "What", "Asked for by", "States", "Limit", "Confirmed");
    static final List<Integer> WIDTHS = List.of(13, 26, 10, 23, 14, 14);

    private ObligationRows() {}

    static List<List<Words>> of(Plan plan, Vocabulary words) {
        Map<List<String>, List<Reading>> groups = new LinkedHashMap<>();
        for (Reading reading : plan.readings()) {
            Obligation what = reading.obligation();
            groups.computeIfAbsent(
                            List.of(
                                    Editions.heading(what, words),
                                    words.what(what),
                                    what.clause(),
                                    what.component().map(Object::toString).orElse(""),
                                    what.limit().map(Limit::id).orElse("")),
                            each -> new ArrayList<>())
                    .add(reading);
        }
        return groups.values().stream().map(group -> row(plan, group, words)).toList();
    }

    private static List<Words> row(Plan plan, List<Reading> group, Vocabulary words) {
        Obligation what = group.get(0).obligation();
        String component =
                what.component().map(each -> ", " + Editions.component(each)).orElse("");
        return List.of(
                Words.strong(group.stream().map(Reading::id).collect(Collectors.joining(", "))),
                Words.strong(Editions.heading(what, words) + component + ": ").then(words.what(what)),
                Words.of(what.clause().isBlank() ? "bench practice" : what.clause()),
                Words.of(states(group, words)),
                Editions.limit(what, words),
                Words.of(what.limit()
                        .map(limit -> LimitRows.confirmed(plan.house(), limit))
                        .orElse("–")));
    }

    /** Each state once, with the polarities of the source in it. */
    static String states(List<Reading> group, Vocabulary words) {
        Map<String, TreeSet<String>> sources = new LinkedHashMap<>();
        for (Reading each : group) {
            TreeSet<String> in = sources.computeIfAbsent(words.state(each.obligation()), state -> new TreeSet<>());
            each.obligation().sourcePolarity().ifPresent(source -> in.add(source.word()));
        }
        boolean alike = sources.values().stream().distinct().count() == 1;
        if (alike) {
            String all = String.join("; ", sources.keySet());
            String source = String.join(" and ", sources.values().iterator().next());
            return source.isEmpty() ? all : all + "; source " + source + (sources.size() > 1 ? ", in each" : "");
        }
        return sources.entrySet().stream()
                .map(each -> each.getKey()
                        + (each.getValue().isEmpty() ? "" : ", source " + String.join(" and ", each.getValue())))
                .collect(Collectors.joining("; "));
    }
}
