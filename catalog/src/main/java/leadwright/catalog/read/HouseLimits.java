package leadwright.catalog.read;

import java.util.List;
import java.util.Optional;
import leadwright.catalog.house.House;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.rules.LimitRow;
import leadwright.catalog.rules.PlaceRow;
import leadwright.catalog.rules.RuleSet;
import leadwright.catalog.table.RuleSets;
import leadwright.catalog.text.Fields;
import leadwright.catalog.text.Spelling;

/** What house rules say of rule sets and their limits: known ids, and limits tightened but never loosened. */
final class HouseLimits {

    private HouseLimits() {}

    static Optional<String> ruleSet(Fields top) {
        Optional<String> id = top.optionalId("rules");
        List<String> known = RuleSets.builtIn().ids();
        id.filter(each -> !known.contains(each))
                .ifPresent(each -> top.findings()
                        .problem(
                                top.at("rules"),
                                Spelling.show(each) + " is no rule set of this program; "
                                        + top.findings().instead(each, known)));
        return id;
    }

    /** The circumstance that the house stands in: one that a rule set lists. */
    static Optional<String> where(Fields top) {
        Optional<String> where = top.optionalId("where");
        where.ifPresent(each -> known(top, each));
        return where;
    }

    /** All rule sets are read for this: only where a house states a circumstance. */
    private static void known(Fields top, String where) {
        List<String> known = RuleSets.builtIn().all().stream()
                .flatMap(rules -> rules.places().stream())
                .map(PlaceRow::id)
                .distinct()
                .toList();
        if (!known.contains(where)) {
            top.findings()
                    .problem(
                            top.at("where"),
                            Spelling.show(where) + " is no circumstance that a rule set lists; "
                                    + top.findings().instead(where, known));
        }
    }

    /** The key {@code limit} of a row, and the limit that it names where there is one. */
    static Optional<LimitRow> limit(Fields row) {
        String id = row.text("limit");
        if (id.isEmpty()) {
            return Optional.empty();
        }
        List<LimitRow> all = RuleSets.builtIn().all().stream()
                .map(RuleSet::limits)
                .flatMap(List::stream)
                .toList();
        Optional<LimitRow> found =
                all.stream().filter(each -> each.id().equals(id)).findFirst();
        if (found.isEmpty()) {
            List<String> known = all.stream().map(LimitRow::id).toList();
            row.findings()
                    .problem(
                            row.at("limit"),
                            Spelling.show(id) + " is no limit of any rule set; "
                                    + row.findings().instead(id, known));
        }
        return found;
    }

    static House.Tighter tighter(Fields row) {
        Optional<LimitRow> limit = limit(row);
        Optional<Quantity> atMost = bound(row, "at-most", limit);
        Optional<Quantity> atLeast = bound(row, "at-least", limit);
        if (row.has("at-most") == row.has("at-least")) {
            row.findings()
                    .problem(
                            row.at(),
                            row.has("at-most")
                                    ? "a tighter limit has one of 'at-most' and 'at-least', not both"
                                    : "key 'at-most' or 'at-least' is missing; a quantity such as '40 uA' is due");
        }
        return new House.Tighter(row.text("limit"), atMost, atLeast, row.text("because"));
    }

    private static Optional<Quantity> bound(Fields row, String key, Optional<LimitRow> limit) {
        Optional<Quantity> value = row.optionalQuantity(
                key, limit.map(each -> List.of(each.value().dimension())).orElse(LimitedQuantity.ANY));
        if (limit.isEmpty() || !row.has(key)) {
            return value;
        }
        String states = "the limit is " + limit.get().bound().word() + " "
                + limit.get().value().text();
        if (!limit.get().bound().word().equals(key)) {
            row.findings()
                    .problem(
                            row.at(key),
                            states + "; write '" + limit.get().bound().word() + "'");
        } else if (value.isPresent() && looser(value.get(), limit.get())) {
            row.findings()
                    .problem(
                            row.at(key),
                            "'" + value.get().text() + "' is looser: " + states
                                    + ". A house may tighten a limit, never loosen one");
        }
        return value;
    }

    private static boolean looser(Quantity value, LimitRow limit) {
        return limit.bound() == Limit.Bound.AT_MOST
                ? value.compareTo(limit.value()) > 0
                : value.compareTo(limit.value()) < 0;
    }
}
