package leadwright.render.diagram;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import leadwright.planner.Plan;
import leadwright.planner.plan.Hookup;
import leadwright.render.diagram.Measured.Box;
import leadwright.render.diagram.Measured.Segment;
import leadwright.render.diagram.Measured.Text;
import leadwright.render.diagram.Measured.Wire;
import org.w3c.dom.Element;

/** The bars that a drawing is held to, each an assertion on what a ruler finds in it. */
final class Bars {
    /** Orders of lines looked at before the fewest crossings of a hookup are given up. */
    static final int ORDERS = 60_000;

    private Bars() {}

    static void texts(Measured drawing) {
        Box page = new Box(0.5, 0.5, Page.WIDTH - 0.5, Page.HEIGHT - 0.5, "page");
        for (int i = 0; i < drawing.texts.size(); i++) {
            Text text = drawing.texts.get(i);
            assertThat(text.pt()).as(text.content()).isGreaterThanOrEqualTo(8);
            assertThat(text.ink().within(page)).as("on the sheet: %s", text).isTrue();
            assertThat(contrast(text.colour())).as(text.content()).isGreaterThanOrEqualTo(7);
            for (int j = 0; j < i; j++) {
                Text other = drawing.texts.get(j);
                assertThat(text.ink().touches(other.ink(), 0.05))
                        .as("'%s' and '%s' overlap", text.content(), other.content())
                        .isFalse();
            }
            for (Box box : drawing.boxes) {
                assertThat(text.ink().touches(box, 0.02) && !text.ink().within(box))
                        .as("'%s' over the border of %s", text, box)
                        .isFalse();
            }
        }
    }

    static void boxesLieApart(Measured drawing) {
        List<Box> boxes = drawing.boxes.stream()
                .filter(box -> !box.kind().contains("frame") && !box.kind().equals("cell"))
                .toList();
        for (int i = 0; i < boxes.size(); i++) {
            for (int j = 0; j < i; j++) {
                assertThat(boxes.get(i).touches(boxes.get(j), 0.02))
                        .as("%s over %s", boxes.get(i), boxes.get(j))
                        .isFalse();
            }
        }
    }

    static void wiresRunThroughNothing(Measured drawing) {
        for (Wire wire : drawing.wires) {
            for (Segment segment : wire.segments()) {
                for (Box box : drawing.boxes) {
                    boolean panel = box.kind().contains("frame") || box.kind().equals("cell");
                    assertThat(!panel && Measured.through(segment, box))
                            .as("%s through %s", wire.title(), box)
                            .isFalse();
                }
                for (Text text : drawing.texts) {
                    boolean plated =
                            drawing.plates.stream().anyMatch(plate -> text.ink().touches(plate, 0.5));
                    assertThat(!plated && Measured.through(segment, text.ink()))
                            .as("%s through '%s'", wire.title(), text.content())
                            .isFalse();
                }
            }
        }
    }

    /** @param closest least distance of wires side by side for five millimetres */
    static void wires(Measured drawing, double closest) {
        assertThat(drawing.closest(0.3)).isGreaterThan(0.9);
        assertThat(drawing.closest(5)).isGreaterThanOrEqualTo(closest);
        for (Wire wire : drawing.wires) {
            for (Measured.Point end : List.of(wire.start(), wire.end())) {
                assertThat(drawing.boxes.stream().anyMatch(box -> box.onEdge(end)))
                        .as("an end of %s at %s", wire.title(), end)
                        .isTrue();
            }
            assertThat(wire.segments().size()).as("bends of %s", wire.title()).isLessThanOrEqualTo(3);
            assertThat(wire.title()).isNotBlank();
            assertThat(contrast(wire.colour())).as(wire.title()).isGreaterThanOrEqualTo(4.5);
        }
    }

    /** The ink of two wires keeps a quarter of a millimetre apart unless they cross; no wire runs along the edge of a box. */
    static void wiresKeepClear(Measured drawing) {
        for (Wire wire : drawing.wires) {
            for (Segment segment : wire.segments()) {
                for (Wire other : drawing.wires) {
                    for (Segment one : other == wire ? List.<Segment>of() : other.segments()) {
                        double ink = (wire.width() + other.width()) / 2;
                        assertThat(Measured.cross(segment, one) || Measured.apart(segment, one) - ink >= 0.25)
                                .as("%s touches %s", wire.title(), other.title())
                                .isTrue();
                    }
                }
                for (Box box : drawing.boxes) {
                    assertThat(!box.kind().contains("frame") && Measured.hugs(segment, box))
                            .as("%s along %s", wire.title(), box)
                            .isFalse();
                }
            }
        }
    }

    /** Crossings at right angles lie off the ends and corners of the wires that cross. */
    static void crossingsAreClear(Measured drawing) {
        for (Measured.Point crossing : drawing.crossings()) {
            for (Wire wire : drawing.wires) {
                for (Segment segment : wire.segments()) {
                    for (Measured.Point corner : List.of(segment.a(), segment.b())) {
                        assertThat(Math.hypot(corner.x() - crossing.x(), corner.y() - crossing.y()))
                                .as("a crossing at a corner of %s", wire.title())
                                .isGreaterThan(0.3);
                    }
                }
            }
        }
    }

    /** Length of the wires over the straight distance of their ends. */
    static double detour(Measured drawing) {
        double length = 0;
        double straight = 0;
        for (Wire wire : drawing.wires) {
            for (Segment segment : wire.segments()) {
                length += segment.high() - segment.low();
            }
            straight += Math.hypot(
                    wire.end().x() - wire.start().x(),
                    wire.end().y() - wire.start().y());
        }
        return straight == 0 ? 1 : length / straight;
    }

    /** Every wire's kind, and whether it is new, is told by dash, width and lightness: none by hue alone. */
    static void blackAndWhiteLosesNothing(Measured drawing) {
        Set<String> looks = new HashSet<>();
        Set<String> kinds = new HashSet<>();
        for (Wire wire : drawing.wires) {
            if (!wire.stays()) {
                kinds.add(wire.kind());
                looks.add(wire.dash() + " " + wire.width());
            } else {
                assertThat(wire.width()).isLessThanOrEqualTo(0.5);
            }
        }
        assertThat(looks).hasSameSizeAs(kinds);
        for (Wire a : drawing.wires) {
            for (Wire b : drawing.wires) {
                boolean alike = a.dash().equals(b.dash()) && a.width() == b.width();
                if (alike && !a.colour().equals(b.colour()) && (meet(a, b) || sideBySide(a, b))) {
                    double one = contrast(a.colour());
                    double other = contrast(b.colour());
                    assertThat(Math.max(one, other) / Math.min(one, other))
                            .as("'%s' and '%s' differ by hue alone", a.title(), b.title())
                            .isGreaterThanOrEqualTo(1.5);
                }
            }
        }
    }

    private static boolean meet(Wire a, Wire b) {
        for (Measured.Point one : List.of(a.start(), a.end())) {
            for (Measured.Point other : List.of(b.start(), b.end())) {
                if (Math.hypot(one.x() - other.x(), one.y() - other.y()) < 12) {
                    return true;
                }
            }
        }
        return false;
    }

    private static boolean sideBySide(Wire a, Wire b) {
        for (Segment one : a.segments()) {
            for (Segment other : b.segments()) {
                double shared = Math.min(one.high(), other.high()) - Math.max(one.low(), other.low());
                if (one.level() == other.level() && shared > 1 && Math.abs(one.at() - other.at()) < 12) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Contrast with white after WCAG 2: (1 + 0.05) / (L + 0.05). */
    static double contrast(String colour) {
        double[] weights = {0.2126, 0.7152, 0.0722};
        double light = 0;
        for (int i = 0; i < 3; i++) {
            double c = Integer.parseInt(colour.substring(1 + 2 * i, 3 + 2 * i), 16) / 255.0;
            light += weights[i] * (c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4));
        }
        return 1.05 / (light + 0.05);
    }

    /**
     * What is drawn crosses no more than pairs of wires one by one would, and on one sheet as little as anything can.
     *
     * @param open hookups of which the search gives up before it knows
     */
    static void crossings(Plan plan, List<Drawing> drawings, List<Measured> measured, Set<String> open) {
        Panel panel = PinOrder.drawn(plan);
        for (Hookup hookup : plan.hookups()) {
            List<Measured> sheets = sheets(hookup, drawings, measured);
            int crossings =
                    sheets.stream().mapToInt(sheet -> sheet.crossings().size()).sum();
            long pairs = PinOrder.pairsOutOfOrder(panel, hookup);
            assertThat((long) crossings).isLessThanOrEqualTo(pairs);
            if (sheets.size() != 1 || ribbons(sheets.get(0))) {
                continue;
            }
            if (pairs == 0) {
                assertThat(sheets.get(0).wires).allMatch(wire -> wire.segments().size() == 1);
            }
            assertThat(fewest(plan, panel, hookup, crossings))
                    .as("orders of %s looked at in full", hookup.id())
                    .isEqualTo(!open.contains(hookup.id()));
        }
    }

    /** Asserts that no drawing crosses less, no wire bending more than twice; whether that is known. */
    private static boolean fewest(Plan plan, Panel panel, Hookup hookup, int crossings) {
        OptionalInt least = FewestCrossings.of(plan, panel, hookup, ORDERS);
        least.ifPresent(any -> assertThat(crossings).as(hookup.id()).isGreaterThanOrEqualTo(any));
        if (least.isPresent() && least.getAsInt() == crossings) {
            return true;
        }
        // Fewer may be possible with wires that bend more often, so that is asked for by itself.
        FewestOnce.Answer fewer = FewestOnce.fewerThan(crossings, plan, panel, hookup, ORDERS);
        assertThat(fewer.found()).as("fewer crossings of %s", hookup.id()).isEmpty();
        return fewer.decided();
    }

    private static List<Measured> sheets(Hookup hookup, List<Drawing> drawings, List<Measured> measured) {
        List<Measured> sheets = new ArrayList<>();
        for (int i = 0; i < drawings.size(); i++) {
            if (drawings.get(i).hookup().equals(hookup.id())) {
                sheets.add(measured.get(i));
            }
        }
        return sheets;
    }

    static boolean ribbons(Measured drawing) {
        return drawing.texts.stream().anyMatch(text -> text.content().matches("\\d+ wires"));
    }

    /** The texts inside the device, which name its terminals, stand where they stand on the plan's other sheets. */
    static void rowsStay(List<Drawing> drawings, List<Measured> measured) {
        Map<String, List<String>> known = new LinkedHashMap<>();
        for (int i = 0; i < drawings.size(); i++) {
            if (drawings.get(i).ofSheets() > 1) {
                continue;
            }
            Box device = measured.get(i).boxes.stream()
                    .filter(box -> box.kind().equals("device frame"))
                    .findFirst()
                    .orElseThrow();
            List<String> labels = measured.get(i).texts.stream()
                    .filter(text -> text.ink().within(device) && text.pt() > 10.5 && text.pt() < 11.5)
                    .map(text -> text.content() + " at " + Svg.number(text.ink().top()))
                    .toList();
            known.putIfAbsent("rows", labels);
            assertThat(labels).isEqualTo(known.get("rows"));
        }
    }

    static void onlyWhatSvg11Knows(Drawing drawing, Measured measured) {
        assertThat(drawing.svg())
                .doesNotContain(
                        "rgba(", "hsl(", "paint-order", "auto-start-reverse", "transparent", "<!DOCTYPE", "<?xml-s");
        for (String element : List.of("svg", "g", "path", "rect", "circle", "text")) {
            for (Element each : measured.all(element)) {
                for (String never : List.of("opacity", "href", "xlink:href", "style", "onload", "filter", "id")) {
                    assertThat(each.hasAttribute(never))
                            .as(element + " with " + never)
                            .isFalse();
                }
            }
        }
        assertThat(measured.all("*").stream().map(Element::getTagName).distinct())
                .isSubsetOf("svg", "title", "desc", "g", "path", "rect", "circle", "text");
    }
}
