package leadwright.render.edition;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import leadwright.planner.Plan;
import leadwright.planner.mistake.Cause;
import leadwright.planner.mistake.Effect;
import leadwright.planner.mistake.Fault;
import leadwright.planner.mistake.Slip;
import leadwright.planner.mistake.SlipKind;
import leadwright.planner.plan.Reading;
import leadwright.render.sheet.Vocabulary;

/** Slips and faults as sentences, with the names that the plan's other papers have. */
final class CauseWords {

    static final String NOTHING = "Nothing is wrong: the device and the bench are as they were.";

    private final Plan plan;
    private final Vocabulary words;

    CauseWords(Plan plan, Vocabulary words) {
        this.plan = plan;
        this.words = words;
    }

    /** A whole sentence, or that nothing is wrong. */
    String sentence(Optional<Cause> cause) {
        return cause.map(this::sentence).orElse(NOTHING);
    }

    String sentence(Cause cause) {
        String said = cause instanceof Slip slip ? slip(slip) : fault((Fault) cause);
        // A reading's number says in which hookup it is.
        boolean numbered =
                cause.things().stream().anyMatch(thing -> reading(thing).isPresent());
        String where = plan.hookups().size() > 1 && !numbered
                ? cause.hookup().map(id -> " (hookup " + id + ")").orElse("")
                : "";
        return said + where + ".";
    }

    /** What kind of cause it is, in a few words. */
    String kind(Cause cause) {
        return words.say(
                cause instanceof Slip slip
                        ? slip.kind().words()
                        : ((Fault) cause).kind().words());
    }

    /** What it concerns, in as few words as can be; empty where it concerns everything. */
    String things(Cause cause) {
        String things = cause.things().stream()
                .map(thing -> thing(cause, thing))
                .filter(thing -> !thing.isEmpty())
                .collect(Collectors.joining(" / "));
        return plan.hookups().size() > 1
                ? cause.hookup().map(id -> (id + " " + things).strip()).orElse(things)
                : things;
    }

    private String thing(Cause cause, String thing) {
        if (cause instanceof Slip slip && slip.effect() instanceof Effect.EarthPath) {
            return reading(thing).isPresent() ? place(thing) : "";
        }
        if (cause instanceof Fault && reading(thing).isPresent()) {
            return place(thing);
        }
        boolean connection = plan.device().connections().stream()
                .anyMatch(each -> each.name().equals(thing));
        if (connection) {
            return isPlace(thing) ? words.wire(thing) : words.group(thing) + " " + words.wire(thing);
        }
        if (plan.device().part(thing).isPresent()) {
            return part(thing);
        }
        return thing.startsWith("jack ") || thing.contains("/") ? thing.replace('/', ' ') : words.place(thing);
    }

    private String slip(Slip slip) {
        List<String> things = slip.things();
        return switch (slip.kind()) {
            case WIRE_OFF -> wire(things.get(0)) + " is not pushed home";
            case NEIGHBOUR_BRANCH -> "A wire sits in the next place of the same fan-out, " + item(things.get(0));
            case WRONG_BUNDLE -> wire(things.get(0)) + " is plugged into the bundle on " + things.get(1);
            case TRUNK_OFF -> "The trunk of " + item(things.get(0)) + " is left out of its jack";
            case BUNDLES_SWAPPED ->
                "The bundles on " + things.get(0) + " and " + things.get(1) + " are exchanged at the tester";
            case POOR_CONTACT ->
                "The contact aid on " + small(wire(things.get(0))) + " is dry, loose or has an air bubble under it";
            case FOIL_ON_METAL ->
                words.say("The contact aid on ") + small(wire(things.get(0))) + words.say(" reaches earthed metal");
            case IDLE_JACKS_EARTHED ->
                words.say("The tester holds jacks that a reading does not use at earth, though they should be open");
            case CLIP_ON_PAINT ->
                words.say("The earth clip sits on paint, or on metal that floats, instead of on ")
                        + place(things.get(0));
            case CLIP_ELSEWHERE ->
                words.say("The earth clip sits on the stud or on another earthed part, instead of on ")
                        + place(things.get(0));
            case TOOL_IN_JAWS ->
                words.say("A tool is held in the jaws of the earth clip to reach ") + place(things.get(0));
            case NULL_TIPS_APART -> "The leads were nulled with the tips apart";
            case LEADS_WARM -> "The leads are warm from the test current, and were nulled cold";
            case NULL_WITH_CORD -> "The leads were nulled with the device's own cord in the path";
            case SECOND_WAY_TO_EARTH ->
                words.say("Something else joins the housing to earth during the "
                        + (slip.hookup().isPresent() ? "earth" : "leakage")
                        + " readings: a cable, a rail, a hose, a metal bench"
                        + (slip.hookup().isPresent() ? "" : " or the earth lead"));
            case SWITCH_OFF -> "The device's main switch is off";
            case WRONG_VOLTAGE ->
                "The bench is fed with " + supply(slip) + ", which is not the supply that the plan counts on";
            default -> state(slip.kind());
        };
    }

    private static String supply(Slip slip) {
        boolean lower = slip.effect() instanceof Effect.Scaled scaled && scaled.factor() < 1;
        return lower ? "120 V at 60 Hz" : "230 V at 50 Hz";
    }

    private String state(SlipKind kind) {
        return words.say(
                switch (kind) {
                    case POLARITY_NOT_TURNED ->
                        "Polarity was not turned: what is written under REVERSED was read with it normal";
                    case SUPPLY_NOT_OPENED ->
                        "The supply conductor was not opened: what is written under SUPPLY OPEN was read with it closed";
                    case SUPPLY_LEFT_OPEN ->
                        "The supply conductor was left open: readings without a fault were taken with it open";
                    case EARTH_NOT_OPENED ->
                        "The earth was not opened: what is written under EARTH OPEN was read with it closed";
                    case EARTH_LEFT_OPEN ->
                        "The earth was left open: readings that want it closed were taken with it open";
                    case SUPPLY_NOT_EARTHED ->
                        "The bench is fed by an isolated supply or an inverter: neither conductor is tied to earth";
                    case WALL_EXCHANGED -> "Line and neutral are exchanged in the wall outlet that feeds the tester";
                    case SECOND_DEVICE -> "A second device is plugged into the same outlet of the tester";
                    case STANDBY -> "The device is in standby, not on";
                    case ON_BATTERY -> "The device runs from its battery: no conductor of the supply reaches it";
                    case SUPPLY_TRIPPED -> "The supply has tripped, and no reading was written as zero";
                    case AC_FOR_DC -> "Direct current was read with the tester on alternating current";
                    case FUSE_BLOWN -> "The tester's input fuse is blown, or a relay in it is stuck";
                    default -> throw new IllegalArgumentException("no sentence for " + kind);
                });
    }

    private String fault(Fault fault) {
        List<String> things = fault.things();
        return switch (fault.kind()) {
            case CORD_WORN ->
                words.say("The earth conductor of the supply cord is worn, or one of its contacts is corroded");
            case JOINT_WORN ->
                words.say("An earth joint inside the device, on the way to ") + place(things.get(0)) + ", is corroded";
            case LINE_TO_HOUSING -> "The insulation between line and the housing is damp or damaged";
            case NEUTRAL_TO_HOUSING -> "The insulation between neutral and the housing is damp or damaged";
            case LINE_TO_METAL -> "The insulation between line and " + words.place(things.get(0)) + " is damaged";
            case LINE_TO_PART -> "The insulation between line and " + part(things.get(0)) + " is damaged";
            case PART_TO_HOUSING -> "The isolation of " + part(things.get(0)) + " from the housing is broken";
            case PART_TO_PART ->
                "The isolation between " + part(things.get(0)) + " and " + part(things.get(1)) + " is broken";
        };
    }

    /** {@code The wire C6 of ECG}. */
    private String wire(String connection) {
        return isPlace(connection)
                ? "The lead to " + words.wire(connection)
                : "The wire " + words.wire(connection) + " of " + words.group(connection);
    }

    private boolean isPlace(String connection) {
        return plan.device().patientConnections().stream()
                .noneMatch(each -> each.name().equals(connection));
    }

    private static String small(String sentence) {
        return sentence.replaceFirst("^The ", "the ");
    }

    private static String item(String instance) {
        return instance.replace('/', ' ');
    }

    private String part(String id) {
        return plan.device().part(id).map(each -> each.name()).orElse(id);
    }

    /** What an earth reading is of. */
    private String place(String id) {
        return reading(id)
                .map(each -> each.obligation().place().map(words::place).orElseGet(() -> words.what(each.obligation())))
                .map(name -> name + " (reading " + id + ")")
                .orElse(id);
    }

    private Optional<Reading> reading(String id) {
        return plan.readings().stream().filter(each -> each.id().equals(id)).findFirst();
    }
}
