package leadwright.render.diagram;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class SeveralSheetsTest {

    /** A place without a wire of its own must not be lost with the sheet it stands on. */
    @Test
    void every_place_of_the_clip_is_on_some_sheet() {
        List<Drawing> drawings = Diagrams.draw(Extremes.places());
        TreeSet<String> shown = drawings.stream()
                .flatMap(drawing -> new Measured(drawing.svg()).texts.stream())
                .map(Measured.Text::content)
                .filter(text -> text.startsWith("Place "))
                .collect(Collectors.toCollection(TreeSet::new));
        assertThat(shown)
                .containsExactlyElementsOf(IntStream.rangeClosed(1, 90)
                        .mapToObj(i -> "Place " + i)
                        .collect(Collectors.toCollection(TreeSet::new)));
        assertThat(drawings.stream().map(Drawing::sheet))
                .containsExactlyElementsOf(
                        IntStream.rangeClosed(1, drawings.size()).boxed().toList());
        assertThat(drawings).allMatch(drawing -> drawing.ofSheets() == drawings.size());
    }

    @Test
    void many_wires_take_few_sheets_and_each_is_drawn_once() {
        List<Drawing> drawings = Diagrams.draw(Crowded.array());
        assertThat(drawings.stream().filter(drawing -> drawing.hookup().equals("H1")))
                .hasSizeLessThanOrEqualTo(3);
        long wires = drawings.stream()
                .filter(drawing -> drawing.hookup().equals("H1"))
                .flatMap(drawing -> new Measured(drawing.svg()).texts.stream())
                .filter(text -> text.content().equals("8 wires"))
                .count();
        assertThat(wires).isEqualTo(32);
        assertThat(Diagrams.draw(Sketches.sleep())).hasSize(1);
    }
}
