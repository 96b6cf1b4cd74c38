package leadwright.planner.order;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import leadwright.catalog.device.EarthPoint;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.quantity.Quantity;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.EarthSubject;
import leadwright.planner.plan.Step;
import leadwright.planner.plan.Step.Account;
import leadwright.planner.plan.Step.Act;

/**
 * The earth readings of the first hookup, as steps: leads joined and unwound, nulled, the clip moved from place to place.
 *
 * <p>Readings between the same ends of the same leads follow one another, so that leads are nulled as seldom as the rules
 * allow: at the start, after a change of the path, and at the end.
 */
final class EarthWork {
    private static final long LONG_LEAD = Quantity.millimetres(5000).amount();
    /** Walking speed, 1.2 m in a second, in micrometres. */
    private static final long STRIDE = Quantity.millimetres(1200).amount();

    private static final Set<String> CORD_PLACES = Set.of("inlet-earth", "cord-earth", "cord-plug-earth");

    private final Scene scene;
    private final Texts texts;
    private final int hookup;
    private final Hookup stands;
    private final MainsState state;
    private final List<Draft> steps = new ArrayList<>();

    private EarthWork(Scene scene, int hookup, Hookup stands, MainsState state) {
        this.scene = scene;
        this.texts = new Texts(scene);
        this.hookup = hookup;
        this.stands = stands;
        this.state = state;
    }

    /**
     * @param readings all earth readings, in clause order
     * @param proofs readings that show the lead off, where it is parted before leakage
     * @param leakage readings that follow
     * @param state in which the bench is found
     */
    static List<Draft> steps(
            Scene scene,
            int hookup,
            Hookup stands,
            List<Obligation> readings,
            List<Obligation> proofs,
            List<Obligation> leakage,
            MainsState state) {
        EarthWork work = new EarthWork(scene, hookup, stands, state);
        if (!readings.isEmpty()) {
            work.join();
            boolean probeTakesIt =
                    scene.touchThroughEarthLead() && leakage.stream().anyMatch(EarthWork::probed);
            work.read(
                    readings,
                    leakage.isEmpty() || probeTakesIt || !scene.earthLeadMayStay()
                            ? ""
                            : " The " + work.texts.earth() + " lead stays on while leakage is read: the "
                                    + work.texts.earth() + " jack rests open, it is no way to " + work.texts.earth()
                                    + ".");
            if (!leakage.isEmpty() && !scene.earthLeadMayStay()) {
                work.part();
                proofs.forEach(work::prove);
            }
        }
        if (scene.referenceBySecondLead() && !leakage.isEmpty()) {
            boolean fitted = !readings.isEmpty()
                    && stands.earth().stream().anyMatch(path -> path.pole().equals("reference"));
            work.steps.add(reference(scene, hookup, fitted, state));
        }
        if (scene.touchThroughEarthLead() && leakage.stream().anyMatch(EarthWork::probed)) {
            work.probeOnLead(!readings.isEmpty());
        }
        if (scene.fedByTester() && (readings.isEmpty() || work.cordIsOut)) {
            work.plugIn();
        }
        return work.steps;
    }

    private boolean cordIsOut = true;
    /** Lead ends that earth readings put on the cord, its plug or the inlet since it was last fitted. */
    private int endsOnCord;

    private Draft draft(Act does, String text, int seconds, Account account, String because) {
        return Draft.of(does, text, state, OptionalInt.of(hookup), seconds, account, because);
    }

    private void join() {
        for (Contact each : Arrangement.ofEarth(stands, scene)) {
            boolean far = scene.item(each.from())
                    .flatMap(item -> item.length())
                    .filter(length -> length.amount() > LONG_LEAD)
                    .isPresent();
            String text = "Plug " + each.from() + " into " + texts.end(each.to())
                    + (far ? " and unwind it to its full length." : ".");
            steps.add(draft(
                            Act.JOIN,
                            text,
                            each.join() + (far ? scene.times().action("unwind") : 0),
                            Account.EARTH_LEAD,
                            "The " + texts.earth() + " readings need this lead.")
                    .joining(each.plain()));
        }
    }

    private void part() {
        for (Contact each : Arrangement.ofEarth(stands, scene)) {
            if (!Scene.isItem(each.to())) {
                steps.add(draft(
                                Act.PART,
                                "Pull " + each.from() + " out of " + texts.end(each.to())
                                        + " and take its clip off the device.",
                                each.part(),
                                Account.EARTH_LEAD,
                                "This tester does not leave the jack open at rest: the lead would be a second way to "
                                        + texts.earth() + " while leakage is read.")
                        .joining(each.plain()));
            }
        }
    }

    /** The cheapest proof that the lead is off: the test that just read through it reads nothing now. */
    private void prove(Obligation what) {
        int write = scene.times().write();
        Safeguards safeguards = new Safeguards(texts);
        steps.add(Draft.of(
                        Act.READ,
                        "Proof: start the " + texts.earth()
                                + " test once more with its lead pulled. No reading is due.",
                        state,
                        OptionalInt.of(hookup),
                        scene.times().action("read-earth") + write,
                        Account.READ,
                        "A lead left on would carry the leakage past the tester, which would read next to nothing.")
                .reading(what, write, safeguards.caution(what), safeguards.onFail(what)));
    }

    /** A touch reading for which the probe goes to its place. */
    private static boolean probed(Obligation what) {
        return what.isTouch() && what.demand().isNothing() && what.place().isPresent();
    }

    /** While everything is off: the lead that read earth becomes the probe's lead. */
    private void probeOnLead(boolean fitted) {
        steps.add(draft(
                        Act.CLIP,
                        fitted
                                ? "Take the " + texts.earth()
                                        + " lead's clip off its place and put the touch probe on that lead; only the probe"
                                        + " goes to a place while touch current is read."
                                : "Plug a lead with the touch probe on its end into the " + texts.earth() + " jack.",
                        scene.times().action("clip"),
                        Account.EARTH_LEAD,
                        "This tester reads touch current through the " + texts.earth()
                                + " lead: a clip left on would read its place instead.")
                .at("touch-probe"));
    }

    /**
     * A tester without an outlet has no earth but through its second lead: off the reference earth, it reads next to nothing.
     *
     * @param fitted whether the lead is in its jack
     */
    static Draft reference(Scene scene, int hookup, boolean fitted, MainsState state) {
        String earth = new Texts(scene).earth();
        return Draft.of(
                        Act.CLIP,
                        (fitted
                                        ? "Leave the clip off the device and put the second lead's end back on the reference "
                                        : "Plug a lead into the second jack and put its end on the reference ")
                                + earth + ", on bare metal; it stays there while leakage is read.",
                        state,
                        OptionalInt.of(hookup),
                        scene.times().action("clip"),
                        Account.EARTH_LEAD,
                        "This tester has no outlet and so no " + earth
                                + " of its own: with this lead off, every leakage current reads next to nothing and passes.")
                .at("reference-earth");
    }

    private void plugIn() {
        cordIsOut = false;
        String fit = "it the supply cord to the device and plug it into the tester's outlet; the outlet stays off.";
        Draft step = draft(
                        Act.LOOK,
                        endsOnCord == 0
                                ? "F" + fit
                                : "Take " + (endsOnCord > 1 ? "both lead ends" : "the lead's end")
                                        + " off the cord, its plug and the inlet, then f" + fit,
                        0,
                        Account.PREPARE,
                        "The tester must be able to switch the device's supply.")
                .at(Step.CORD_IN);
        steps.add(
                endsOnCord == 0
                        ? step
                        : step.warning(
                                "No lead end stays on the inlet, on the cord or in its plug: mains comes there next."));
        endsOnCord = 0;
    }

    private void unplug() {
        cordIsOut = true;
        steps.add(draft(
                        Act.LOOK,
                        "The supply cord is out of the device and out of the tester's outlet.",
                        0,
                        Account.PREPARE,
                        "This path is read without the cord, or the cord alone.")
                .at(Step.CORD_OUT));
    }

    /** @param stays what is said at the end of a lead that is left on */
    private void read(List<Obligation> readings, String stays) {
        Map<List<String>, List<Obligation>> groups = new LinkedHashMap<>();
        for (Obligation each : readings) {
            groups.computeIfAbsent(path(each), key -> new ArrayList<>()).add(each);
        }
        String secondOn = "";
        boolean first = true;
        for (List<Obligation> group : groups.values()) {
            EarthSubject subject = group.get(0).earthSubject().orElse(EarthSubject.PLUG_TO_PART);
            if (scene.fedByTester()) {
                if (subject == EarthSubject.PLUG_TO_PART && cordIsOut) {
                    plugIn();
                } else if (subject != EarthSubject.PLUG_TO_PART && (!cordIsOut || first)) {
                    unplug();
                }
            }
            nulling(first ? "at the start" : "after a change of the path", "");
            first = false;
            // The tips were together: neither lead is on its place any more.
            secondOn = "";
            String clippedTo = "";
            for (Obligation each : group) {
                String second = secondPlace(each.earthSubject().orElse(EarthSubject.PLUG_TO_PART));
                if (!second.isEmpty() && !second.equals(secondOn)) {
                    secondOn = second;
                    clip("the second lead's end", second);
                    clippedTo = "";
                }
                if (each.place().isPresent() && !each.place().get().equals(clippedTo)) {
                    clippedTo = each.place().get();
                    clip("the clip", clippedTo);
                }
                reading(each);
            }
        }
        nulling("at the end", stays);
    }

    /** Where the second lead's end goes; empty where one lead serves. A cord alone is read from end to end. */
    private String secondPlace(EarthSubject subject) {
        return reference(subject).isEmpty()
                ? ""
                : switch (subject) {
                    case PLUG_TO_PART -> "";
                    case INLET_TO_PART -> "inlet-earth";
                    case CORD -> "cord-plug-earth";
                    case REFERENCE_TO_PART -> "reference-earth";
                };
    }

    /** What a reading's path consists of: a change of it asks for nulling. */
    private List<String> path(Obligation reading) {
        EarthSubject subject = reading.earthSubject().orElse(EarthSubject.PLUG_TO_PART);
        List<String> items = new ArrayList<>();
        items.add(subject == EarthSubject.PLUG_TO_PART ? "one lead" : "two leads");
        reference(subject).ifPresent(path -> items.addAll(path.items()));
        return items;
    }

    private Optional<EarthPath> reference(EarthSubject subject) {
        String point = switch (subject) {
            case PLUG_TO_PART -> "";
            case INLET_TO_PART -> "inlet-earth";
            case CORD -> "cord";
            case REFERENCE_TO_PART -> "reference-earth";
        };
        if (point.isEmpty()) {
            return Optional.empty();
        }
        List<EarthPath> references = stands.earth().stream()
                .filter(path -> path.pole().equals("reference"))
                .toList();
        return references.stream()
                .filter(path -> path.point().startsWith(point))
                .findFirst()
                .or(() -> references.stream().findFirst());
    }

    private void nulling(String when, String then) {
        steps.add(draft(
                Act.NULL,
                "Null the leads " + when + ": tips together, or the clip on the outlet's " + texts.earth()
                        + " contact, leads unwound, never with the device's own cord in the path. Read again to verify and"
                        + " write the value down." + then,
                scene.times().action("null"),
                Account.NULL,
                "The leads' own resistance must not count to the device."));
    }

    private void clip(String what, String place) {
        if (CORD_PLACES.contains(place)) {
            endsOnCord = stands.earth().size() > 1 ? 2 : 1;
        }
        int walk = Math.toIntExact((2 * routed(place, 0) + STRIDE - 1) / STRIDE);
        steps.add(draft(
                        Act.CLIP,
                        "Put " + what + " on " + texts.place(place) + ", on bare metal.",
                        scene.times().action("clip") + walk,
                        Account.EARTH_LEAD,
                        "Every place is read on its own.")
                .at(place));
    }

    /** Micrometres from the tester's place, over the points that a distance counts from. */
    private long routed(String place, int hops) {
        if (hops
                > scene.device().touchPoints().size()
                        + scene.device().earthPoints().size()) {
            return 0;
        }
        for (TouchPoint each : scene.device().touchPoints()) {
            if (each.id().equals(place)) {
                return routed(each.distance(), each.from(), hops);
            }
        }
        for (EarthPoint each : scene.device().earthPoints()) {
            if (each.id().equals(place)) {
                return routed(each.distance(), each.from(), hops);
            }
        }
        return 0;
    }

    private long routed(Optional<Quantity> own, Optional<String> from, int hops) {
        return own.map(Quantity::amount).orElse(0L)
                + from.map(point -> routed(point, hops + 1)).orElse(0L);
    }

    private void reading(Obligation what) {
        EarthSubject subject = what.earthSubject().orElse(EarthSubject.PLUG_TO_PART);
        boolean flexed = what.earthSubject().isPresent()
                && (subject == EarthSubject.PLUG_TO_PART || subject == EarthSubject.CORD);
        int write = scene.times().write();
        int seconds =
                scene.times().action("read-earth") + (flexed ? scene.times().action("flex-cord") : 0) + write;
        Safeguards safeguards = new Safeguards(texts);
        MainsState during = scene.permanent() ? what.state() : state;
        steps.add(Draft.of(
                        Act.READ,
                        texts.reading(what)
                                + (flexed ? " Flex the cord along its length and keep the largest value." : ""),
                        during,
                        OptionalInt.of(hookup),
                        seconds,
                        Account.READ,
                        Texts.sentence(texts.earth()) + " readings come before anything is powered.")
                .reading(what, write, safeguards.caution(what), safeguards.onFail(what)));
    }
}
