package leadwright.render.diagram;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import leadwright.planner.Plan;
import leadwright.planner.plan.Step;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class DiagramsTest {

    static Stream<Arguments> plans() {
        return Sketches.all().entrySet().stream().map(each -> Arguments.of(each.getKey(), each.getValue()));
    }

    static Document parsed(String svg) throws Exception {
        return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("plans")
    void every_hookup_is_drawn_once_and_the_same_each_time(String name, Plan plan) throws Exception {
        List<Drawing> drawings = Diagrams.draw(plan);
        assertThat(drawings.stream().map(Drawing::hookup).distinct())
                .containsExactlyElementsOf(
                        plan.hookups().stream().map(each -> each.id()).toList());
        assertThat(Diagrams.draw(plan)).isEqualTo(drawings);
        for (Drawing drawing : drawings) {
            Element root = parsed(drawing.svg()).getDocumentElement();
            assertThat(root.getAttribute("role")).isEqualTo("img");
            assertThat(root.getAttribute("width")).isEqualTo("249mm");
            assertThat(root.getAttribute("height")).isEqualTo("190mm");
            assertThat(root.getAttribute("viewBox")).isEqualTo("0 0 249 190");
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("plans")
    void every_wire_has_a_title_and_every_joint_made_a_number(String name, Plan plan) throws Exception {
        for (Drawing drawing : Diagrams.draw(plan)) {
            Document document = parsed(drawing.svg());
            NodeList paths = document.getElementsByTagName("path");
            for (int i = 0; i < paths.getLength(); i++) {
                Element path = (Element) paths.item(i);
                if (path.getAttribute("class").startsWith("wire ")) {
                    assertThat(path.getElementsByTagName("title").getLength()).isEqualTo(1);
                }
            }
            Map<String, Integer> texts = texts(document);
            for (Step step : plan.steps()) {
                boolean here = step.does() == Step.Act.JOIN
                        && step.hookup().filter(drawing.hookup()::equals).isPresent();
                if (here && plan.device().patientConnections().size() < 30) {
                    assertThat(texts).containsKey(String.valueOf(step.number()));
                }
            }
        }
    }

    static Map<String, Integer> texts(Document document) {
        Map<String, Integer> texts = new java.util.TreeMap<>();
        NodeList all = document.getElementsByTagName("text");
        for (int i = 0; i < all.getLength(); i++) {
            texts.merge(all.item(i).getTextContent(), 1, Integer::sum);
        }
        return texts;
    }
}
