package leadwright.render.diagram;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import leadwright.planner.Plan;
import leadwright.render.export.PngExport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;

/** Text from files is data: whatever it is, the drawing stays a drawing and the full text can be had. */
class HostileNamesTest {
    private final Measured drawing =
            new Measured(Diagrams.draw(Crowded.hostile()).get(0).svg());

    @Test
    void markup_in_names_is_only_text() {
        assertThat(drawing.all("script")).isEmpty();
        assertThat(drawing.all("svg")).hasSize(1);
        assertThat(drawing.texts.stream().map(Measured.Text::content))
                .anyMatch(text -> text.startsWith("<script>alert('x')</script> ]]> &amp; evil"))
                .anyMatch(text -> text.equals("]]><svg onload=x>"));
    }

    @Test
    void nothing_turns_the_direction_of_the_text() {
        String source = Diagrams.draw(Crowded.hostile()).get(0).svg();
        assertThat(source).doesNotContain("\u202E", "\u202C", "\u200F", "\u2067");
    }

    @Test
    void what_is_shortened_stands_in_full_in_a_title() {
        String longName = "W".repeat(500);
        assertThat(drawing.texts.stream().map(Measured.Text::content)).noneMatch(longName::equals);
        List<String> titles =
                drawing.all("title").stream().map(Element::getTextContent).toList();
        assertThat(titles).anyMatch(title -> title.startsWith(longName));
        assertThat(titles)
                .anyMatch(title -> title.contains("a word and ".repeat(40).strip()));
    }

    @Test
    void the_type_of_a_part_is_never_cut() {
        for (String type : List.of("(BF)", "(CF)")) {
            assertThat(drawing.texts.stream().map(Measured.Text::content)).anyMatch(text -> text.endsWith(type));
        }
        long parts = drawing.texts.stream()
                .filter(text -> text.content().matches(".*\\((BF|CF)\\)"))
                .count();
        assertThat(parts).isEqualTo(6);
    }

    static Stream<Arguments> plans() {
        return Sketches.all().entrySet().stream().map(each -> Arguments.of(each.getKey(), each.getValue()));
    }

    /** Another program loads and paints every drawing, and refuses whatever SVG 1.1 does not know. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("plans")
    void batik_paints_it(String name, Plan plan) throws Exception {
        for (Drawing each : Diagrams.draw(plan)) {
            var picture = ImageIO.read(new ByteArrayInputStream(PngExport.png(each.svg(), 50)));
            assertThat(picture.getWidth()).isBetween(489, 491);
            assertThat(picture.getRGB(245, 3) & 0xffffff).isEqualTo(0xffffff);
        }
    }
}
