package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.planner.Plan;
import leadwright.planner.plan.Obligation.EarthSubject;
import leadwright.planner.plan.Step;

/**
 * Draws at the device's edge what changes from hookup to hookup: terminals, stubs of what stays open or comes off, and the
 * numbers of the steps at places to which a clip or the probe goes without a wire of its own being drawn.
 */
final class EndsPainter {
    private static final double STUB = 7;
    private static final double OPEN = 1.6;
    private static final double GHOST = 12;

    private final Svg svg;
    private final Plan plan;
    private final Labels labels;
    private final Changes changes;
    private final Net net;
    private final Columns columns;

    EndsPainter(Svg svg, Plan plan, Labels labels, Changes changes, Net net, Columns columns) {
        this.svg = svg;
        this.labels = labels;
        this.plan = plan;
        this.changes = changes;
        this.net = net;
        this.columns = columns;
    }

    void draw(Sheet sheet) {
        svg.open("g", "class", "ends");
        for (int i = 0; i < sheet.rows().size(); i++) {
            Unit unit = sheet.rows().get(i).unit();
            double y = sheet.heights().rows().get(i);
            Optional<Net.Line> line = net.from(unit.id());
            boolean mayOpen = switch (unit.pin().kind()) {
                case PATIENT, HOUSING, PORT -> true;
                case PROBE, TOUCH, EARTH, INLET -> false;
            };
            if (line.isEmpty() && mayOpen) {
                open(unit, y);
            }
            if (line.isPresent() || mayOpen) {
                svg.leaf(
                        "circle",
                        "class",
                        "pin",
                        "cx",
                        labels.end(),
                        "cy",
                        y,
                        "r",
                        0.9,
                        "fill",
                        Ink.WHITE,
                        "stroke",
                        Ink.BLACK,
                        "stroke-width",
                        Ink.BOX);
            }
            places(unit.pin(), line, y, line.isPresent() || mayOpen);
        }
        svg.close();
    }

    /** Room beside the device for a terminal that stays open. */
    static double openRoom() {
        return STUB + OPEN + Texts.width("open", Type.NOTE) + 1;
    }

    private void open(Unit unit, double y) {
        List<Integer> off = new ArrayList<>();
        boolean taken = false;
        for (Panel.Pin pin : unit.pins()) {
            Optional<Integer> step = changes.takenOff(net.hookup(), pin.id());
            taken |= step.isPresent();
            step.filter(number -> number > 0).ifPresent(off::add);
        }
        double end = labels.end() + (taken ? GHOST : STUB);
        List<Object> attributes = new ArrayList<>(List.of(
                "class",
                taken ? "stub off" : "stub",
                "d",
                "M" + Svg.number(labels.end() + 0.9) + " " + Svg.number(y) + "H" + Svg.number(end),
                "fill",
                "none",
                "stroke",
                taken ? Ink.GREY : Ink.BLACK,
                "stroke-width",
                Ink.BOX));
        if (taken) {
            attributes.addAll(List.of("stroke-dasharray", "0.8 0.8"));
        }
        String count = unit.ribbon() ? unit.pins().size() + " " : "";
        svg.titled(
                unit.pin().label() + (taken ? " comes off and stays open" : " stays open"),
                "path",
                attributes.toArray());
        if (!taken) {
            svg.leaf(
                    "path",
                    "class",
                    "stub",
                    "d",
                    "M" + Svg.number(end) + " " + Svg.number(y - 1.4) + "V" + Svg.number(y + 1.4),
                    "stroke",
                    Ink.BLACK,
                    "stroke-width",
                    0.7);
            svg.text(end + OPEN, y, Svg.Anchor.START, count + "open", Type.NOTE);
            return;
        }
        svg.leaf(
                "circle",
                "class",
                "off",
                "cx",
                end + 0.9,
                "cy",
                y,
                "r",
                0.9,
                "fill",
                "none",
                "stroke",
                Ink.GREY,
                "stroke-width",
                Ink.BOX);
        double x = end + 3.2;
        String numbers = Changes.ranges(off.stream().sorted().toList());
        if (!numbers.isEmpty()) {
            svg.text(x, y, Svg.Anchor.START, numbers, Type.NUMBER);
            x += Texts.width(numbers, Type.NUMBER) + 1.4;
        }
        // A fan-out may stand close by; the ring at the stub's end says open as well.
        double room = columns.clearOfPanel() - 1 - x;
        String whole = count + "off, open";
        svg.text(x, y, Svg.Anchor.START, Texts.width(whole, Type.NOTE) <= room ? whole : count + "off", Type.NOTE);
    }

    /**
     * Steps that put the clip or the probe on a place: in the column of the numbers where the row has no wire, else inside the
     * device.
     */
    private void places(Panel.Pin pin, Optional<Net.Line> line, double y, boolean taken) {
        if (pin.place().isEmpty()) {
            return;
        }
        List<Integer> clips = new ArrayList<>(changes.at(net.hookup(), Step.Act.CLIP, pin.place()));
        boolean earthLead = line.filter(each -> each.look() == Ink.Look.EARTH).isPresent();
        if (earthLead && !clips.isEmpty()) {
            clips.remove(0);
        }
        List<String> words = new ArrayList<>();
        if (!clips.isEmpty()) {
            words.add("clip " + Changes.ranges(clips));
        }
        List<Integer> touches = changes.at(net.hookup(), Step.Act.TOUCH, pin.place());
        if (!touches.isEmpty()) {
            words.add("touch " + few(touches));
        }
        if (earthLead) {
            changes.earthOff(net.hookup()).ifPresent(step -> words.add("earth lead off at " + step));
        }
        if (pin.kind() == Panel.Kind.INLET && cordOut()) {
            List<Integer> out = changes.unplugged(net.hookup());
            words.add(out.isEmpty() ? Panel.say(plan, "cord out for earth") : "cord out at " + Changes.ranges(out));
        }
        if (words.isEmpty()) {
            return;
        }
        if (taken) {
            inside(pin, String.join(", ", words), y);
            return;
        }
        double x = labels.end() + columns.setting().stub();
        double plate = columns.panelPlate();
        List<Integer> steps = clips.isEmpty() ? touches : clips;
        boolean many = steps.size() > 2;
        String number = many ? String.valueOf(steps.get(0)) : Changes.ranges(steps);
        double width = Texts.width(number, Type.NUMBER);
        boolean narrow = width <= plate + 0.01;
        svg.text(narrow ? x + plate / 2 : x, y, narrow ? Svg.Anchor.MIDDLE : Svg.Anchor.START, number, Type.NUMBER);
        boolean second = pin.place().equals("cord-plug-earth") || pin.place().equals("inlet-earth");
        String rest =
                (clips.isEmpty() ? "touch" : second ? "second lead here" : "clip here") + (many ? ", and later" : "");
        if (!clips.isEmpty() && !touches.isEmpty()) {
            rest += ", touch " + few(touches);
        }
        svg.text(x + Math.max(plate, width) + 1.5, y, Svg.Anchor.START, rest, Type.NOTE);
    }

    /** Whether some earth reading of the hookup is taken with the detachable cord out of the device. */
    private boolean cordOut() {
        return plan.readings().stream()
                .filter(reading -> reading.hookup().equals(Optional.of(net.hookup())))
                .flatMap(reading -> reading.obligation().earthSubject().stream())
                .anyMatch(subject -> subject == EarthSubject.INLET_TO_PART || subject == EarthSubject.CORD);
    }

    /** Left of the pin's label; what has no room there is not cut, for half a number would mislead. */
    private void inside(Panel.Pin pin, String words, double y) {
        double label = Math.min(labels.belowLabel(), Texts.width(Texts.clean(pin.label()), Type.FOLLOWED));
        double room = labels.end() - 2.2 - Page.LEFT - 4 - label;
        svg.open("g");
        svg.line("title", pin.label() + ": " + words);
        String shown = Texts.width(words, Type.NOTE) <= room ? words : "see steps";
        svg.text(Page.LEFT + 2, y, Svg.Anchor.START, shown, Type.NOTE);
        svg.close();
    }

    private static String few(List<Integer> steps) {
        return steps.size() > 2 ? "from " + steps.get(0) : Changes.ranges(steps);
    }
}
