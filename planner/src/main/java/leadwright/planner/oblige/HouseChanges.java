package leadwright.planner.oblige;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import leadwright.catalog.house.CapacitanceLimit;
import leadwright.catalog.house.DecisionRule;
import leadwright.catalog.house.House;
import leadwright.catalog.house.ReplugUnderPower;
import leadwright.catalog.kit.Method;
import leadwright.catalog.rules.RuleSet;

/** What a house changed of a plan, a line each: it is said on every document. */
final class HouseChanges {
    private HouseChanges() {}

    static List<String> of(House house, RuleSet rules) {
        House plain = House.defaults();
        List<String> changes = new ArrayList<>();
        limits(house, rules, changes);
        house.extraTests().forEach(extra -> changes.add("also reads " + extra.quantity() + ": " + extra.because()));
        house.joinStricter()
                .forEach(stricter -> changes.add("reads each " + stricter.each() + " of type " + stricter.type()
                        + " parts on its own as well: " + stricter.because()));
        if (!house.methods().equals(plain.methods())) {
            changes.add("leakage methods in this order: "
                    + house.methods().stream().map(Method::word).collect(Collectors.joining(", ")));
        }
        if (house.insulation() != plain.insulation()) {
            changes.add("insulation resistance: " + house.insulation().word());
        }
        if (house.replugUnderPower() != ReplugUnderPower.NEVER) {
            changes.add("re-plugging under power: " + house.replugUnderPower().word());
        }
        if (house.capacitanceLimit() != CapacitanceLimit.WARN
                || !house.capacitanceShare().equals(plain.capacitanceShare())) {
            changes.add("leads may take " + house.capacitanceShare().text() + " of a limit by their capacitance: "
                    + house.capacitanceLimit().word());
        }
        if (house.floatJoined() != plain.floatJoined()) {
            changes.add("connections that float together in one bundle: "
                    + house.floatJoined().word());
        }
        if (house.decision() != DecisionRule.SIMPLE) {
            changes.add("decision rule: " + house.decision().word());
        }
        if (house.aim() != plain.aim()) {
            changes.add("aim: " + house.aim().word());
        }
        if (!house.times().equals(plain.times())) {
            changes.add("bench times of its own");
        }
        rules.places().stream()
                .filter(place -> house.where().filter(place.id()::equals).isPresent())
                .forEach(place -> changes.add("limits for: " + place.name()));
        return changes.stream().map(change -> "house rules: " + change).toList();
    }

    private static void limits(House house, RuleSet rules, List<String> changes) {
        for (House.Tighter tighter : house.tighter()) {
            rules.limit(tighter.limit())
                    .ifPresent(row -> changes.add("limit " + row.id() + " "
                            + row.value().text() + " tightened to "
                            + tighter.atMost()
                                    .or(tighter::atLeast)
                                    .map(value -> value.text())
                                    .orElse("")
                            + ": " + tighter.because()));
        }
        String confirmed = house.confirmed().stream()
                .filter(each -> each.edition().equals(rules.edition())
                        && rules.limit(each.limit()).isPresent())
                .map(each -> each.limit() + " (" + each.by() + ", " + each.date() + ")")
                .collect(Collectors.joining("; "));
        if (!confirmed.isEmpty()) {
            changes.add("compared with the department's own copy, edition " + rules.edition() + ": " + confirmed);
        }
    }
}
