package leadwright.render.sheet;

import java.util.Map;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.plan.Obligation;

/** What the sections of one sheet share: the plan, the words, the writer. */
record Sheet(Plan plan, Terms terms, Names names, RowWords words, Course course, Xhtml page) {

    static Sheet of(Plan plan) {
        Terms terms = new Terms(plan.house().words());
        Map<String, String> labels = WireLabels.of(plan.device(), plan.house().labels());
        Names names = new Names(plan.device(), terms, labels);
        return new Sheet(plan, terms, names, new RowWords(names, terms), Course.of(plan), new Xhtml());
    }

    /** The plan's fingerprint as people compare it: its first eight digits. */
    String shortFingerprint() {
        String all = plan.fingerprint();
        return all.length() <= 8 ? all : all.substring(0, 8);
    }

    /** Whether some reading puts mains on a part. */
    boolean mainsOnParts() {
        return has(Obligation.Phase.MAINS_ON_PART);
    }

    boolean has(Obligation.Phase phase) {
        return plan.readings().stream().anyMatch(each -> each.obligation().phase() == phase);
    }

    /** The unit in the box of a reading; a resistor that is read as one is written in its own unit. */
    String unit(Obligation reading) {
        boolean resistor = reading.quantity() == QuantityKind.TESTER_CHECK
                && reading.component().isEmpty();
        return plan.kit().checks().stream()
                .filter(check -> resistor && reading.of().contains(check.id()))
                .map(check -> check.value().text())
                .map(text -> Amounts.letters(text.substring(text.indexOf(' ') + 1)))
                .findFirst()
                .orElseGet(() -> Amounts.unit(reading));
    }

    String say(String phrase) {
        return terms.say(phrase);
    }

    /** The program's own phrases in a text in the department's word for earth. */
    String sayOurs(String text) {
        return terms.sayOurs(text);
    }
}
