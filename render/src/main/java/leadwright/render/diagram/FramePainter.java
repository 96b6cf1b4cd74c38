package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import leadwright.catalog.device.Output;
import leadwright.planner.Plan;
import leadwright.planner.Planner;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;

/** Draws what surrounds the drawing: heading, foot with changes and cautions, title block. */
final class FramePainter {
    private static final double BLOCK = 100;
    private static final double CELL = 8.2;
    private static final double LINE = 3.7;
    /** Pitch where the foot holds five lines. */
    private static final double CLOSE_LINE = 3.2;

    private FramePainter() {}

    /** @param text heading of the field; {@code value} may be empty, to be filled in by hand */
    private record Field(String caption, String value, double width) {}

    static void draw(Svg svg, Plan plan, Changes changes, Hookup hookup, int sheet, int sheets) {
        svg.leaf(
                "rect",
                "class",
                "frame",
                "x",
                Page.EDGE,
                "y",
                Page.EDGE,
                "width",
                Page.WIDTH - 2 * Page.EDGE,
                "height",
                Page.HEIGHT - 2 * Page.EDGE,
                "fill",
                "none",
                "stroke",
                Ink.BLACK,
                "stroke-width",
                Ink.FRAME);
        heading(svg, plan, changes, hookup, sheet, sheets);
        rule(svg, Page.HEADING);
        rule(svg, Page.FOOT);
        changes(svg, plan, changes, hookup);
        block(svg, plan, hookup, sheet, sheets);
    }

    private static void rule(Svg svg, double y) {
        svg.leaf(
                "path",
                "class",
                "hairline",
                "d",
                "M" + Svg.number(Page.EDGE) + " " + Svg.number(y) + "H" + Svg.number(Page.WIDTH - Page.EDGE),
                "stroke",
                Ink.BLACK,
                "stroke-width",
                Ink.HAIRLINE);
    }

    static String ofHookups(Plan plan, Hookup hookup) {
        return hookup.id() + " of " + plan.hookups().size();
    }

    private static void heading(Svg svg, Plan plan, Changes changes, Hookup hookup, int sheet, int sheets) {
        String right = standing(plan) + ofHookups(plan, hookup);
        double room = Page.RIGHT - Page.LEFT - Texts.width(right, Type.TITLE) - 8;
        boolean two = name(svg, Texts.clean(plan.device().name()), room);
        svg.text(Page.RIGHT, 5.6, Svg.Anchor.END, right, Type.TITLE);
        List<Integer> again =
                changes.again(hookup.id()).stream().map(Changes.Visit::begin).toList();
        List<String> beside = new ArrayList<>();
        if (!again.isEmpty()) {
            beside.add("again at step " + Changes.ranges(again));
        }
        if (sheets > 1) {
            beside.add("sheet " + sheet + " of " + sheets);
        }
        String small = String.join(", ", beside);
        String purpose = purpose(plan, hookup);
        double below = Page.RIGHT - Page.LEFT - (small.isEmpty() ? 0 : Texts.width(small, Type.KIT) + 6);
        Type squeezed = Texts.squeezed(purpose, below, Type.KIT);
        Type type = Texts.width(purpose, squeezed) <= below ? squeezed : Type.NOTE;
        List<String> lines = Texts.wrap(purpose, below, type, two ? 1 : 2);
        svg.open("g");
        svg.line("title", purpose);
        double y = two ? 13 : lines.size() == 1 ? 11.8 : 10.3;
        for (String line : lines) {
            svg.text(Page.LEFT, y, Svg.Anchor.START, line, type);
            y += 3.4;
        }
        svg.close();
        svg.text(Page.RIGHT, two ? 13 : 11.8, Svg.Anchor.END, small, Type.KIT);
    }

    /** The device's name, on two smaller lines where one is too short; whether it took two. */
    private static boolean name(Svg svg, String name, double room) {
        Type one = Texts.squeezed(name, room, Type.TITLE);
        if (Texts.width(name, one) <= room) {
            svg.text(Page.LEFT, 5.6, Svg.Anchor.START, name, one);
            return false;
        }
        Type smaller = new Type(11, true, Ink.BLACK);
        List<String> lines = Texts.wrap(name, room, smaller, 2);
        svg.open("g");
        svg.line("title", name);
        for (int i = 0; i < lines.size(); i++) {
            svg.text(Page.LEFT, 3.7 + 4.6 * i, Svg.Anchor.START, lines.get(i), smaller);
        }
        svg.close();
        return true;
    }

    /** What must be seen on every sheet of a plan that is not whole or not for record; nothing else. */
    private static String standing(Plan plan) {
        return (plan.trainingCopy() ? "TRAINING COPY \u00b7 " : "")
                + (plan.partial() ? "PARTIAL \u00b7 " : "")
                + (plan.earthUnread() ? Panel.say(plan, "earth").toUpperCase(Locale.ROOT) + " NOT READ \u00b7 " : "");
    }

    /** What is read while the hookup stands. */
    static String purpose(Plan plan, Hookup hookup) {
        Set<String> words = new LinkedHashSet<>();
        for (Reading reading : plan.readings()) {
            if (reading.hookup().filter(hookup.id()::equals).isPresent()) {
                words.add(quantity(plan, reading));
            }
        }
        return words.isEmpty() ? "Nothing is read in this hookup" : "For: " + String.join(", ", words);
    }

    /** The quantity of a reading in words. */
    static String quantity(Plan plan, Reading reading) {
        return switch (reading.obligation().quantity()) {
            case PATIENT_AUXILIARY -> "patient auxiliary current";
            case MAINS_ON_APPLIED_PART -> "mains on an applied part";
            case TOTAL_MAINS_ON_APPLIED_PART -> "mains on all applied parts of a type";
            case MAINS_ON_PORT -> "mains on a port";
            default -> Panel.say(plan, reading.obligation().quantity().word().replace('-', ' '));
        };
    }

    private static void changes(Svg svg, Plan plan, Changes changes, Hookup hookup) {
        double room = BLOCK - Page.LEFT - 4;
        String safe = therapy(plan, hookup);
        double low = Page.HEIGHT - 3.2;
        Type bold = new Type(9, true, Ink.BLACK);
        List<String> cautions = Texts.wrap(cautions(plan, hookup), room - 5.5, bold, 2);
        List<String> lines =
                new ArrayList<>(Texts.wrap(changeWords(changes, hookup), room, Type.NOTE, safe.isEmpty() ? 3 : 2));
        if (!safe.isEmpty()) {
            lines.addAll(Texts.wrap(safe, room, Type.NOTE, 3 - lines.size()));
        }
        boolean five = lines.size() + cautions.size() > 4;
        double pitch = five ? CLOSE_LINE : LINE;
        svg.open("g", "class", "changes");
        svg.line("title", (changeWords(changes, hookup) + " " + safe).strip());
        double y = Page.FOOT + (five ? 2 : 3);
        for (String line : lines) {
            svg.text(Page.LEFT, y, Svg.Anchor.START, line, Type.NOTE);
            y += pitch;
        }
        svg.close();
        Marks.draw(svg, Marks.Mark.CAUTION, Page.LEFT, low - (cautions.size() - 1) * pitch / 2, 4);
        for (int i = 0; i < cautions.size(); i++) {
            double above = (cautions.size() - 1 - i) * pitch;
            svg.text(Page.LEFT + 5.5, low - above, Svg.Anchor.START, cautions.get(i), bold);
        }
    }

    /** What hands must know of the readings in this hookup: a warning that is not true here would wear out the true ones. */
    static String cautions(Plan plan, Hookup hookup) {
        List<Obligation> here = plan.readings().stream()
                .filter(reading -> reading.hookup().equals(Optional.of(hookup.id())))
                .map(Reading::obligation)
                .toList();
        boolean mains = here.stream().anyMatch(each -> each.phase() == Obligation.Phase.MAINS_ON_PART);
        boolean open = here.stream().anyMatch(each -> each.state().fault() == MainsState.Fault.SUPPLY_OPEN);
        return (mains ? "Mains on a part: hands off. " : "")
                + (open ? "Supply open is live. " : "")
                + "Device instructions come first.";
    }

    /** What comes off, goes on and stays, by step numbers. */
    static String changeWords(Changes changes, Hookup hookup) {
        String id = hookup.id();
        StringBuilder words = new StringBuilder();
        List<Integer> on = changes.on(id);
        if (changes.first(id)) {
            words.append("First hookup: all is new. ");
        } else {
            words.append("After ").append(changes.before(id).orElse("")).append(": ");
            if (changes.offCount(id) > 0) {
                words.append("take off ")
                        .append(
                                changes.off(id).isEmpty()
                                        ? changes.offCount(id) + " joints"
                                        : "at " + steps(changes.off(id)))
                        .append(". ");
            }
        }
        if (!on.isEmpty()) {
            words.append("Put on at ").append(steps(on)).append(". ");
        }
        if (!changes.first(id)) {
            int staying = changes.staying(id);
            words.append(staying == 1 ? "1 joint stays." : staying == 0 ? "Nothing stays." : staying + " joints stay.");
        }
        return words.toString().strip();
    }

    /** When a hookup is set up once more, and the steps that change what stood before it; empty where it is not. */
    static String again(Changes changes, Hookup hookup) {
        List<String> visits = new ArrayList<>();
        for (Changes.Visit visit : changes.again(hookup.id())) {
            visits.add("Comes again at step " + visit.begin()
                    + (visit.off().isEmpty() ? "" : ", off at " + Changes.ranges(visit.off()))
                    + (visit.on().isEmpty() ? "" : ", on at " + Changes.ranges(visit.on())));
        }
        String last = changes.againWithoutEarth(hookup) ? ", then without the earth lead" : "";
        return visits.isEmpty() ? "" : String.join("; ", visits) + last;
    }

    private static String steps(List<Integer> numbers) {
        return (numbers.size() == 1 ? "step " : "steps ") + Changes.ranges(numbers);
    }

    /** How therapy outputs in the hookup are made safe: by the steps that do it, else in the device file's words. */
    private static String therapy(Plan plan, Hookup hookup) {
        List<Output> here = plan.device().outputs().stream()
                .filter(output -> hookup.chains().stream()
                        .anyMatch(chain -> chain.connection().startsWith(output.appliedPart() + ".")))
                .toList();
        if (here.isEmpty()) {
            return "";
        }
        List<Step> safe = plan.steps().stream()
                .filter(step -> step.does() == Step.Act.MAKE_SAFE)
                .filter(step -> here.stream().anyMatch(output -> step.place().equals(Optional.of(output.id()))))
                .toList();
        List<Integer> own = numbers(safe.stream()
                .filter(step -> step.hookup().equals(Optional.of(hookup.id())))
                .toList());
        List<Integer> steps = own.isEmpty() ? numbers(safe) : own;
        String ways = here.stream()
                .map(output -> output.madeSafeBy().orElse("as the device's instructions say"))
                .collect(Collectors.joining("; "));
        return "Therapy: make it safe before plugging, " + (steps.isEmpty() ? ways : steps(steps)) + ".";
    }

    private static List<Integer> numbers(List<Step> steps) {
        return steps.stream().map(Step::number).toList();
    }

    private static void block(Svg svg, Plan plan, Hookup hookup, int sheet, int sheets) {
        String mark =
                plan.fingerprint().substring(0, Math.min(8, plan.fingerprint().length()));
        List<Field> upper = List.of(
                new Field("Owner", plan.house().department().orElse(""), 30),
                new Field("Title", plan.device().name(), 53),
                new Field("Document type", "connection diagram", 33),
                new Field("Sheet", sheet + "/" + sheets, 10),
                new Field("Date of issue", plan.on().map(Object::toString).orElse(""), 20));
        List<Field> lower = List.of(
                new Field("Identification", mark + "-" + hookup.id(), 28),
                new Field("Rule set", rules(plan), 62),
                new Field("Creator", "Leadwright " + Planner.VERSION, 29),
                new Field("Approved by", "", 27));
        svg.open("g", "class", "title-block");
        fields(svg, upper, Page.FOOT + 0.6);
        fields(svg, lower, Page.FOOT + 0.6 + CELL);
        svg.close();
    }

    /** The standard and its edition, without what the name says beyond the number. */
    private static String rules(Plan plan) {
        String name = plan.rules().name();
        int comma = name.indexOf(',');
        return (comma < 0 ? name : name.substring(0, comma)) + ":"
                + plan.rules().edition();
    }

    private static void fields(Svg svg, List<Field> fields, double y) {
        double x = BLOCK;
        for (Field field : fields) {
            svg.leaf(
                    "rect",
                    "class",
                    "cell",
                    "x",
                    x,
                    "y",
                    y,
                    "width",
                    field.width(),
                    "height",
                    CELL,
                    "fill",
                    "none",
                    "stroke",
                    Ink.BLACK,
                    "stroke-width",
                    Ink.HAIRLINE);
            svg.text(x + 1, y + 2, Svg.Anchor.START, field.caption(), Type.CAPTION);
            svg.fitted(x + 1, y + 5.8, field.width() - 2, Svg.Anchor.START, field.value(), Type.NOTE);
            x += field.width();
        }
    }
}
