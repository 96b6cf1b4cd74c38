package leadwright.render.diagram;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import leadwright.planner.Plan;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Element;

/** What a sheet says besides its wires: steps of the cord, visits that come again, an earth that nobody reads, long names. */
class SheetWordsTest {

    private static List<String> texts(String svg) {
        return new Measured(svg).texts.stream().map(Measured.Text::content).toList();
    }

    private static List<String> titles(String svg) {
        return new Measured(svg)
                .all("title").stream().map(Element::getTextContent).toList();
    }

    @ParameterizedTest(name = "{0}, {1}")
    @CsvSource({
        "brindlewick-ward-monitor, iec-62353-2014",
        "brindlewick-ward-monitor, nfpa-99-2012",
        "dovecote-infant-warmer, iec-62353-2014",
        "mossback-bed, iec-62353-2014"
    })
    void the_cord_has_the_number_of_the_step_that_plugs_it(String device, String rules) {
        Plan plan = Planned.plan(device, "k1-marrowgate-bench", rules);
        Step plug = plan.steps().stream()
                .filter(step -> step.place().filter(Step.CORD_IN::equals).isPresent())
                .findFirst()
                .orElseThrow();
        assertThat(plug.text()).containsIgnoringCase("fit the supply cord");
        String svg = Diagrams.draw(plan).stream()
                .filter(drawing -> drawing.hookup().equals(plug.hookup().orElseThrow()))
                .findFirst()
                .orElseThrow()
                .svg();
        assertThat(texts(svg)).contains(String.valueOf(plug.number()));
        assertThat(new Measured(svg).wires)
                .filteredOn(wire -> wire.kind().startsWith("mains"))
                .anyMatch(wire -> wire.title().endsWith(", step " + plug.number()));
    }

    @Test
    void a_hookup_that_comes_again_says_when_and_what_changes_then() {
        Plan plan = Planned.plan("brindlewick-ward-monitor", "k1-marrowgate-bench", "iec-62353-2014");
        Changes changes = new Changes(plan);
        List<Changes.Visit> again = changes.again("H1");
        assertThat(again).hasSize(1);
        Changes.Visit visit = again.get(0);
        List<Integer> byHand = plan.steps().stream()
                .filter(step -> step.number() >= visit.begin())
                .filter(step -> step.hookup().filter("H1"::equals).isPresent())
                .filter(step -> step.does() == Step.Act.PART || step.does() == Step.Act.JOIN)
                .map(Step::number)
                .toList();
        assertThat(Stream.concat(visit.off().stream(), visit.on().stream())
                        .sorted()
                        .toList())
                .isEqualTo(byHand)
                .isNotEmpty();
        String svg = Diagrams.draw(plan).get(0).svg();
        assertThat(texts(svg))
                .contains("again at step " + visit.begin())
                .anyMatch(text -> text.startsWith("Comes again at step " + visit.begin() + ", off at "));
    }

    /** Steps done in hookups before it are not those of its change. */
    @ParameterizedTest(name = "{0}, {1}")
    @CsvSource({
        "brindlewick-ward-monitor, iec-60601-1-ed3",
        "brindlewick-ward-monitor, iec-62353-2014",
        "oddlebar-rescue-set, iec-62353-2014",
        "noctuary-sleep-recorder, iec-60601-1-ed3"
    })
    void what_comes_off_is_of_the_change_just_before(String device, String rules) {
        Plan plan = Planned.plan(device, "k1-marrowgate-bench", rules);
        Changes changes = new Changes(plan);
        assertThat(plan.hookups()).hasSizeGreaterThan(1);
        for (Hookup hookup : plan.hookups()) {
            Optional<String> id = Optional.of(hookup.id());
            int first = plan.steps().stream()
                    .filter(step -> step.hookup().equals(id))
                    .mapToInt(Step::number)
                    .min()
                    .orElseThrow();
            int read = plan.steps().stream()
                    .filter(step -> step.hookup().equals(id) && step.does() == Step.Act.READ)
                    .mapToInt(Step::number)
                    .min()
                    .orElseThrow();
            assertThat(changes.off(hookup.id()))
                    .as(hookup.id())
                    .hasSize(changes.offCount(hookup.id()))
                    .isEqualTo(plan.steps().stream()
                            .filter(step -> step.number() >= first && step.number() < read)
                            .filter(step -> step.does() == Step.Act.PART)
                            .map(Step::number)
                            .toList());
        }
    }

    @ParameterizedTest(name = "{0}, {1}")
    @CsvSource({
        "brindlewick-ward-monitor, iec-60601-1-ed3",
        "brindlewick-ward-monitor, iec-62353-2014",
        "oddlebar-rescue-set, iec-62353-2014"
    })
    void the_foot_warns_of_what_is_read_in_the_hookup_and_of_nothing_else(String device, String rules) {
        Plan plan = Planned.plan(device, "k1-marrowgate-bench", rules);
        for (Drawing drawing : Diagrams.draw(plan)) {
            List<Obligation> here = plan.readings().stream()
                    .filter(reading -> reading.hookup().equals(Optional.of(drawing.hookup())))
                    .map(Reading::obligation)
                    .toList();
            String foot = new Measured(drawing.svg())
                    .texts.stream()
                            .filter(text -> text.bold() && text.ink().top() > Page.FOOT)
                            .map(Measured.Text::content)
                            .collect(Collectors.joining(" "));
            assertThat(foot.contains("Mains on a part: hands off."))
                    .isEqualTo(
                            here.stream().anyMatch(each -> each.sourcePolarity().isPresent()));
            assertThat(foot.contains("Supply open is live."))
                    .isEqualTo(
                            here.stream().anyMatch(each -> each.state().word().contains("supply-open")));
            assertThat(foot).contains("Device instructions come first.");
        }
    }

    @Test
    void an_earth_that_is_not_read_is_said_on_every_sheet_and_only_then() {
        List<Drawing> unread = Diagrams.draw(Planned.plan("slaterow-tilt-table", "k2-round-trolley", "iec-62353-2014"));
        assertThat(unread)
                .isNotEmpty()
                .allSatisfy(drawing -> assertThat(texts(drawing.svg()))
                        .anyMatch(text -> text.contains("EARTH NOT READ"))
                        .anyMatch(text ->
                                text.startsWith("Nothing is powered before another tester has read the earth")));
        assertThat(Diagrams.draw(Planned.plan("slaterow-tilt-table", "k3-fixed-plant-case", "iec-62353-2014")))
                .isNotEmpty()
                .allSatisfy(
                        drawing -> assertThat(texts(drawing.svg())).noneMatch(text -> text.contains("EARTH NOT READ")));
    }

    @ParameterizedTest(name = "{0} characters")
    @ValueSource(ints = {30, 60, 90, 120, 150, 300, 500})
    void a_long_name_is_wrapped_and_stands_whole_somewhere(int length) {
        String name = IntStream.range(0, length)
                .mapToObj(i -> i % 12 == 11 ? " " : String.valueOf((char) ('a' + i % 12)))
                .collect(Collectors.joining())
                .strip();
        Plan plan = new Sketch(
                        Sketch.device(Sketch.sample("mossback-bed").replaceFirst("(?m)^name: .*$", "name: " + name)),
                        Sketch.kit(Sketch.sample("k1-marrowgate-bench")))
                .hookup()
                .done()
                .plan();
        Measured drawing = new Measured(Diagrams.draw(plan).get(0).svg());
        Bars.texts(drawing);
        List<String> heading = drawing.texts.stream()
                .filter(text -> text.bold()
                        && text.ink().bottom() < Page.HEADING
                        && text.ink().left() < 10)
                .map(Measured.Text::content)
                .toList();
        if (length <= 150) {
            assertThat(String.join(" ", heading)).isEqualTo(name);
        } else {
            assertThat(heading).hasSize(2).last().asString().endsWith("\u2026");
        }
        assertThat(titles(Diagrams.draw(plan).get(0).svg())).anyMatch(title -> title.startsWith(name));
    }

    /** 64 like electrodes stand on one sheet, 256 on three; no type is below eight points. */
    @ParameterizedTest(name = "{0} electrodes on {1} sheets")
    @CsvSource({"64, 1", "128, 2", "256, 3"})
    void many_electrodes_take_few_readable_sheets(int electrodes, int sheets) {
        List<Drawing> drawings = Diagrams.draw(Crowded.array(electrodes));
        assertThat(drawings).hasSizeLessThanOrEqualTo(sheets);
        for (Drawing drawing : drawings) {
            Measured measured = new Measured(drawing.svg());
            Bars.texts(measured);
            Bars.boxesLieApart(measured);
            Bars.wiresRunThroughNothing(measured);
            Bars.wires(measured, 3);
        }
        assertThat(drawings.stream()
                        .flatMap(drawing -> texts(drawing.svg()).stream())
                        .filter(text -> text.equals("8 wires"))
                        .count())
                .isEqualTo(electrodes / 8);
    }

    /** A device without patient leads has its places for the clip and its mains drawn, with the steps. */
    @ParameterizedTest(name = "{0}")
    @ValueSource(strings = {"iec-62353-2014", "iec-60601-1-ed3", "iec-61010-1"})
    void a_device_without_patient_leads_is_drawn(String rules) {
        String device = Sketch.sample("kettlemoor-bench-steriliser")
                .replace("nema-6-20", "bs-1363")
                .replace("split-phase", "line-neutral")
                .replace("240 V", "230 V")
                .replace("current: 15 A", "current: 10 A")
                .replace("60 Hz", "50 Hz");
        Plan plan = Planned.of(device, "k1-marrowgate-bench", rules);
        List<Drawing> drawings = Diagrams.draw(plan);
        assertThat(drawings).hasSameSizeAs(plan.hookups()).isNotEmpty();
        Measured drawing = new Measured(drawings.get(0).svg());
        assertThat(drawing.wires).anyMatch(wire -> wire.kind().startsWith("earth"));
        assertThat(drawing.wires).anyMatch(wire -> wire.kind().startsWith("mains"));
        List<String> texts = texts(drawings.get(0).svg());
        assertThat(texts).contains("Chamber rim", "Door", "Drain valve", "Mains cord");
        plan.steps().stream()
                .filter(step -> step.does() == Step.Act.CLIP)
                .forEach(step -> assertThat(texts).contains(String.valueOf(step.number())));
    }
}
