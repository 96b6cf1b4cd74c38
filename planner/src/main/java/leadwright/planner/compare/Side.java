package leadwright.planner.compare;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.EarthPoint;
import leadwright.catalog.device.Port;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.house.DecisionRule;
import leadwright.catalog.house.EarthWord;
import leadwright.catalog.kit.Accuracy;
import leadwright.catalog.kit.PartSource;
import leadwright.catalog.kit.Tester;
import leadwright.catalog.rules.Limit;
import leadwright.planner.Plan;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.NotApplicable;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Proof;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Shortfall;
import leadwright.planner.plan.Step;
import leadwright.planner.plan.TimeSplit;

/**
 * One of the two plans, as far as comparing looks at it.
 *
 * @param partial whether something due cannot be measured
 * @param training whether it may only be used for training
 * @param on the date it was planned for, where given
 */
public record Side(
        String fingerprint,
        boolean partial,
        boolean training,
        Device device,
        Bench bench,
        Plan.RulesInfo rules,
        String occasion,
        Optional<LocalDate> on,
        House house,
        List<Hookup> hookups,
        List<Reading> readings,
        List<Step> steps,
        List<NotApplicable> notApplicable,
        List<Shortfall> shortfalls,
        List<String> warnings,
        TimeSplit time,
        Proof hookupsProof,
        Proof timeProof) {
    public Side {
        hookups = List.copyOf(hookups);
        readings = List.copyOf(readings);
        steps = List.copyOf(steps);
        notApplicable = List.copyOf(notApplicable);
        shortfalls = List.copyOf(shortfalls);
        warnings = List.copyOf(warnings);
    }

    /**
     * What a plan says of its device.
     *
     * @param parts applied parts in the device file's order
     * @param places names of touch points, ports and earth points by id
     */
    public record Device(String name, String protection, List<Part> parts, Map<String, String> places) {
        public Device {
            parts = List.copyOf(parts);
            places = Map.copyOf(places);
        }
    }

    /**
     * An applied part.
     *
     * @param type B, BF or CF
     * @param connections full names
     */
    public record Part(String id, String name, String type, List<String> connections) {
        public Part {
            connections = List.copyOf(connections);
        }
    }

    /** What a plan says of its kit. */
    public record Bench(
            String kit,
            String tester,
            Optional<LocalDate> calibratedUntil,
            Map<String, Accuracy> accuracy,
            Optional<PartSource> source) {
        public Bench {
            accuracy = Map.copyOf(accuracy);
        }
    }

    /** What a plan says of its house. */
    public record House(Optional<String> department, DecisionRule decision, EarthWord words, List<String> signs) {
        public House {
            signs = List.copyOf(signs);
        }
    }

    /** A plan as it stands in memory; the same as its file read back. */
    public static Side of(Plan plan) {
        Tester tester = plan.kit().tester();
        return new Side(
                plan.fingerprint(),
                plan.partial(),
                plan.trainingCopy(),
                device(plan.device()),
                new Bench(
                        plan.kit().name(),
                        tester.name(),
                        tester.calibratedUntil(),
                        tester.accuracy(),
                        tester.partSource()),
                plan.rules(),
                plan.occasion(),
                plan.on(),
                new House(
                        plan.house().department(),
                        plan.house().decision(),
                        plan.house().words(),
                        plan.house().signs()),
                plan.hookups(),
                plan.readings().stream().map(Side::written).toList(),
                plan.steps(),
                plan.notApplicable(),
                plan.shortfalls(),
                plan.warnings(),
                whole(plan.time()),
                plan.hookupsProof(),
                plan.timeProof());
    }

    /** A file says of a limit whether it is settled, be it by a source or by the house. */
    private static Reading written(Reading reading) {
        Obligation what = reading.obligation();
        Optional<Limit> limit = what.limit()
                .map(each -> new Limit(
                        each.id(),
                        each.bound(),
                        each.value(),
                        each.clause(),
                        each.mark(),
                        each.sources(),
                        !each.unconfirmed()));
        return new Reading(
                reading.id(),
                new Obligation(
                        what.key(),
                        what.quantity(),
                        what.clause(),
                        what.of(),
                        what.demand(),
                        what.place(),
                        what.earthSubject(),
                        what.state(),
                        what.mode(),
                        what.sourcePolarity(),
                        what.method(),
                        what.component(),
                        what.network(),
                        limit,
                        what.note()),
                reading.hookup());
    }

    /** With each part of the split, as the file has it. */
    private static TimeSplit whole(TimeSplit time) {
        Map<Step.Account, Integer> parts = new EnumMap<>(Step.Account.class);
        for (Step.Account each : Step.Account.values()) {
            parts.put(each, time.parts().getOrDefault(each, 0));
        }
        return new TimeSplit(time.total(), parts, time.plainOrder(), time.startUps());
    }

    private static Device device(leadwright.catalog.device.Device device) {
        List<Part> parts = device.appliedParts().stream()
                .map((AppliedPart part) -> new Part(
                        part.id(),
                        part.name(),
                        part.type().word(),
                        part.connections().stream().map(Connection::name).toList()))
                .toList();
        Map<String, String> places = new LinkedHashMap<>();
        device.touchPoints().forEach((TouchPoint each) -> places.put(each.id(), each.name()));
        device.ports().forEach((Port each) -> places.put(each.id(), each.name()));
        device.earthPoints().forEach((EarthPoint each) -> places.put(each.id(), each.name()));
        return new Device(device.name(), device.protection().word(), parts, places);
    }

    Optional<Hookup> hookup(Reading reading) {
        return reading.hookup()
                .flatMap(id ->
                        hookups.stream().filter(each -> each.id().equals(id)).findFirst());
    }

    /** The step that takes a reading. */
    Optional<Step> taking(Reading reading) {
        return steps.stream()
                .filter(step -> step.reading().equals(Optional.of(reading.id())))
                .findFirst();
    }

    /** Steps that take no reading. */
    Stream<Step> others() {
        return steps.stream().filter(step -> step.reading().isEmpty());
    }

    /** A sentence of the plan with the word earth, whichever word the house has for it, so that it compares. */
    String inWords(String sentence) {
        return house.words() == EarthWord.EARTH
                ? sentence
                : sentence.replace("ground", "earth").replace("Ground", "Earth");
    }
}
