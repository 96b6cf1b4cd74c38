package leadwright.render.edition;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import leadwright.catalog.rules.Limit;
import leadwright.planner.Plan;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;
import leadwright.render.paper.Words;
import leadwright.render.sheet.Vocabulary;

/** Questions that this plan answers. */
final class Questions {

    /** Both are in the words of the plan. */
    record Question(String asks, String answer) {}

    private final Plan plan;
    private final Vocabulary words;
    private final List<Question> questions = new ArrayList<>();

    private Questions(Plan plan, Vocabulary words) {
        this.plan = plan;
        this.words = words;
    }

    static List<Question> of(Plan plan, Vocabulary words) {
        Questions all = new Questions(plan, words);
        all.wiring();
        all.order();
        all.limits();
        all.states();
        all.mistakes();
        return all.questions;
    }

    static List<Words> asked(List<Question> questions) {
        return questions.stream().map(each -> Words.of(each.asks())).toList();
    }

    static List<Words> answered(List<Question> questions) {
        return questions.stream().map(each -> Words.of(each.answer())).toList();
    }

    private void ask(String asks, String answer) {
        questions.add(new Question(asks, answer));
    }

    private Optional<Reading> first(Predicate<Obligation> what) {
        return plan.readings().stream()
                .filter(each -> what.test(each.obligation()))
                .findFirst();
    }

    private void wiring() {
        for (Hookup hookup : plan.hookups()) {
            if (hookup.bundles().isEmpty()) {
                continue;
            }
            Bundle last = hookup.bundles().get(hookup.bundles().size() - 1);
            ask(
                    "Hookup " + hookup.id() + ": which jack does " + words.subject(last.connections())
                            + " come to, and how many ends do you tick for the whole hookup's wires?",
                    "Jack " + numbers(last) + "; " + hookup.chains().size()
                            + " in the list of wires, a tick at each end of each.");
        }
        if (plan.hookups().size() > 1) {
            ask(
                    "Why does one hookup not do for this device with this kit?",
                    "All that is due does not go on the tester's jacks at once without joining what is to be read apart, or keeping"
                            + " company with a part that must be alone. Fewest hookups: "
                            + plan.hookupsProof().answer()
                            + (plan.hookupsProof().optimal() ? ", proven." : ", not proven."));
        }
    }

    private static String numbers(Bundle bundle) {
        return bundle.jacks().stream().map(String::valueOf).collect(Collectors.joining("+"));
    }

    private void order() {
        first(each -> each.phase() == Obligation.Phase.EARTH)
                .ifPresent(reading -> ask(
                        words.say("Why is the earth read (") + reading.id()
                                + ") before anything is powered, and what if it fails?",
                        words.say(
                                "Every later reading trusts the earth: without it a fault stands on the housing. If it fails:"
                                        + " stop; no leakage readings, nothing is powered through the tester; out of use, labelled, its"
                                        + " owner told.")));
        first(each -> each.isTouch() && each.state().fault() == MainsState.Fault.NONE)
                .filter(touch -> plan.readings().stream()
                        .anyMatch(each -> each.obligation().state().fault() != MainsState.Fault.NONE))
                .ifPresent(touch -> ask(
                        "Why does the touch reading " + touch.id() + " come before the states with a fault?",
                        "With no fault the housing must be safe to touch already. If it is not, a fault would make it worse while"
                                + " hands are near: no fault states are set, and no mains is put on a part."));
        first(each -> each.phase() == Obligation.Phase.MAINS_ON_PART)
                .ifPresent(reading -> ask(
                        "What is said aloud before " + reading.id() + ", and what must have passed?",
                        words.say(
                                "Hands off: mains on the part. Nobody starts, plugs or touches while it is applied. Every earth"
                                        + " reading and every ordinary reading of the hookup has passed.")));
        plan.steps().stream()
                .filter(step -> step.does() == Step.Act.MAKE_SAFE)
                .findFirst()
                .ifPresent(step -> ask(
                        "What is done before anything is plugged to the therapy output of step " + step.number() + "?",
                        "It is made safe, read back, and initialled by two persons; the wait that the device file asks for is"
                                + " kept."));
        if (plan.steps().stream().anyMatch(step -> step.does() == Step.Act.NULL)) {
            ask(
                    "When are the leads nulled, and what is never in the path then?",
                    words.say(
                            "Before the first earth reading, again after any change in the path, and checked at the end. The"
                                    + " device's own cord is never in the path."));
        }
    }

    private void limits() {
        List<String> asked = new ArrayList<>();
        for (Reading reading : plan.readings()) {
            Optional<Limit> limit = reading.obligation().limit();
            if (limit.isPresent() && !asked.contains(limit.get().id())) {
                asked.add(limit.get().id());
                ask(
                        "Which limit applies to " + reading.id() + " (" + words.quantity(reading.obligation()) + ", "
                                + words.what(reading.obligation()) + "), and why?",
                        words.bound(limit.get()) + ", by " + limit.get().clause() + " of "
                                + plan.rules().name()
                                + "; mark " + limit.get().mark().name() + " ("
                                + (limit.get().unconfirmed() ? "not yet confirmed" : "see the table of limits")
                                + "). It follows"
                                + " the quantity, the class of the device, the type of the part and the method.");
            }
        }
    }

    private void states() {
        first(each -> each.state().fault() == MainsState.Fault.SUPPLY_OPEN)
                .ifPresent(
                        reading -> ask(
                                "Supply open (" + reading.id() + "): the device has stopped. What is still live?",
                                "One conductor, and all that is joined to it inside the device. Nothing is plugged, opened or touched."));
        first(each -> each.state().polarity() == MainsState.Polarity.REVERSED)
                .ifPresent(reading -> ask(
                        "Why is " + reading.id() + " taken with the polarity reversed?",
                        "The conductor that is live drives the current, and the two sides of the filter are not alike. The larger"
                                + " value counts."));
    }

    private void mistakes() {
        first(each -> each.phase() == Obligation.Phase.ORDINARY || each.phase() == Obligation.Phase.MAINS_ON_PART)
                .filter(reading -> !reading.obligation().demand().isNothing())
                .ifPresent(reading -> ask(
                        "A wire is left off while " + reading.id()
                                + " is read. Which way does the value go, and would the limit" + " catch it?",
                        "Down, or it stays as it is where other wires are joined with it. No: a ceiling never catches a value that"
                                + " is too low. Ticks, the device's own sign and a pull at the trunk do."));
        first(each -> each.phase() == Obligation.Phase.EARTH)
                .filter(reading -> !plan.device().ports().isEmpty())
                .ifPresent(reading -> ask(
                        "A cable is left in at " + plan.device().ports().get(0).name() + " while " + reading.id()
                                + " is read. Which way does the value go?",
                        words.say("Down, if its screen leads to earth: the current has two ways side by side.")));
    }
}
