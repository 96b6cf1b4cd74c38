package leadwright.render.edition;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Collectors;
import leadwright.catalog.house.House;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.rules.Mark;
import leadwright.catalog.table.Sources;
import leadwright.planner.Plan;
import leadwright.planner.plan.Reading;
import leadwright.render.paper.Words;
import leadwright.render.sheet.Vocabulary;

/** The limits of a plan: each once, with what it is for, where it stands, how sure it is and who has confirmed it. */
final class LimitRows {

    static final List<String> HEAD = List.of("Limit", "Used for", "Clause", "Mark", "Rests on", "Confirmed");
    static final List<Integer> WIDTHS = List.of(16, 25, 13, 8, 22, 16);

    static final String MARKS =
            "Marks: A, two or more independent public texts agree; B, one public text; C, from memory; D,"
                    + " calculated from these. A limit with mark C is not yet confirmed until the department has compared it with its own"
                    + " copy of the standard: a result that rests on it is provisional.";

    private LimitRows() {}

    static List<List<Words>> of(Plan plan, Vocabulary words) {
        Map<String, Limit> limits = new LinkedHashMap<>();
        Map<String, TreeSet<String>> uses = new LinkedHashMap<>();
        for (Reading reading : plan.readings()) {
            reading.obligation().limit().ifPresent(limit -> {
                limits.putIfAbsent(limit.id(), limit);
                uses.computeIfAbsent(limit.id(), id -> new TreeSet<>())
                        .add(words.named(reading.obligation().quantity()));
            });
        }
        List<List<Words>> rows = new ArrayList<>();
        limits.forEach((id, limit) -> rows.add(List.of(
                Words.strong(words.bound(limit)),
                Words.of(String.join(", ", uses.get(id)) + " (" + id + ")"),
                Words.of(limit.clause()),
                Words.of(limit.mark().name()),
                Words.of(basis(limit)),
                Words.of(confirmed(plan.house(), limit)))));
        return rows;
    }

    /** The public texts in their own words, or memory. */
    static String basis(Limit limit) {
        String texts = limit.sources().stream()
                .map(key -> Sources.builtIn().find(key).orElse(key))
                .collect(Collectors.joining("; "));
        if (texts.isEmpty()) {
            return limit.mark() == Mark.D ? "calculated" : "memory";
        }
        return limit.mark() == Mark.C ? texts + "; the value itself from memory" : texts;
    }

    /** Who has compared it with the house's own copy, and when. */
    static String confirmed(House house, Limit limit) {
        return house.confirmed().stream()
                .filter(each -> each.limit().equals(limit.id()))
                .map(each -> each.by() + ", " + each.date() + ", edition " + each.edition())
                .findFirst()
                .orElse(limit.unconfirmed() ? "not yet" : "not compared here");
    }
}
