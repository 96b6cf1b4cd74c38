package leadwright.planner.order;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import leadwright.planner.order.Move.Act;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.Phase;
import leadwright.planner.plan.Step;
import leadwright.planner.plan.Step.Account;

/**
 * Phase 10: a route as steps, each with its text, its reason and its seconds.
 *
 * <p>Needs a complete route. Gives drafts whose seconds sum to what the search counted.
 */
final class StepWriter {
    private final Problem problem;
    private final Scene scene;
    private final Texts texts;
    private final Safeguards safeguards;
    private final Visits visits;
    private final List<Hookup> hookups;
    private final Map<Obligation, Integer> place = new LinkedHashMap<>();
    private final Hands hands;
    private final List<Draft> steps = new ArrayList<>();
    private MainsState state;
    private boolean on;
    private int hookup = -1;
    private boolean referenceLost;

    /** @param readings all that the route takes, in clause order */
    StepWriter(Problem problem, List<Hookup> hookups, List<Obligation> readings) {
        this.problem = problem;
        this.scene = problem.scene();
        this.texts = new Texts(scene);
        this.safeguards = new Safeguards(texts);
        this.visits = new Visits(scene);
        this.hookups = hookups;
        this.hands = new Hands(scene);
        Pose start = problem.poses().get(problem.poses().start());
        this.state = start.state();
        this.on = start.on();
        readings.forEach(each -> place.put(each, place.size()));
    }

    List<Draft> write(Route route, Labels labels, List<Draft> earthWork) {
        List<Selections.Ends> ends = selections(route);
        String selected = "";
        boolean settled = false;
        int visit = 0;
        for (Route.Leg leg : route.legs()) {
            if (leg.plugged()) {
                plug(leg.site(), labels, earthWork);
                selected = "";
                settled = false;
            }
            if (leg.move().isPresent()) {
                move(leg.move().get());
                settled = false;
            }
            if (!leg.visit().isEmpty()) {
                Selections.Ends end = ends.get(visit++);
                List<Obligation> readings = new ArrayList<>();
                leg.visit().forEach(unit -> readings.addAll(unit.readings()));
                readings.sort(java.util.Comparator.comparingInt(place::get));
                String last = key(end.last());
                String first = key(end.carried());
                if (!first.isEmpty() && !first.equals(selected)) {
                    throw new IllegalStateException("a selection is carried over that was not made");
                }
                steps.addAll(visits.steps(readings, hookups.get(hookup), hookup, selected, last, settled));
                selected = last.isEmpty() ? selected : last;
                settled |= leg.visit().get(0).phase() == Phase.ORDINARY;
            }
        }
        return Visits.withoutNeedlessOff(steps);
    }

    private String key(OptionalInt demand) {
        return demand.isPresent() ? problem.demands().get(demand.getAsInt()) : "";
    }

    private static List<Selections.Ends> selections(Route route) {
        List<Selections.Asked> asked = new ArrayList<>();
        boolean anew = true;
        for (Route.Leg leg : route.legs()) {
            anew |= leg.plugged();
            if (!leg.visit().isEmpty()) {
                BitSet demands = new BitSet();
                leg.visit().forEach(unit -> demands.or(unit.demands()));
                asked.add(new Selections.Asked(demands, anew));
                anew = false;
            }
        }
        return Selections.of(asked);
    }

    private void plug(int site, Labels labels, List<Draft> earthWork) {
        boolean first = hookup < 0;
        hookup = problem.hookupOf(site);
        List<Contact> leads = labels.named(problem.replugs().leads(hookup), hookup);
        steps.addAll(hands.change(
                leads,
                state,
                hookup,
                first
                        ? "The first hookup is set up with everything off."
                        : state == MainsState.OFF || state == MainsState.ISOLATED
                                ? "The next readings need this hookup; it is made with "
                                        + (on
                                                ? "the mains off; the device still runs on its battery."
                                                : "everything off.")
                                : "The next readings need this hookup; the house allows insulated ends to be moved with no"
                                        + " fault once " + texts.earth() + " and touch readings have passed."));
        if (referenceLost) {
            steps.add(EarthWork.reference(scene, hookup, false, state));
        }
        referenceLost = problem.replugs().referenceLost(site, scene);
        if (first) {
            steps.addAll(earthWork);
            hands.stands(problem.replugs().standing(site).stream()
                    .filter(each -> !leads.contains(each))
                    .toList());
        }
    }

    private void move(Move move) {
        Pose to = problem.poses().get(move.to());
        for (Act act : move.acts()) {
            steps.add(act(act, to));
        }
        state = to.state();
        on = to.on();
    }

    private Draft act(Act act, Pose to) {
        MainsState live = to.state().polarity() == MainsState.Polarity.NONE
                ? to.state()
                : MainsState.of(to.state().polarity(), Fault.NONE);
        switch (act.kind()) {
            case OUTLET_ON, TURN -> state = live;
            case OUTLET_OFF, OFF_FROM_SUPPLY_OPEN, SELECT_POLARITY -> state = MainsState.OFF;
            case OPEN_SUPPLY, OPEN_EARTH, ON_WITH_SUPPLY_OPEN, CLOSE_SUPPLY, CLOSE_EARTH, ENERGISED, ISOLATED ->
                state = to.state();
            case START, SHUT_DOWN, MODE -> {}
        }
        return switch (act.kind()) {
            case START ->
                draft(
                        Step.Act.START,
                        "Start the device and wait until it is ready." + disarmed(),
                        act.seconds(),
                        Account.START_UP,
                        "The next readings need it running.");
            case SHUT_DOWN ->
                draft(
                        Step.Act.SHUT_DOWN,
                        "Shut the device down in order.",
                        act.seconds(),
                        Account.SHUT_DOWN,
                        "Its supply goes next, or it must be off for what follows.");
            case MODE ->
                draft(
                        Step.Act.WAIT,
                        "Bring the device into mode "
                                + texts.mode(problem.poses().modes().get(to.mode())) + ".",
                        act.seconds(),
                        Account.SWITCH,
                        "The rule set asks for readings in this mode.");
            case ENERGISED ->
                draft(
                        Step.Act.WAIT,
                        "A licensed person gives the plant its supply back.",
                        act.seconds(),
                        Account.SWITCH,
                        "The next readings are taken on the running installation.");
            case ISOLATED ->
                draft(
                        Step.Act.WAIT,
                        "A licensed person isolates the plant, locks it out and proves it dead.",
                        act.seconds(),
                        Account.SWITCH,
                        "What follows needs the plant without supply.");
            default -> switching(act);
        };
    }

    private String disarmed() {
        return TherapyWords.disarmed(scene.outputsOf(hookups.get(hookup).chains().stream()
                .map(chain -> chain.connection())
                .toList()));
    }

    private Draft switching(Act act) {
        String text = switch (act.kind()) {
            case OUTLET_ON -> "Outlet on";
            case OUTLET_OFF -> "Outlet off";
            case TURN -> "Turn the polarity: outlet off, selector over, outlet on";
            case SELECT_POLARITY -> "Set the polarity selector over while the outlet is off";
            case OPEN_SUPPLY -> "Open one supply conductor";
            case CLOSE_SUPPLY -> "Close the supply conductor";
            case OPEN_EARTH -> "Open the " + texts.earth() + " conductor";
            case CLOSE_EARTH -> "Close the " + texts.earth() + " conductor";
            case ON_WITH_SUPPLY_OPEN -> "Open one supply conductor, then outlet on";
            case OFF_FROM_SUPPLY_OPEN -> "Outlet off, then close the supply conductor";
            default -> throw new IllegalStateException("not a switch: " + act.kind());
        };
        Draft step = draft(
                Step.Act.SWITCH,
                text + (state == MainsState.OFF ? "" : ": " + texts.state(state)) + ".",
                act.seconds(),
                Account.SWITCH,
                "Each state's readings are taken together.");
        return switch (state.fault()) {
            case NONE -> step;
            case SUPPLY_OPEN -> step.warning(safeguards.supplyOpen());
            case EARTH_OPEN -> step.warning(safeguards.earthOpen());
        };
    }

    private Draft draft(Step.Act does, String text, int seconds, Account account, String because) {
        return Draft.of(does, text, state, OptionalInt.of(hookup), seconds, account, because);
    }
}
