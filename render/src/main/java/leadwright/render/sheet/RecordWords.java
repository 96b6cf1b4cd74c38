package leadwright.render.sheet;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import leadwright.catalog.house.DecisionRule;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.Method;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.judge.PlannedReading;
import leadwright.planner.judge.PlannedTest;
import leadwright.planner.judge.TestRecord;
import leadwright.planner.judge.Verdict;

/** The words of a record. */
final class RecordWords {

    private final PlannedTest plan;
    private final Terms terms;

    RecordWords(PlannedTest plan) {
        this.plan = plan;
        this.terms = new Terms(plan.house().words());
    }

    String say(String phrase) {
        return terms.say(phrase);
    }

    String quantity(PlannedReading planned) {
        return say(RowWords.named(planned.quantity()));
    }

    /** What it was read on: names of parts and places, or what a check is called. */
    String subject(PlannedReading planned) {
        QuantityKind kind = planned.quantity();
        if (kind == QuantityKind.SUPPLY_VOLTAGE || kind == QuantityKind.TESTER_CHECK || kind == QuantityKind.PROOF) {
            String key = planned.key();
            int from = key.indexOf('/') + 1;
            int to = key.indexOf("/" + planned.state(), from);
            return say(key.substring(from, to < 0 ? key.length() : to)
                    .replace('-', ' ')
                    .replace("/", ", "));
        }
        String to = planned.of().stream().map(this::name).collect(Collectors.joining(", "));
        return planned.earthSubject().map(word -> say(between(word)) + to).orElse(to);
    }

    private static String between(String subject) {
        return switch (subject) {
            case "plug-to-part" -> "plug earth to ";
            case "inlet-to-part" -> "inlet earth to ";
            case "reference-to-part" -> "reference earth to ";
            default -> "";
        };
    }

    private String name(String id) {
        int point = id.indexOf('.');
        Optional<String> whole = known(id);
        if (whole.isPresent() || point < 0) {
            return whole.orElseGet(() -> id.replace('-', ' '));
        }
        String part = id.substring(0, point);
        return known(part).orElse(part) + ", " + id.substring(point + 1);
    }

    /** The name of a part or place; with its id where several have the same, as like members of a system do. */
    private Optional<String> known(String id) {
        Map<String, String> names = plan.device().names();
        return Optional.ofNullable(names.get(id)).map(name -> {
            boolean shared = names.values().stream().filter(name::equals).count() > 1;
            return shared ? name + " (" + id + ")" : name;
        });
    }

    /** In which state and how: {@code reversed, source normal, direct}. */
    String how(PlannedReading planned) {
        StringBuilder how = new StringBuilder();
        if (!planned.state().equals("off")) {
            how.append(say(planned.state().replace("/", ", ").replace('-', ' ')));
        }
        if (!planned.mode().equals("on") && !planned.mode().equals("off")) {
            then(how, planned.mode());
        }
        planned.sourcePolarity().ifPresent(word -> then(how, "source " + word));
        planned.method().filter(each -> oneMethod().isEmpty()).map(Method::word).ifPresent(word -> then(how, word));
        planned.component().filter(each -> each == Component.DC).ifPresent(each -> then(how, "d.c."));
        return how.toString();
    }

    /** The method of all leakage readings where it is one. */
    Optional<Method> oneMethod() {
        List<Method> methods = plan.readings().stream()
                .flatMap(each -> each.method().stream())
                .distinct()
                .toList();
        return methods.size() == 1 ? Optional.of(methods.get(0)) : Optional.empty();
    }

    private static void then(StringBuilder how, String word) {
        how.append(how.isEmpty() ? "" : ", ").append(word);
    }

    /** The first letter large. */
    static String capital(String text) {
        return text.isEmpty() ? text : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }

    static String verdict(Verdict verdict, DecisionRule rule) {
        return switch (verdict) {
            case PASS -> "pass";
            case PASS_INSIDE_UNCERTAINTY ->
                rule == DecisionRule.SIMPLE ? "pass, inside the uncertainty" : "NOT ACCEPTED: guard band";
            case FAIL_INSIDE_UNCERTAINTY -> "FAIL, inside the uncertainty";
            case FAIL -> "FAIL";
            case VOID -> "VOID";
            case AS_EXPECTED -> "as expected";
            case NOT_JUDGED -> "not judged";
        };
    }

    static String result(TestRecord record) {
        String word = switch (record.result()) {
            case PASS -> "PASS";
            case FAIL -> "FAIL";
            case VOID -> "VOID";
            case NOT_COMPLETE -> record.plan().partial() ? "PARTIAL, not complete" : "NOT COMPLETE";
        };
        boolean says = record.result() == TestRecord.Result.PASS || record.result() == TestRecord.Result.FAIL;
        String partial = record.plan().partial() && record.result() == TestRecord.Result.FAIL ? " (PARTIAL)" : "";
        return word + partial + (says && record.provisional() ? ", provisional" : "");
    }

    /** The decision rule in plain words. */
    static List<String> rule(DecisionRule rule) {
        return switch (rule) {
            case SIMPLE ->
                List.of(
                        "Simple acceptance: a value at or inside its limit is accepted. Near the limit the risk of a wrong"
                                + " verdict, either way, is up to one half; such values are named.");
            case GUARD_BAND ->
                List.of(
                        "Guard band: a value is accepted only where it is inside its limit by the expanded uncertainty or"
                                + " more (k = 2); the risk of wrong acceptance is below 2.5 %.");
        };
    }
}
