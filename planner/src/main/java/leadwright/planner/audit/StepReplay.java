package leadwright.planner.audit;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import leadwright.catalog.device.Battery;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.house.ReplugUnderPower;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Joint;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.MainsState.Polarity;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;

/**
 * Plays the steps one after the other on a model of the bench: mains state, device on or off, joints made, clip place,
 * touched place.
 *
 * <p>Needs a plan whose hookups are known. Gives the breaches of the state machine, of the table of what may be handled
 * when, of the joints, of nulling and of places. Cost: linear in the steps.
 */
final class StepReplay {
    /** Places of the second lead: the other pole of two-lead readings. */
    private static final Set<String> REFERENCES = Set.of("inlet-earth", "cord-plug-earth", "reference-earth");

    private final Plan plan;
    private final Device device;
    private final Breaches breaches;
    private final Map<String, Reading> readings = new HashMap<>();
    private final Set<Joint> made = new LinkedHashSet<>();
    private final Set<Joint> earthJoints = new HashSet<>();
    private final Set<String> therapyConnections;
    private final boolean permanent;

    private MainsState state;
    private boolean on;
    private boolean madeSafe;
    private boolean nulled;
    private boolean nullDueAtEnd;
    private boolean leakageBegun;
    private boolean earthReadingsPending;
    private Optional<String> clipPlace = Optional.empty();
    private Optional<String> referencePlace = Optional.empty();
    private Optional<String> touched = Optional.empty();
    private Demand selected = Demand.NOTHING;
    private boolean tieSince;
    private Optional<String> standing = Optional.empty();

    StepReplay(Plan plan, Breaches breaches) {
        this.plan = plan;
        this.device = plan.device();
        this.breaches = breaches;
        this.therapyConnections = Therapy.connections(device);
        // Fixed plant, and what is planned as such: nobody switches its mains from the tester.
        this.permanent = plan.readings().stream()
                        .map(reading -> reading.obligation().state())
                        .anyMatch(each -> each == MainsState.INSTALLED_ON || each == MainsState.ISOLATED)
                || device.supply().connection() == SupplyConnection.PERMANENT;
        this.state = permanent ? MainsState.INSTALLED_ON : MainsState.OFF;
        for (Reading reading : plan.readings()) {
            readings.put(reading.id(), reading);
        }
        for (Hookup hookup : plan.hookups()) {
            earthJoints.addAll(Joints.ofEarth(hookup));
        }
        earthReadingsPending = plan.readings().stream()
                .anyMatch(reading -> reading.obligation().phase() == Obligation.Phase.EARTH);
    }

    void run() {
        for (Step step : plan.steps()) {
            play(step);
        }
        breaches.check(!on, Invariant.STATE_CHANGE, "end", "the device is left on without a shut-down");
        breaches.check(
                state == MainsState.OFF || permanent,
                Invariant.STATE_CHANGE,
                "end",
                "the plan ends in state " + state.word());
        breaches.check(
                !nullDueAtEnd, Invariant.NULLING, "end", "the leads are not nulled again after the earth readings");
    }

    private void play(Step step) {
        String where = "step " + step.number();
        switch (step.does()) {
            case SWITCH -> change(step, where);
            case START -> {
                breaches.check(!on, Invariant.STATE_CHANGE, where, "starts a device that is on");
                breaches.check(
                        step.state() == state || step.state().powered(),
                        Invariant.STATE_CHANGE,
                        where,
                        "start leads to " + step.state().word() + " from " + state.word());
                if (step.state() != state) {
                    change(step, where);
                }
                breaches.check(
                        state.powered() || device.battery() != Battery.NONE || !device.runsOnMains() || permanent,
                        Invariant.STATE_CHANGE,
                        where,
                        "starts a device without supply");
                on = true;
                madeSafe = false;
            }
            case SHUT_DOWN -> {
                held(step, where);
                breaches.check(on, Invariant.STATE_CHANGE, where, "shuts down a device that is off");
                on = false;
            }
            default -> {
                held(step, where);
                act(step, where);
            }
        }
        if (step.state().fault() == Fault.SUPPLY_OPEN && step.does() == Step.Act.SWITCH) {
            breaches.check(
                    step.caution().map(text -> text.contains("LIVE")).orElse(false),
                    Invariant.CAUTION,
                    where,
                    "opens the supply without the caution that it is still live");
        }
    }

    private void held(Step step, String where) {
        boolean handover = permanent && step.state().polarity() == Polarity.NONE;
        if (handover) {
            state = step.state();
            return;
        }
        breaches.check(
                step.state() == state,
                Invariant.STATE_HELD,
                where,
                "says state " + step.state().word() + " while it is " + state.word());
    }

    private void change(Step step, String where) {
        MainsState next = step.state();
        if (permanent) {
            breaches.check(
                    next == MainsState.INSTALLED_ON || next == MainsState.ISOLATED,
                    Invariant.STATE_CHANGE,
                    where,
                    "the tester does not switch permanent plant");
            state = next;
            return;
        }
        boolean twoFaults = state.fault() != Fault.NONE
                && next.fault() != Fault.NONE
                && state.fault() != next.fault()
                && state.polarity() == next.polarity();
        breaches.check(!twoFaults, Invariant.DOUBLE_FAULT, where, "opens a second conductor before closing the first");
        boolean polarityTurns = state.polarity() != Polarity.NONE
                && next.polarity() != Polarity.NONE
                && state.polarity() != next.polarity();
        breaches.check(
                !polarityTurns || (state.fault() == Fault.NONE && next.fault() == Fault.NONE),
                Invariant.STATE_CHANGE,
                where,
                "turns the polarity with a conductor open");
        boolean loses = next == MainsState.OFF || polarityTurns || next.fault() == Fault.SUPPLY_OPEN;
        if (loses && on) {
            boolean ordered = next.fault() == Fault.SUPPLY_OPEN
                    ? !device.toleratesPowerCut().orElse(false)
                    : device.battery() == Battery.NONE;
            breaches.check(!ordered, Invariant.STATE_CHANGE, where, "cuts the supply without an ordered shut-down");
            if (device.battery() == Battery.NONE) {
                on = false;
            }
        }
        state = next;
        touched = Optional.empty();
    }

    private void act(Step step, String where) {
        switch (step.does()) {
            case JOIN, PART -> joint(step, where);
            case CLIP -> {
                handled(Kind.EARTH_LEAD, where);
                if (step.place().map(REFERENCES::contains).orElse(false)) {
                    referencePlace = step.place();
                } else {
                    clipPlace = step.place();
                }
            }
            case NULL -> {
                nulled = true;
                nullDueAtEnd = false;
            }
            case MAKE_SAFE -> {
                breaches.check(!on, Invariant.MAKE_SAFE, where, "made safe while the device is on");
                madeSafe = true;
            }
            case TIE -> tieSince = true;
            case TOUCH -> touched = step.place();
            case READ -> read(step, where);
            default -> {}
        }
    }

    private void joint(Step step, String where) {
        if (step.joint().isEmpty()) {
            breaches.add(Invariant.JOINT, where, "joins or parts without naming the joint");
            return;
        }
        Joint joint = Joints.plain(step.joint().get());
        boolean earth = earthJoints.contains(joint);
        boolean therapy = therapyConnections.contains(joint.from()) || leadsToTherapy(joint);
        handled(earth ? Kind.EARTH_LEAD : therapy ? Kind.THERAPY : kindOf(joint), where);
        if (step.does() == Step.Act.JOIN) {
            breaches.check(made.add(joint), Invariant.JOINT, where, "joins " + joint + " twice");
            if (therapy && !earth) {
                breaches.check(madeSafe, Invariant.MAKE_SAFE, where, "plugs a therapy output that is not made safe");
            }
            if (earth) {
                nulled = false;
            }
        } else {
            breaches.check(made.remove(joint), Invariant.JOINT, where, "parts " + joint + ", which is not joined");
            if (earth) {
                clipPlace = Optional.empty();
                referencePlace = Optional.empty();
            }
        }
        standing = Optional.empty();
        selected = Demand.NOTHING;
    }

    private enum Kind {
        INSULATED,
        THERAPY,
        BARE,
        EARTH_LEAD
    }

    /** What a hand may do in the present state: the table of the planning rules. */
    private void handled(Kind kind, String where) {
        boolean off = state.polarity() == Polarity.NONE && state != MainsState.INSTALLED_ON;
        boolean fixed = permanent && kind == Kind.EARTH_LEAD;
        if (off || fixed) {
            breaches.check(
                    kind != Kind.THERAPY || !on,
                    Invariant.HANDLING,
                    where,
                    "handles a therapy output while the device is on");
            return;
        }
        boolean allowed = kind == Kind.INSULATED
                && state.fault() == Fault.NONE
                && plan.house().replugUnderPower() == ReplugUnderPower.AFTER_EARTH_AND_TOUCH
                && !earthReadingsPending
                && touchPassed(state.polarity());
        breaches.check(allowed, Invariant.HANDLING, where, "handles " + kind + " in state " + state.word());
    }

    private final Set<String> taken = new HashSet<>();

    private boolean touchPassed(Polarity polarity) {
        return plan.readings().stream()
                .filter(reading -> reading.obligation().isTouch())
                .filter(reading -> reading.obligation().state().polarity() == polarity
                        && reading.obligation().state().fault() == Fault.NONE)
                .allMatch(reading -> taken.contains(reading.id()));
    }

    /** Whether a therapy output hangs on the near end of the joint as the bench stands. */
    private boolean leadsToTherapy(Joint joint) {
        return made.stream()
                .filter(each -> each.to().equals(joint.from()))
                .anyMatch(each -> therapyConnections.contains(each.from()) || leadsToTherapy(each));
    }

    private Kind kindOf(Joint joint) {
        boolean bare = plan.device().connections().stream()
                .filter(connection -> connection.name().equals(joint.from()))
                .anyMatch(connection -> Set.of(
                                "skin-surface", "liquid-column", "probe-shaft", "metal", "painted", "insulating")
                        .contains(connection.terminal()));
        return bare ? Kind.BARE : Kind.INSULATED;
    }

    private void read(Step step, String where) {
        Reading reading = step.reading().map(readings::get).orElse(null);
        if (reading == null) {
            breaches.add(Invariant.READ_ONCE, where, "reads nothing that the plan lists");
            return;
        }
        Obligation what = reading.obligation();
        boolean otherPhase = what.phase() == Obligation.Phase.CHECK || what.phase() == Obligation.Phase.EARTH;
        breaches.check(
                what.state() == state || ofTesterAlone(what),
                Invariant.STATE_HELD,
                where,
                reading.id() + " is due in " + what.state().word());
        breaches.check(
                step.hookup().equals(reading.hookup()) || reading.hookup().isEmpty(),
                Invariant.HOOKUP_COMPLETE,
                where,
                reading.id() + " is due in another hookup");
        if (!otherPhase) {
            complete(reading, where);
            tie(reading, where);
            breaches.check(
                    !deviceMustBeOn(what) || on, Invariant.DEVICE_ON, where, reading.id() + " with the device off");
        }
        if (what.phase() == Obligation.Phase.EARTH) {
            earth(step, what, where);
        }
        if (what.phase() == Obligation.Phase.ORDINARY || what.phase() == Obligation.Phase.MAINS_ON_PART) {
            leakage(where);
        }
        if (what.isTouch() && what.place().isPresent()) {
            String place = what.place().get();
            breaches.check(
                    touched.equals(what.place()) || what.demand().measured().contains("housing." + place),
                    Invariant.TOUCH_PLACE,
                    where,
                    "reads a touch current without touching " + place);
        }
        taken.add(reading.id());
        earthReadingsPending = plan.readings().stream()
                .anyMatch(each -> each.obligation().phase() == Obligation.Phase.EARTH && !taken.contains(each.id()));
    }

    /** The tester's own check on permanent plant: nothing of the plant is in it, whichever way the plant was received. */
    private boolean ofTesterAlone(Obligation what) {
        return permanent && what.quantity() == QuantityKind.TESTER_CHECK;
    }

    private boolean deviceMustBeOn(Obligation what) {
        return what.state().powered() && !what.mode().equals("off")
                || device.protection() == Protection.INTERNALLY_POWERED
                        && what.phase() == Obligation.Phase.ORDINARY
                        && !what.mode().equals("off");
    }

    private void complete(Reading reading, String where) {
        Optional<Hookup> hookup = reading.hookup().flatMap(plan::hookup);
        if (hookup.isEmpty()) {
            breaches.add(Invariant.HOOKUP_COMPLETE, where, reading.id() + " has no hookup");
            return;
        }
        Set<Joint> needed = Joints.ofLeads(hookup.get(), plan.kit());
        Set<Joint> leads = new LinkedHashSet<>(made);
        leads.removeIf(joint -> earthJoints.contains(joint) && !needed.contains(joint));
        breaches.check(
                leads.equals(needed),
                Invariant.HOOKUP_COMPLETE,
                where,
                "the joints made are not those of " + hookup.get().id() + ": " + difference(leads, needed));
        if (!standing.equals(reading.hookup())) {
            standing = reading.hookup();
            selected = Demand.NOTHING;
        }
    }

    private static String difference(Set<Joint> made, Set<Joint> needed) {
        Set<Joint> missing = new LinkedHashSet<>(needed);
        missing.removeAll(made);
        Set<Joint> extra = new LinkedHashSet<>(made);
        extra.removeAll(needed);
        return missing.size() + " missing " + first(missing) + ", " + extra.size() + " too many " + first(extra);
    }

    private static String first(Set<Joint> joints) {
        return joints.stream().findFirst().map(Joint::toString).orElse("");
    }

    private void tie(Reading reading, String where) {
        Demand demand = reading.obligation().demand();
        if (demand.isNothing()) {
            return;
        }
        breaches.check(
                tieSince || selected.key().equals(demand.key()),
                Invariant.TIE_SELECTED,
                where,
                reading.id() + " without selecting what it measures");
        selected = demand;
        tieSince = false;
    }

    private void earth(Step step, Obligation what, String where) {
        breaches.check(nulled, Invariant.NULLING, where, "an earth reading with leads that are not nulled");
        nullDueAtEnd = true;
        Optional<Hookup> hookup = step.hookup().flatMap(plan::hookup);
        hookup.ifPresent(each -> breaches.check(
                made.containsAll(Joints.ofEarth(each)),
                Invariant.EARTH_PATH,
                where,
                "the earth lead is not fitted as the hookup says"));
        what.place()
                .ifPresent(place -> breaches.check(
                        clipPlace.equals(Optional.of(place)),
                        Invariant.CLIP_PLACE,
                        where,
                        "the clip is not on " + place));
        Optional<String> reference = what.earthSubject().flatMap(subject -> switch (subject) {
            case INLET_TO_PART -> Optional.of("inlet-earth");
            case REFERENCE_TO_PART -> Optional.of("reference-earth");
            case CORD -> twoLeads(hookup) ? Optional.of("cord-plug-earth") : Optional.<String>empty();
            case PLUG_TO_PART -> Optional.<String>empty();
        });
        reference.ifPresent(place -> breaches.check(
                referencePlace.equals(reference), Invariant.CLIP_PLACE, where, "the second lead is not on " + place));
    }

    private static boolean twoLeads(Optional<Hookup> hookup) {
        return hookup.stream()
                .flatMap(each -> each.earth().stream())
                .anyMatch(path -> path.pole().equals("reference"));
    }

    private void leakage(String where) {
        if (leakageBegun) {
            return;
        }
        leakageBegun = true;
        boolean open = plan.kit()
                .tester()
                .earthJack()
                .flatMap(jack -> jack.atRest())
                .map(rest -> rest == leadwright.catalog.kit.AtRest.OPEN)
                .orElse(false);
        boolean fitted = made.stream().anyMatch(joint -> joint.to().equals("earth-jack"));
        breaches.check(
                open || !fitted || permanent,
                Invariant.EARTH_LEAD_PARTED,
                where,
                "the first leakage reading with the earth lead still on");
    }

    /** For the audit of whole plans: the steps that were played last, in words. */
    List<Joint> joined() {
        return List.copyOf(made);
    }
}
