package leadwright.planner.audit;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import leadwright.catalog.device.Battery;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.Protection;
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
    /** What a switch step names where it takes a source of the tester off what is wired. */
    private static final Optional<String> SOURCE = Optional.of("source");

    private final Plan plan;
    private final Device device;
    private final Breaches breaches;
    private final Map<String, Reading> readings = new HashMap<>();
    private final BenchModel bench;
    private final Handling handling;
    private final EarthReplay earth;

    private Optional<String> touched = Optional.empty();
    private Demand selected = Demand.NOTHING;
    private boolean tieSince;
    private Optional<Step> tieStep = Optional.empty();
    private Optional<String> standing = Optional.empty();

    StepReplay(Plan plan, Breaches breaches) {
        this.plan = plan;
        this.device = plan.device();
        this.breaches = breaches;
        this.bench = new BenchModel(plan);
        this.handling = new Handling(bench, breaches);
        this.earth = new EarthReplay(bench, breaches);
        plan.readings().forEach(reading -> readings.put(reading.id(), reading));
    }

    void run() {
        for (Step step : plan.steps()) {
            play(step);
        }
        breaches.check(!bench.on, Invariant.STATE_CHANGE, "end", "the device is left on without a shut-down");
        breaches.check(
                bench.state == MainsState.OFF || bench.permanent,
                Invariant.STATE_CHANGE,
                "end",
                "the plan ends in state " + bench.state.word());
        earth.end();
    }

    private void play(Step step) {
        String where = "step " + step.number();
        switch (step.does()) {
            case SWITCH -> {
                if (step.place().equals(SOURCE)) {
                    held(step, where);
                    handling.sourceOff();
                } else {
                    handling.hands(where, "switches");
                    change(step, where);
                }
            }
            case START -> {
                handling.hands(where, "starts the device");
                start(step, where);
            }
            case SHUT_DOWN -> {
                handling.hands(where, "shuts the device down");
                held(step, where);
                breaches.check(bench.on, Invariant.STATE_CHANGE, where, "shuts down a device that is off");
                bench.on = false;
                touched = Optional.empty();
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

    private void start(Step step, String where) {
        breaches.check(!bench.on, Invariant.STATE_CHANGE, where, "starts a device that is on");
        held(step, where);
        breaches.check(
                bench.state.powered() || device.battery() != Battery.NONE || !device.runsOnMains() || bench.permanent,
                Invariant.STATE_CHANGE,
                where,
                "starts a device without supply");
        bench.on = true;
        touched = Optional.empty();
        handling.started(step, where);
    }

    private void held(Step step, String where) {
        boolean handover = bench.permanent && step.state().polarity() == Polarity.NONE;
        if (handover) {
            bench.state = step.state();
            return;
        }
        breaches.check(
                step.state() == bench.state,
                Invariant.STATE_HELD,
                where,
                "says state " + step.state().word() + " while it is " + bench.state.word());
    }

    private void change(Step step, String where) {
        MainsState next = step.state();
        if (bench.permanent) {
            breaches.check(
                    next == MainsState.INSTALLED_ON || next == MainsState.ISOLATED,
                    Invariant.STATE_CHANGE,
                    where,
                    "the tester does not switch permanent plant");
            bench.state = next;
            return;
        }
        boolean twoFaults = bench.state.fault() != Fault.NONE
                && next.fault() != Fault.NONE
                && bench.state.fault() != next.fault()
                && bench.state.polarity() == next.polarity();
        breaches.check(!twoFaults, Invariant.DOUBLE_FAULT, where, "opens a second conductor before closing the first");
        boolean polarityTurns = bench.state.polarity() != Polarity.NONE
                && next.polarity() != Polarity.NONE
                && bench.state.polarity() != next.polarity();
        breaches.check(
                !polarityTurns || (bench.state.fault() == Fault.NONE && next.fault() == Fault.NONE),
                Invariant.STATE_CHANGE,
                where,
                "turns the polarity with a conductor open");
        boolean loses = next == MainsState.OFF || polarityTurns || next.fault() == Fault.SUPPLY_OPEN;
        if (loses && bench.on) {
            boolean ordered = next.fault() == Fault.SUPPLY_OPEN
                    ? !device.toleratesPowerCut().orElse(false)
                    : device.battery() == Battery.NONE;
            breaches.check(!ordered, Invariant.STATE_CHANGE, where, "cuts the supply without an ordered shut-down");
            if (device.battery() == Battery.NONE) {
                bench.on = false;
            }
        }
        bench.state = next;
        touched = Optional.empty();
    }

    private void act(Step step, String where) {
        switch (step.does()) {
            case JOIN, PART -> joint(step, where);
            case CLIP -> {
                handling.clip(where);
                earth.clip(step);
            }
            case NULL -> {
                handling.hands(where, "nulls the leads");
                earth.nulled();
            }
            case MAKE_SAFE -> {
                handling.hands(where, "makes a therapy output safe");
                handling.madeSafe(step, where);
            }
            case WAIT -> {
                // A wait is for a hand: at the device's controls, or of a licensed person.
                handling.hands(where, "waits, or changes the mode,");
                touched = Optional.empty();
                handling.waited(step);
            }
            case RESTORE -> handling.hands(where, "puts back");
            case TIE -> {
                tieSince = true;
                tieStep = Optional.of(step);
            }
            case TOUCH -> {
                handling.hands(where, "touches");
                touched = step.place();
            }
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
        boolean ofEarth = bench.earthJoints.contains(joint);
        touched = Optional.empty();
        handling.joint(step.does(), joint, where);
        if (step.does() == Step.Act.JOIN) {
            breaches.check(bench.free(joint), Invariant.JOINT, where, "joins " + joint + ", which is joined elsewhere");
            breaches.check(bench.made.add(joint), Invariant.JOINT, where, "joins " + joint + " twice");
            breaches.check(
                    step.hookup()
                            .flatMap(plan::hookup)
                            .filter(each -> bench.belongs(joint, each))
                            .isPresent(),
                    Invariant.JOINT,
                    where,
                    "joins " + joint + ", which is not of the hookup that the step names");
            if (ofEarth) {
                earth.joined();
            }
        } else {
            breaches.check(
                    bench.made.remove(joint), Invariant.JOINT, where, "parts " + joint + ", which is not joined");
            if (ofEarth) {
                earth.parted(joint);
            }
        }
        standing = Optional.empty();
        selected = Demand.NOTHING;
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
                what.state() == bench.state || ofTesterAlone(what),
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
                    !deviceMustBeOn(what) || bench.on,
                    Invariant.DEVICE_ON,
                    where,
                    reading.id() + " with the device off");
        }
        handling.read(what, where);
        earth.read(step, what, where);
        if (what.isTouch() && what.place().isPresent()) {
            String place = what.place().get();
            breaches.check(
                    touched.equals(what.place()) || what.demand().measured().contains("housing." + place),
                    Invariant.TOUCH_PLACE,
                    where,
                    "reads a touch current without touching " + place);
        }
        bench.taken.add(reading.id());
    }

    /** The tester's own check on permanent plant: nothing of the plant is in it, whichever way the plant was received. */
    private boolean ofTesterAlone(Obligation what) {
        return bench.permanent && what.quantity() == QuantityKind.TESTER_CHECK;
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
        Set<Joint> leads = new LinkedHashSet<>(bench.made);
        leads.removeIf(joint -> bench.earthJoints.contains(joint) && !needed.contains(joint));
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
        if (tieSince) {
            reading.hookup()
                    .flatMap(plan::hookup)
                    .flatMap(hookup -> new Selection(hookup, demand)
                            .fault(tieStep.map(Step::text).orElse("")))
                    .ifPresent(what -> breaches.add(Invariant.SELECTION_SAID, where, what));
        }
        selected = demand;
        tieSince = false;
    }
}
