package leadwright.planner.audit;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import leadwright.catalog.device.Connection;
import leadwright.catalog.house.Times;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.table.Connectors;
import leadwright.planner.Plan;
import leadwright.planner.plan.Joint;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.MainsState.Polarity;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;

/** Recomputes the seconds of every step from the table of actions, and the sums. */
final class TimeAudit {
    private final Plan plan;
    private final Connectors connectors;
    private final Breaches breaches;
    private final Times times;

    TimeAudit(Plan plan, Connectors connectors, Breaches breaches) {
        this.plan = plan;
        this.connectors = connectors;
        this.breaches = breaches;
        this.times = plan.house().times();
    }

    void run() {
        sums();
        MainsState state = MainsState.OFF;
        String group = "";
        boolean checked = false;
        Map<String, Reading> readings = new HashMap<>();
        plan.readings().forEach(reading -> readings.put(reading.id(), reading));
        for (Step step : plan.steps()) {
            OptionalInt due = OptionalInt.empty();
            switch (step.does()) {
                case START -> due = OptionalInt.of(seconds(plan.device().startUp()));
                case SHUT_DOWN -> due = OptionalInt.of(seconds(plan.device().shutDown()));
                case TIE -> due = OptionalInt.of(seconds(times.action("select")));
                case TOUCH -> due = OptionalInt.of(seconds(times.action("touch")));
                case CLIP -> due = OptionalInt.of(seconds(times.action("clip")) + walk(step));
                case NULL -> due = OptionalInt.of(seconds(times.action("null")));
                // Taking a source off is in the seconds of its reading.
                case SWITCH -> due = step.place().isEmpty() ? switching(state, step.state()) : OptionalInt.of(0);
                case JOIN -> due = contact(step, true);
                case PART -> due = contact(step, false);
                case READ -> {
                    Reading reading = step.reading().map(readings::get).orElse(null);
                    if (reading != null) {
                        // With the supply open a device without power has no mode to change.
                        String mode = step.state().fault() == Fault.SUPPLY_OPEN
                                ? ""
                                : reading.obligation().mode();
                        String here = step.state() + " " + step.hookup() + " " + mode;
                        // Checks follow one another before the device is plugged in, and at the end.
                        boolean check = reading.obligation().phase() == Obligation.Phase.CHECK;
                        boolean first = check ? !checked : !here.equals(group);
                        due = reading(reading.obligation(), first);
                        if (reading.obligation().phase() == Obligation.Phase.ORDINARY
                                || reading.obligation().phase() == Obligation.Phase.MAINS_ON_PART) {
                            group = here;
                        }
                    }
                }
                default -> {}
            }
            if (due.isPresent() && due.getAsInt() != step.seconds()) {
                breaches.add(
                        Invariant.SECONDS,
                        "step " + step.number(),
                        step.does().word() + " takes " + due.getAsInt() + " s, not " + step.seconds());
            }
            checked = step.reading()
                    .map(readings::get)
                    .filter(reading -> reading.obligation().phase() == Obligation.Phase.CHECK)
                    .isPresent();
            boolean changes = step.does() == Step.Act.SWITCH && step.place().isEmpty();
            if (changes || step.does() == Step.Act.START) {
                state = step.state();
                group = "";
            }
        }
    }

    private void sums() {
        int total = 0;
        int startUps = 0;
        Map<Step.Account, Integer> parts = new EnumMap<>(Step.Account.class);
        for (Step step : plan.steps()) {
            total += step.seconds();
            parts.merge(step.account(), step.seconds() - step.writing(), Integer::sum);
            parts.merge(Step.Account.WRITE, step.writing(), Integer::sum);
            startUps += step.does() == Step.Act.START ? 1 : 0;
        }
        breaches.check(
                total == plan.time().total(),
                Invariant.SECONDS,
                "time",
                "the steps take " + total + " s, the plan says " + plan.time().total());
        for (Step.Account account : Step.Account.values()) {
            int said = plan.time().parts().getOrDefault(account, 0);
            int is = parts.getOrDefault(account, 0);
            breaches.check(
                    said == is, Invariant.SECONDS, "time", account.word() + " is " + is + " s, the plan says " + said);
        }
        breaches.check(
                startUps == plan.time().startUps(),
                Invariant.START_UPS,
                "time",
                "the device is started " + startUps + " times, the plan says "
                        + plan.time().startUps());
        breaches.check(
                plan.timeProof().answer() == total && plan.timeProof().lowerBound() <= total,
                Invariant.PROOF,
                "time",
                "the proof is of another time");
        breaches.check(
                plan.hookupsProof().answer() == plan.hookups().size()
                        && plan.hookupsProof().lowerBound() <= plan.hookups().size(),
                Invariant.PROOF,
                "hookups",
                "the proof is of another number of hookups");
    }

    private static int seconds(leadwright.catalog.quantity.Quantity time) {
        return (int) ((time.amount() + 999) / 1000);
    }

    /** There and back, a second for each 1.2 m. */
    private int walk(Step step) {
        long micrometres = step.place()
                .map(place -> EarthAudit.distance(plan.device(), place, 0))
                .orElse(0L);
        return (int) ((2 * micrometres + 1_199_999) / 1_200_000);
    }

    private OptionalInt switching(MainsState from, MainsState to) {
        boolean tester = from.polarity() != Polarity.NONE || to.polarity() != Polarity.NONE;
        if (!tester) {
            return OptionalInt.empty();
        }
        int conductor = seconds(times.action("open-conductor"));
        int cost = 0;
        cost += from.fault() == Fault.NONE || from.fault() == to.fault() && from.polarity() == to.polarity()
                ? 0
                : conductor;
        cost += to.fault() == Fault.NONE || from.fault() == to.fault() && from.polarity() == to.polarity()
                ? 0
                : conductor;
        if (from.polarity() == to.polarity()) {
            return OptionalInt.of(cost);
        }
        boolean turn = from.polarity() != Polarity.NONE && to.polarity() != Polarity.NONE;
        return OptionalInt.of(cost + seconds(times.action(turn ? "polarity" : "outlet")));
    }

    private OptionalInt contact(Step step, boolean join) {
        if (step.joint().isEmpty()) {
            return OptionalInt.empty();
        }
        Joint joint = Joints.plain(step.joint().get());
        Optional<Connection> connection = plan.device().connections().stream()
                .filter(each -> each.name().equals(joint.from()))
                .findFirst();
        if (connection.isEmpty()) {
            // The earth lead's unwinding may be counted with its joint; only plain joints are recomputed.
            return step.account() == Step.Account.REPLUG ? OptionalInt.of(time("lab-4mm", join)) : OptionalInt.empty();
        }
        Optional<KitItem> item =
                plan.kit().item(joint.to().substring(0, Math.max(0, joint.to().lastIndexOf('/'))));
        String kind = item.map(each -> kind(connection.get().terminal(), each)).orElse("lab-4mm");
        return kind.isEmpty() ? OptionalInt.empty() : OptionalInt.of(time(kind, join));
    }

    private int time(String kind, boolean join) {
        Times.JoinPart both = times.contact(kind);
        return seconds(join ? both.join() : both.part());
    }

    /** Contact-kind word, or empty where the table of actions has no join and part times (clip, probe). */
    private String kind(String terminal, KitItem item) {
        return item.ends().stream()
                .filter(end -> connectors.mates(terminal, end) != leadwright.catalog.table.Mating.NO)
                .map(end -> connectors.joint(terminal, end).word())
                .map(word -> word.equals("stud") ? "lab-4mm" : word)
                .findFirst()
                .filter(word -> times.contacts().containsKey(word))
                .orElse("");
    }

    private OptionalInt reading(Obligation what, boolean first) {
        int write = seconds(times.action("write"));
        return switch (what.phase()) {
            case ORDINARY -> OptionalInt.of(seconds(times.action(first ? "read-first" : "read")) + write);
            case MAINS_ON_PART -> OptionalInt.of(seconds(times.action("read-mains-on-part")) + write);
            case INSULATION ->
                OptionalInt.of(seconds(times.action("read-insulation")) + seconds(times.action("discharge")) + write);
            case EARTH ->
                OptionalInt.of(seconds(times.action("read-earth"))
                        + (what.earthSubject()
                                        .filter(subject -> subject == Obligation.EarthSubject.PLUG_TO_PART
                                                || subject == Obligation.EarthSubject.CORD)
                                        .isPresent()
                                ? seconds(times.action("flex-cord"))
                                : 0)
                        + write);
            case CHECK ->
                OptionalInt.of(seconds(times.action(
                                what.quantity() == QuantityKind.PROOF ? "read-earth" : first ? "read-first" : "read"))
                        + write);
        };
    }
}
