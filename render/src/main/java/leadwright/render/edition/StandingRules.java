package leadwright.render.edition;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import leadwright.catalog.house.DecisionRule;
import leadwright.catalog.table.Sources;
import leadwright.planner.Plan;
import leadwright.planner.Planner;
import leadwright.planner.plan.Proof;
import leadwright.planner.plan.Step;
import leadwright.render.paper.DocumentBuilder;
import leadwright.render.paper.Words;
import leadwright.render.sheet.Vocabulary;

/** What a procedure lays down beside the steps: references, people, proof, decision, records, failures. */
final class StandingRules {

    private final Plan plan;
    private final Vocabulary words;
    private final DocumentBuilder page;

    StandingRules(Plan plan, Vocabulary words, DocumentBuilder page) {
        this.plan = plan;
        this.words = words;
        this.page = page;
    }

    void references() {
        page.section("References");
        List<Words> items = new ArrayList<>();
        String edition = plan.rules().edition();
        items.add(Words.strong(plan.rules().name())
                .then(edition.isEmpty() ? "" : ", edition " + edition)
                .then(" (rule set " + plan.rules().id() + ")"));
        items.add(Words.of("The device's own instructions for use and service: they stand above this procedure."));
        items.add(Words.of("Local codes and the department's own rules: they too stand above it."));
        TreeSet<String> keys = new TreeSet<>();
        plan.readings()
                .forEach(reading -> reading.obligation().limit().ifPresent(limit -> keys.addAll(limit.sources())));
        keys.forEach(key ->
                items.add(Words.of("Public text: " + Sources.builtIn().find(key).orElse(key) + " [" + key + "]")));
        items.add(Words.of("Leadwright " + Planner.VERSION + ", plan " + plan.fingerprint()));
        page.items(items);
        page.say(
                "The rule set is written from the public texts above and, where these fail, from memory; the table of limits says"
                        + " which. None of them replaces the department's own copy of the standard.");
    }

    void people() {
        page.section("Responsibilities and competence");
        page.items(Editions.lines(
                words,
                "The head of the department approves this procedure, keeps the copies of the standards, and has the limits"
                        + " confirmed.",
                "The test is done by persons trained and allowed to work on live medical equipment, never alone, with the isolator"
                        + " and first aid known before the first switch is closed.",
                "They have been assessed with the training edition of this plan, or in an equal way.",
                "They stop when a value, a smell, a noise or the device itself is not as it should be. Nobody may press them to"
                        + " go on."));
        if (!plan.house().signs().isEmpty()) {
            page.say("Signs by the house rules: "
                    + String.join(", ", plan.house().signs()) + ".");
        }
        if (plan.steps().stream().anyMatch(step -> step.does() == Step.Act.MAKE_SAFE)) {
            page.say("A second person reads back and initials that a therapy output is safe.");
        }
    }

    void proof() {
        page.section("Proof of fewest hookups and least time, and its limits");
        page.part("Hookups");
        proof(plan.hookupsProof(), plan.hookupsProof().answer() == 1 ? "hookup" : "hookups", "fewest");
        page.part("Time");
        proof(plan.timeProof(), "seconds of bench time", "least");
        List<List<Words>> rows = new ArrayList<>();
        for (Step.Account account : Step.Account.values()) {
            int seconds = plan.time().parts().getOrDefault(account, 0);
            if (seconds > 0) {
                rows.add(DocumentBuilder.row(account.word().replace('-', ' '), time(seconds)));
            }
        }
        rows.add(List.of(Words.strong("in all"), Words.strong(time(plan.time().total()))));
        rows.add(DocumentBuilder.row(
                "the plain order, hookup after hookup in the order of clauses",
                time(plan.time().plainOrder())));
        rows.add(DocumentBuilder.row(
                "start-ups of the device", String.valueOf(plan.time().startUps())));
        page.grid(List.of("Bench time", ""), List.of(70, 30), rows);
        page.part("What the proof does not say");
        page.items(Editions.lines(
                words,
                "It holds for the device, kit, rules and house as their files describe them. What a file leaves out is not in it.",
                "The times of single acts are estimates: common practice, no source. The order found is the shortest for those"
                        + " times, not for every hand.",
                "The least time is of orders of these hookups. A wiring of the same number of hookups might allow a shorter one.",
                "It says nothing about whether the device is safe: the readings do."));
    }

    private void proof(Proof proof, String of, String superlative) {
        page.say(Words.strong(proof.answer() + " " + of + ", "
                        + (proof.optimal()
                                ? "proven " + superlative + ". "
                                : "not proven " + superlative + ": at least " + proof.lowerBound() + ". "))
                .then(words.prose(proof.argument())));
    }

    private static String time(int seconds) {
        return seconds < 60 ? seconds + " s" : seconds / 60 + " min " + seconds % 60 + " s";
    }

    void decision() {
        page.section("Decision rule");
        page.say(
                plan.house().decision() == DecisionRule.SIMPLE
                        ? "Simple acceptance: a value at its limit or on its good side passes. Near the limit the risk of a wrong"
                                + " acceptance is up to one half; a value inside the measurement uncertainty is named in the record."
                        : "Guard band: a value passes only when it is inside its limit by the expanded uncertainty (k = 2). The risk"
                                + " of a wrong acceptance is below 2.5 %, and more good devices are turned away.");
        page.say(
                "The uncertainty comes from the tester's accuracy as the kit file states it; where none is stated, simple acceptance"
                        + " knows pass and fail alone, and a guard band cannot be kept, so that the reading is not judged. Leakage is"
                        + " corrected to nominal mains voltage where the rule set says so. Background is written down and never subtracted."
                        + " Values are compared unrounded.");
    }

    void records() {
        page.section("Records and how long they are kept");
        page.items(Editions.lines(
                words,
                "The bench sheet, filled in and signed, with the fingerprint of this plan; the record that is worked out from it;"
                        + " both carry device, serial number, tester, calibration date and persons.",
                "Every reading that is due has a value, or the reason why it was not taken. A bad value and its repeat both stand.",
                "The values are kept to be compared with the next ones of the same device."));
        page.say(
                "How long: as the department's own rule for equipment records and local codes say. This program states no"
                        + " period: none is known to it from a source.");
    }

    void failures() {
        page.section("Failed cases, and testers that were not in order");
        page.items(Editions.lines(
                words,
                "Earth fails: stop. No leakage readings, nothing powered through the tester.",
                "Touch current without a fault fails: no fault states, no mains on a part.",
                "A patient or applied part reading without a fault fails: no mains on that part.",
                "Insulation fails: the device is not energised.",
                "Smoke, a trip, an alarm: off at the wall.",
                "A bad value once: re-seat, repeat once, write both. If it stays bad, it is a failure.",
                "A failed device is taken out of use and labelled, its owner is told, and it comes back by the occasion 'after"
                        + " repair'.",
                "A tester found out of order or past its calibration: its readings since the last good check or calibration are void;"
                        + " the devices are listed and tested again."));
    }
}
