package leadwright.render.diagram;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import leadwright.planner.Plan;
import leadwright.render.diagram.Measured.Text;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What every drawing holds, measured on its source: samples, sketched hookups, and random ones whose seed stands in the name. */
class DrawingBarsTest {

    /** A plan with its drawings, drawn and measured once for all tests. */
    private record Drawn(Plan plan, List<Drawing> drawings, List<Measured> measured) {
        static Drawn of(Plan plan) {
            List<Drawing> drawings = Diagrams.draw(plan);
            return new Drawn(
                    plan,
                    drawings,
                    drawings.stream()
                            .map(drawing -> new Measured(drawing.svg()))
                            .toList());
        }
    }

    private static final Map<String, Drawn> ALL = new LinkedHashMap<>();

    @BeforeAll
    static void draw() {
        Map<String, Plan> plans = new LinkedHashMap<>(Sketches.all());
        plans.putAll(Planned.all());
        plans.forEach((name, plan) -> ALL.put(name, Drawn.of(plan)));
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
        each(name, Bars::texts);
        each(name, Bars::boxesLieApart);
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
        each(name, Bars::wiresRunThroughNothing);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("names")
    void wires_end_on_something_and_never_lie_on_each_other(String name) {
        each(name, drawing -> Bars.wires(drawing, 3));
        each(name, Bars::crossingsAreClear);
        each(name, Bars::wiresKeepClear);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("names")
    void wires_take_the_short_way(String name) {
        each(name, drawing -> {
            int crossings = drawing.crossings().size();
            // What must cross may go round; nothing else does.
            assertThat(Bars.detour(drawing)).isLessThanOrEqualTo(crossings == 0 ? 1.001 : crossings < 20 ? 1.07 : 1.17);
        });
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("names")
    void no_drawing_of_the_hookup_with_its_pins_in_this_order_crosses_less(String name) {
        Drawn drawn = ALL.get(name);
        Bars.crossings(drawn.plan(), drawn.drawings(), drawn.measured(), Set.of());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("names")
    void a_pin_keeps_its_row(String name) {
        Bars.rowsStay(ALL.get(name).drawings(), ALL.get(name).measured());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("names")
    void black_and_white_loses_nothing(String name) {
        each(name, Bars::blackAndWhiteLosesNothing);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("names")
    void only_what_svg_1_1_knows_and_nothing_from_outside(String name) {
        Drawn drawn = ALL.get(name);
        for (int i = 0; i < drawn.drawings().size(); i++) {
            Bars.onlyWhatSvg11Knows(drawn.drawings().get(i), drawn.measured().get(i));
        }
    }

    /** Random hookups with so many orders that the search for the fewest crossings gives up; all others it answers. */
    private static final Map<Integer, Set<String>> OPEN = Map.of(63, Set.of("H1"), 274, Set.of("H2"));

    static IntStream seeds() {
        return IntStream.rangeClosed(1, 300);
    }

    /** Where a great many columns share a sheet, upright wires may stand a millimetre and a half apart; nothing else gives way. */
    @ParameterizedTest(name = "random hookups, seed {0}")
    @MethodSource("seeds")
    void random_hookups_hold_the_bars(int seed) {
        Drawn drawn = Drawn.of(RandomSketch.plan(seed));
        for (Measured drawing : drawn.measured()) {
            Bars.texts(drawing);
            Bars.boxesLieApart(drawing);
            Bars.wiresRunThroughNothing(drawing);
            Bars.wires(drawing, 1.0);
            Bars.crossingsAreClear(drawing);
            Bars.wiresKeepClear(drawing);
            assertThat(Bars.detour(drawing)).isLessThanOrEqualTo(1.2);
            Bars.blackAndWhiteLosesNothing(drawing);
        }
        Bars.crossings(drawn.plan(), drawn.drawings(), drawn.measured(), OPEN.getOrDefault(seed, Set.of()));
        Bars.rowsStay(drawn.drawings(), drawn.measured());
    }
}
