package leadwright.render.diagram;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import leadwright.planner.Plan;
import leadwright.render.diagram.Measured.Box;
import leadwright.render.diagram.Measured.Segment;
import leadwright.render.diagram.Measured.Text;
import leadwright.render.diagram.Measured.Wire;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;

/** What every drawing holds, measured on its source: sketched hookups, and random ones whose seed stands in the name. */
class DrawingBarsTest {

    /** A plan with its drawings, drawn and measured once for all tests. */
    private record Drawn(Plan plan, List<Drawing> drawings, List<Measured> measured) {}

    private static final Map<String, Drawn> ALL = new LinkedHashMap<>();

    @BeforeAll
    static void draw() {
        Map<String, Plan> plans = new LinkedHashMap<>(Sketches.all());
        for (int seed = 1; seed <= 60; seed++) {
            plans.put("random hookups, seed " + seed, RandomSketch.plan(seed));
        }
        plans.putAll(Planned.all());
        plans.forEach((name, plan) -> {
            List<Drawing> drawings = Diagrams.draw(plan);
            List<Measured> measured = drawings.stream()
                    .map(drawing -> new Measured(drawing.svg()))
                    .toList();
            ALL.put(name, new Drawn(plan, drawings, measured));
        });
    }

    static Set<String> names() {
        return ALL.keySet();
    }

    private static void each(String name, Consumer<Measured> check) {
        ALL.get(name).measured().forEach(check);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("names")
    void texts_are_readable_and_lie_on_nothing(String name) {
        each(name, drawing -> {
            Box page = new Box(0.5, 0.5, Page.WIDTH - 0.5, Page.HEIGHT - 0.5, "page");
            for (int i = 0; i < drawing.texts.size(); i++) {
                Text text = drawing.texts.get(i);
                assertThat(text.pt()).as(text.content()).isGreaterThanOrEqualTo(8);
                assertThat(text.ink().within(page)).as("on the sheet: %s", text).isTrue();
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
        });
    }

    /** Only a name too long for the title block is cut there; it stands whole in the heading. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("planned")
    void nothing_is_cut_off_in_the_samples(String name) {
        each(name, drawing -> {
            for (Text text : drawing.texts) {
                boolean whole = drawing.texts.stream()
                        .anyMatch(other -> text.content().endsWith("\u2026")
                                && other.content()
                                        .startsWith(text.content()
                                                .substring(0, text.content().length() - 1))
                                && !other.content().endsWith("\u2026"));
                assertThat(whole || !text.content().contains("\u2026"))
                        .as(text.content())
                        .isTrue();
            }
        });
    }

    static List<String> planned() {
        return ALL.keySet().stream().filter(each -> each.startsWith("planned")).toList();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("names")
    void a_plan_that_is_not_whole_says_so_on_every_sheet(String name) {
        boolean partial = ALL.get(name).plan().partial();
        each(
                name,
                drawing -> assertThat(drawing.texts.stream()
                                .anyMatch(text -> text.content().startsWith("PARTIAL")))
                        .isEqualTo(partial));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("names")
    void wires_run_through_no_box_and_no_text(String name) {
        each(name, drawing -> {
            for (Wire wire : drawing.wires) {
                for (Segment segment : wire.segments()) {
                    for (Box box : drawing.boxes) {
                        boolean panel =
                                box.kind().contains("frame") || box.kind().equals("cell");
                        assertThat(!panel && Measured.through(segment, box))
                                .as("%s through %s", wire.title(), box)
                                .isFalse();
                    }
                    for (Text text : drawing.texts) {
                        boolean plated = drawing.plates.stream()
                                .anyMatch(plate -> text.ink().touches(plate, 0.5));
                        assertThat(!plated && Measured.through(segment, text.ink()))
                                .as("%s through '%s'", wire.title(), text.content())
                                .isFalse();
                    }
                }
            }
        });
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("names")
    void wires_end_on_something_and_never_lie_on_each_other(String name) {
        each(name, drawing -> {
            assertThat(drawing.closest(0.3)).isGreaterThan(0.9);
            assertThat(drawing.closest(5)).isGreaterThanOrEqualTo(name.startsWith("random") ? 1.0 : 3.0);
            for (Wire wire : drawing.wires) {
                for (Measured.Point end : List.of(wire.start(), wire.end())) {
                    assertThat(drawing.boxes.stream().anyMatch(box -> box.onEdge(end)))
                            .as("an end of %s at %s", wire.title(), end)
                            .isTrue();
                }
                assertThat(wire.segments().size())
                        .as("bends of %s", wire.title())
                        .isLessThanOrEqualTo(3);
                assertThat(wire.title()).isNotBlank();
            }
        });
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("names")
    void no_more_crossings_than_pairs_of_pins_out_of_order(String name) {
        Plan plan = ALL.get(name).plan();
        List<Drawing> drawings = ALL.get(name).drawings();
        Panel panel = PinOrder.drawn(plan);
        for (var hookup : plan.hookups()) {
            List<Measured> sheets = drawings.stream()
                    .filter(drawing -> drawing.hookup().equals(hookup.id()))
                    .map(drawing -> new Measured(drawing.svg()))
                    .toList();
            int crossings =
                    sheets.stream().mapToInt(sheet -> sheet.crossings().size()).sum();
            long pairs = PinOrder.pairsOutOfOrder(panel, hookup);
            assertThat((long) crossings).isLessThanOrEqualTo(pairs);
            if (pairs == 0 && sheets.size() == 1) {
                assertThat(sheets.get(0).wires).allMatch(wire -> wire.segments().size() == 1);
            }
        }
    }

    /** Every wire's kind, and whether it is new, is told by dash and width alone. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("names")
    void black_and_white_loses_nothing(String name) {
        each(name, drawing -> {
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
        });
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("names")
    void only_what_svg_1_1_knows_and_nothing_from_outside(String name) {
        for (Drawing drawing : ALL.get(name).drawings()) {
            assertThat(drawing.svg())
                    .doesNotContain(
                            "rgba(",
                            "hsl(",
                            "paint-order",
                            "auto-start-reverse",
                            "transparent",
                            "<!DOCTYPE",
                            "<?xml-s");
            Measured measured = new Measured(drawing.svg());
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
}
