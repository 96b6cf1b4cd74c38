package leadwright.planner;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import leadwright.catalog.device.ConnectorDefinition;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.PastDue;
import leadwright.catalog.table.Connectors;
import leadwright.planner.audit.Audit;
import leadwright.planner.audit.Breach;
import leadwright.planner.foresee.Situation;
import leadwright.planner.oblige.EarthUnread;
import leadwright.planner.oblige.Obligations;
import leadwright.planner.oblige.Oblige;
import leadwright.planner.oblige.SwitchedOff;
import leadwright.planner.order.Order;
import leadwright.planner.order.Ordering;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Proof;
import leadwright.planner.plan.Remedy;
import leadwright.planner.plan.Shortfall;
import leadwright.planner.wire.Wire;
import leadwright.planner.wire.Wiring;

/** The door: oblige, wire, order, foresee, audit. A plan that the audit refuses never leaves it. */
public final class Planner {

    /** The program's version; it is part of every fingerprint. */
    public static final String VERSION = "0.1.0";

    private Planner() {}

    /**
     * Plans a test.
     *
     * @return an audited plan, the reason why nothing may be planned, or the breaches by which the audit refused it
     */
    public static Outcome plan(Request request) {
        return arranged(Arranged.request(request));
    }

    private static Outcome arranged(Request request) {
        Optional<String> pastDue = pastDue(request);
        boolean training = pastDue.isPresent() && request.house().pastDue() == PastDue.TRAINING_COPY;
        if (pastDue.isPresent() && !training) {
            return new Outcome.Refused(pastDue.get());
        }
        Obligations due =
                Oblige.oblige(request.device(), request.kit(), request.rules(), request.house(), request.occasion());
        if (due.refusal().isPresent()) {
            return new Outcome.Refused(due.refusal().get());
        }
        Device device = SwitchedOff.with(request.device(), request.rules());
        Connectors connectors = connectors(request);
        Wiring wiring = Wire.wire(
                device,
                request.kit(),
                request.house(),
                connectors,
                due.wanted(),
                due.earthCurrent(),
                request.proposals());
        // With the earth made readable everything is due again.
        Optional<Remedy> remedy = wiring.remedy();
        // Whether the leads reach the earthed parts is known only now.
        Obligations left = EarthUnread.withheld(due, wiring.uncovered());
        if (!left.equals(due)) {
            wiring = Wire.wire(
                    device,
                    request.kit(),
                    request.house(),
                    connectors,
                    left.wanted(),
                    left.earthCurrent(),
                    request.proposals());
        }
        Aims.Choice choice = Aims.best(
                request.house(),
                request.kit(),
                wiring,
                kit -> Wire.wire(device, kit, request.house(), connectors, left.wanted(), left.earthCurrent(), false),
                wired -> ordered(request, device, connectors, left, wired));
        Plan bare = assemble(request, device, left, choice.wiring(), remedy, choice.ordering(), training, pastDue);
        Foresight foresight = Foresight.of(bare, request.situation());
        Plan plan = bare.foreseeing(foresight);
        List<Breach> breaches = Audit.audit(plan, request.rules(), connectors);
        if (breaches.isEmpty()) {
            return new Outcome.Planned(plan);
        }
        // A plan is good without its proof steps too: where they cannot stand, it says that nothing shows these slips.
        Plan unproven = bare.foreseeing(foresight.withoutProofs());
        return Audit.audit(unproven, request.rules(), connectors).isEmpty()
                ? new Outcome.Planned(unproven)
                : new Outcome.Rejected(breaches);
    }

    private static Ordering ordered(
            Request request, Device device, Connectors connectors, Obligations due, Wiring wiring) {
        Set<String> uncovered = Set.copyOf(wiring.uncovered());
        List<Obligation> served = due.wanted().stream()
                .filter(obligation -> !uncovered.contains(obligation.key()))
                .toList();
        return Order.order(
                device, request.kit(), request.house(), connectors, wiring.hookups(), wiring.takenIn(), served);
    }

    private static Plan assemble(
            Request request,
            Device device,
            Obligations due,
            Wiring wiring,
            Optional<Remedy> remedy,
            Ordering ordering,
            boolean training,
            Optional<String> pastDue) {
        List<Shortfall> shortfalls = new ArrayList<>(due.shortfalls());
        shortfalls.addAll(wiring.shortfalls());
        List<String> warnings = new ArrayList<>(due.warnings());
        warnings.addAll(wiring.warnings());
        pastDue.ifPresent(reason -> warnings.add(0, reason));
        return new Plan(
                fingerprint(request),
                !shortfalls.isEmpty(),
                training,
                device,
                request.kit(),
                request.house(),
                new Plan.RulesInfo(
                        request.rules().id(),
                        request.rules().name(),
                        request.rules().edition()),
                request.occasion().word(),
                request.on(),
                ordering.hookups(),
                ordering.readings(),
                ordering.steps(),
                due.notApplicable(),
                shortfalls,
                remedy,
                warnings,
                ordering.time(),
                hookups(wiring.proof(), ordering.hookups().size()),
                ordering.proof(),
                Foresight.none());
    }

    /** What is known of the day counts only where something is. */
    private static String fingerprint(Request request) {
        List<Object> parts = new ArrayList<>(List.of(
                request.device(), request.kit(), request.rules(), request.house(), request.occasion(), VERSION));
        if (!request.situation().equals(Situation.ORDINARY)) {
            parts.add(request.situation().text());
        }
        return Canonical.fingerprint(parts.toArray());
    }

    /** A hookup that no reading came to is not set up: the proof is of those that are. */
    private static Proof hookups(Proof proof, int used) {
        if (proof.answer() == used) {
            return proof;
        }
        return new Proof(
                used,
                Math.min(proof.lowerBound(), used),
                proof.argument() + " Set up are only those in which something is read: " + used + ".");
    }

    /** Why the tester may not be used on the day, where a day is given. */
    private static Optional<String> pastDue(Request request) {
        Optional<LocalDate> until = request.kit().tester().calibratedUntil();
        if (request.on().isEmpty() || until.isEmpty() || !request.on().get().isAfter(until.get())) {
            return Optional.empty();
        }
        return Optional.of("tester '" + request.kit().tester().name() + "' was due for calibration on " + until.get()
                + ", which is before " + request.on().get() + ": nothing may be judged with it");
    }

    private static Connectors connectors(Request request) {
        List<ConnectorDefinition> definitions = new ArrayList<>(request.device().connectors());
        definitions.addAll(request.kit().connectors());
        return Connectors.builtIn().with(definitions);
    }
}
