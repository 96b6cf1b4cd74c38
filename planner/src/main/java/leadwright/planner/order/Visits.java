package leadwright.planner.order;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import leadwright.catalog.kit.Method;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.Phase;
import leadwright.planner.plan.Step.Account;
import leadwright.planner.plan.Step.Act;

/** The steps of one visit: selections, touches and readings. */
final class Visits {
    private static final String SOURCE = "source";

    private final Scene scene;
    private final Texts texts;
    private final Safeguards safeguards;

    Visits(Scene scene) {
        this.scene = scene;
        this.texts = new Texts(scene);
        this.safeguards = new Safeguards(texts);
    }

    /**
     * @param readings of one phase, in clause order
     * @param selected key of the demand that is selected, empty where none is
     * @param last key of the demand to end with, empty where it does not matter
     * @param settled whether an ordinary reading was taken since the last change
     */
    List<Draft> steps(
            List<Obligation> readings, Hookup hookup, int number, String selected, String last, boolean settled) {
        Map<String, List<Obligation>> byDemand = new LinkedHashMap<>();
        for (Obligation each : readings) {
            byDemand.computeIfAbsent(each.demand().key(), key -> new ArrayList<>())
                    .add(each);
        }
        List<String> order = new ArrayList<>(byDemand.keySet());
        String nothing = Demand.NOTHING.key();
        // A stable sort: what asks nothing first, then what is selected already, then clause order, then the last.
        order.sort(Comparator.comparingInt(
                (String key) -> key.equals(nothing) ? 0 : key.equals(selected) ? 1 : key.equals(last) ? 3 : 2));
        List<Draft> steps = new ArrayList<>();
        String now = selected;
        boolean first = !settled;
        boolean fed = false;
        for (String key : order) {
            List<Obligation> group = byDemand.get(key);
            if (!key.equals(nothing) && !key.equals(now)) {
                steps.add(tie(group.get(0), hookup, number));
                now = key;
            }
            for (Map.Entry<String, List<Obligation>> each : byPlace(group).entrySet()) {
                if (fed && (!each.getKey().isEmpty() || !feeds(each.getValue().get(0)))) {
                    steps.add(sourceOff(group.get(0).state(), number));
                    fed = false;
                }
                if (!each.getKey().isEmpty()) {
                    steps.add(touch(each.getValue().get(0), each.getKey(), number));
                }
                for (Obligation reading : each.getValue()) {
                    if (fed && !feeds(reading)) {
                        steps.add(sourceOff(reading.state(), number));
                    }
                    fed = feeds(reading);
                    steps.add(read(reading, number, first));
                    first &= reading.phase() != Phase.ORDINARY;
                }
            }
        }
        if (fed) {
            steps.add(sourceOff(readings.get(0).state(), number));
        }
        return steps;
    }

    /** The source may stay on from one reading that needs it to the next: only selections lie between them. */
    static List<Draft> withoutNeedlessOff(List<Draft> steps) {
        List<Draft> kept = new ArrayList<>();
        for (int i = 0; i < steps.size(); i++) {
            if (!isSourceOff(steps.get(i)) || !fedNext(steps, i + 1)) {
                kept.add(steps.get(i));
            }
        }
        return kept;
    }

    private static boolean isSourceOff(Draft step) {
        return step.does() == Act.SWITCH && step.place().equals(Optional.of(SOURCE));
    }

    private static boolean fedNext(List<Draft> steps, int from) {
        return steps.subList(from, steps.size()).stream()
                .dropWhile(step -> step.does() == Act.TIE)
                .limit(1)
                .flatMap(step -> step.reading().stream())
                .anyMatch(Visits::feeds);
    }

    /** Whether a source of the tester is on what is wired; insulation readings end with their own discharge. */
    private static boolean feeds(Obligation reading) {
        return reading.phase() == Phase.MAINS_ON_PART
                || reading.phase() == Phase.ORDINARY && reading.method().equals(Optional.of(Method.ALTERNATIVE));
    }

    private Draft sourceOff(MainsState state, int number) {
        return Draft.of(
                        Act.SWITCH,
                        "Source off: take it off what is wired and see that the tester shows it off.",
                        state,
                        OptionalInt.of(number),
                        0,
                        Account.SWITCH,
                        "Nobody starts, plugs, touches or switches while it is applied.")
                .at(SOURCE);
    }

    private static Map<String, List<Obligation>> byPlace(List<Obligation> group) {
        Map<String, List<Obligation>> byPlace = new LinkedHashMap<>();
        for (Obligation each : group) {
            byPlace.computeIfAbsent(Units.touched(each).orElse(""), key -> new ArrayList<>())
                    .add(each);
        }
        return byPlace;
    }

    private MainsState state(Obligation reading) {
        return reading.state();
    }

    private Draft tie(Obligation reading, Hookup hookup, int number) {
        Demand demand = reading.demand();
        StringBuilder text =
                new StringBuilder("Select at the tester: measured ").append(jacks(demand.measured(), hookup));
        if (!demand.against().isEmpty()) {
            text.append(", against ").append(jacks(demand.against(), hookup));
        }
        if (!demand.earthed().isEmpty()) {
            text.append(", tied to ").append(texts.earth()).append(' ').append(jacks(demand.earthed(), hookup));
        }
        text.append("; all other jacks not selected.");
        Draft step = Draft.of(
                Act.TIE,
                text.toString(),
                state(reading),
                OptionalInt.of(number),
                scene.times().select(),
                Account.SWITCH,
                "The readings that follow are of " + texts.group(demand.measured()) + ".");
        return safeguards.caution(reading).map(step::warning).orElse(step);
    }

    private String jacks(SortedSet<String> connections, Hookup hookup) {
        SortedSet<Integer> jacks = new TreeSet<>();
        for (Bundle bundle : hookup.bundles()) {
            if (bundle.connections().stream().anyMatch(connections::contains)) {
                jacks.addAll(bundle.jacks());
            }
        }
        String list = jacks.stream().map(String::valueOf).collect(Collectors.joining(", "));
        return (jacks.size() == 1 ? "jack " : "jacks ") + list + " (" + texts.group(connections) + ")";
    }

    private Draft touch(Obligation reading, String place, int number) {
        Draft step = Draft.of(
                        Act.TOUCH,
                        "Touch " + texts.place(place) + " with the probe, hand behind its guard.",
                        state(reading),
                        OptionalInt.of(number),
                        scene.times().touch(),
                        Account.PROBE,
                        "Every accessible place is touched on its own, in each state.")
                .at(place);
        Optional<String> caution = safeguards.caution(reading);
        return caution.map(step::warning).orElse(step);
    }

    private Draft read(Obligation reading, int number, boolean first) {
        BenchTimes times = scene.times();
        int seconds = switch (reading.phase()) {
            case INSULATION -> times.action("read-insulation") + times.action("discharge");
            case MAINS_ON_PART -> times.action("read-mains-on-part");
            default -> times.action(first ? "read-first" : "read");
        };
        String text = texts.reading(reading)
                + (reading.phase() == Phase.INSULATION ? " Discharge and verify below 60 V d.c." : "");
        return Draft.of(
                        Act.READ,
                        text,
                        state(reading),
                        OptionalInt.of(number),
                        seconds + times.write(),
                        Account.READ,
                        because(reading))
                .reading(reading, times.write(), safeguards.caution(reading), safeguards.onFail(reading));
    }

    private String because(Obligation reading) {
        String asked = reading.clause().isEmpty() ? "" : " (" + reading.clause() + ")";
        return switch (reading.phase()) {
            case INSULATION -> "Insulation is read before anything is powered" + asked + ".";
            case MAINS_ON_PART -> "Last in its hookup: every ordinary reading of the part has passed" + asked + ".";
            default ->
                switch (reading.state().fault()) {
                    case NONE -> "The rule set asks for it without a fault, before any fault" + asked + ".";
                    case SUPPLY_OPEN, EARTH_OPEN ->
                        "The rule set asks for it under this single fault, after the readings" + " without one" + asked
                                + ".";
                };
        };
    }
}
