package leadwright.render.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import leadwright.catalog.house.Paper;
import leadwright.planner.Plan;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;
import leadwright.render.diagram.Drawing;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.EntityResolver;
import org.xml.sax.InputSource;

class BenchSheetTest {

    private static final Drawing DRAWING = new Drawing(
            "H1",
            1,
            1,
            "<?xml version=\"1.0\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 249 190\"><title>H1</title></svg>");

    @Test
    void isWellFormedWithLanguageTitleAndDescription() throws Exception {
        Document page = parsed(sheet(new SmallPlan()));
        assertThat(page.getDocumentElement().getAttribute("lang")).isEqualTo("en-GB");
        assertThat(page.getElementsByTagName("title").item(0).getTextContent()).contains("Brindlewick ward monitor");
        assertThat(metas(page)).contains("description", "subject");
        assertThat(page.getElementsByTagName("svg").getLength()).isEqualTo(1);
    }

    @Test
    void everyReadingIsARowInStepOrder() throws Exception {
        Plan plan = new SmallPlan().plan();
        List<String> rows = texts(parsed(BenchSheet.xhtml(plan, List.of(), List.of())), "td", "no");
        rows.removeIf(String::isEmpty);
        assertThat(rows).isEqualTo(plan.readings().stream().map(Reading::id).toList());
    }

    @Test
    void aStateIsABarOnceWithItsRowsUnderIt() throws Exception {
        int shutDown = new SmallPlan()
                .plan().steps().stream()
                        .filter(step -> step.does() == Step.Act.SHUT_DOWN)
                        .findFirst()
                        .orElseThrow()
                        .number();
        List<String> bars = texts(parsed(sheet(new SmallPlan())), "th", "what");
        assertThat(bars)
                .containsExactly(
                        "\u00a0CHECKS, not plugged in",
                        "\u00a0OUTLET OFF",
                        "\u00a0NORMAL, no fault",
                        "\u00a0REVERSED, no fault",
                        "\u00a0OUTLET OFF: \u00a0" + (shutDown - 1) + " Set off \u00a0" + shutDown
                                + " Shut the device down, 20 s. ");
    }

    @Test
    void wiresAreCountedAndTickedAtBothEnds() throws Exception {
        Document page = parsed(sheet(new SmallPlan()));
        assertThat(texts(page, "span", "wire")).hasSize(13).first().isEqualTo("R\u00a08\u00a07");
        assertThat(text(page)).contains("12 of 12").contains("Empty jacks: 4, 5, 6.");
        long ticks = all(page, "span", "wire").stream()
                .flatMap(wire -> all(wire, "span", "tick").stream())
                .count();
        assertThat(ticks)
                .as("two ends each; the earth lead also where its two pieces meet")
                .isEqualTo(27);
    }

    @Test
    void theNullValueHasARowAtStartAndEnd() throws Exception {
        assertThat(text(parsed(sheet(new SmallPlan()))))
                .containsPattern("Null value \\(no\\. \\d+\\)tips together")
                .containsPattern("Null value, end \\(no\\. \\d+\\)moved > 10\u00a0mΩ: repeat");
    }

    @Test
    void labelsAndWordsFollowTheHouse() throws Exception {
        Document page = parsed(sheet(new SmallPlan().grounded()));
        assertThat(texts(page, "span", "wire").get(0)).startsWith("RA\u00a0");
        assertThat(text(page))
                .contains("Plug ground to Pole clamp")
                .contains("Ground lead, first to")
                .contains("Check or ground fails")
                .contains("Line to ground");
    }

    @Test
    void unconfirmedLimitsAreSaidOnceAtTheHeadAndListedAtTheBack() throws Exception {
        Document page = parsed(sheet(new SmallPlan()));
        assertThat(text(page))
                .containsOnlyOnce("4 limits not yet confirmed, see the back.")
                .contains("Result (provisional)");
        assertThat(all(page, "table", "list")).hasSize(1);
        Document confirmed = parsed(sheet(new SmallPlan().confirmed()));
        assertThat(text(confirmed)).doesNotContain("not yet confirmed").doesNotContain("provisional");
    }

    @Test
    void aPartialPlanSaysSoOnEveryPageAndReportsWhatFallsShort() throws Exception {
        String sheet = sheet(new SmallPlan().partial());
        assertThat(text(parsed(sheet)))
                .contains("PARTIAL: this bench kit")
                .contains("fluid-electrode (Pulse oximetry): no item of the kit meets a liquid column");
        assertThat(sheet).contains("content: \"PARTIAL\"");
        assertThat(sheet(new SmallPlan())).doesNotContain("PARTIAL");
    }

    @Test
    void aTrainingCopyIsMarkedAndTheOthersSayTheyAreNone() throws Exception {
        assertThat(text(parsed(sheet(new SmallPlan().training()))))
                .contains("TRAINING: not a record", "TRAINING")
                .doesNotContain("Not a training copy");
        assertThat(text(parsed(sheet(new SmallPlan())))).contains("Not a training copy.");
    }

    @Test
    void textFromFilesStaysTextEverywhere() throws Exception {
        String hostile = "\"); } </style><script>alert(1)</script> & ${x} \u0001\u202e \\a ]]> <!--";
        String sheet = sheet(new SmallPlan().named(hostile));
        Document page = parsed(sheet);
        assertThat(page.getElementsByTagName("script").getLength()).isZero();
        assertThat(page.getElementsByTagName("h1").item(0).getTextContent())
                .isEqualTo(hostile.replace('\u0001', '\ufffd').replace('\u202e', '\ufffd'));
        assertThat(sheet).doesNotContain("<script").containsOnlyOnce("</style>");
    }

    @Test
    void refersToNothingOutsideItself() {
        String sheet = sheet(new SmallPlan());
        String without = sheet.replaceAll("xmlns(:\\w+)?=\"[^\"]*\"", "");
        assertThat(without)
                .doesNotContain("http:")
                .doesNotContain("https:")
                .doesNotContain("url(")
                .doesNotContain("@import");
        assertThat(without).doesNotContainPattern(Pattern.compile("\\s(src|href)="));
    }

    @Test
    void styleReadsTheSameAsXmlAndAsHtml() {
        String sheet = sheet(new SmallPlan());
        String style = sheet.substring(sheet.indexOf("<style>") + 7, sheet.indexOf("</style>"));
        assertThat(style).doesNotContain("&").doesNotContain("<").contains("size: A4;");
        assertThat(sheet(new SmallPlan().on(Paper.LETTER))).contains("size: Letter;");
        // Only elements that never have content may be written in the short form, or HTML would leave them open.
        assertThat(sheet.replaceAll("<(meta|br)[^>]*/>", "").replaceAll("(?s)<svg.*?</svg>", ""))
                .doesNotContain("/>");
    }

    @Test
    void statesWhatWasTakenForWhatTheFilesLeaveOut() throws Exception {
        assertThat(text(parsed(sheet(new SmallPlan())))).contains("tolerates-power-cut: taken as no");
    }

    @Test
    void noRuleOfThePageReachesIntoADrawing() {
        String sheet = sheet(new SmallPlan());
        String style = sheet.substring(sheet.indexOf("<style>"), sheet.indexOf("</style>"));
        String rules = style.substring(style.indexOf("body {"), style.indexOf("@media"));
        Matcher selectors = Pattern.compile("(?m)(?:^|})\\s*([^{}/@]+?)\\s*\\{").matcher(rules);
        int seen = 0;
        while (selectors.find()) {
            for (String selector : selectors.group(1).split(",")) {
                seen++;
                assertThat(selector.strip())
                        .matches("(body|h1|h2|p|ul|table|td|th|tr|\\.form .*|\\.back.*|\\.bar th|\\.list td"
                                + "|\\.drawing|\\.drawing svg|\\.watermark)");
            }
        }
        assertThat(seen).isGreaterThan(40);
    }

    @Test
    void samePlanSameSheet() {
        assertThat(sheet(new SmallPlan())).isEqualTo(sheet(new SmallPlan()));
    }

    @Test
    void keepsOffTheSheetWhatTheBenchNeverNeeds() throws Exception {
        Plan plan = new SmallPlan().plan();
        String text = text(parsed(BenchSheet.xhtml(plan, List.of(), List.of())));
        assertThat(text)
                .doesNotContain(plan.hookupsProof().argument())
                .doesNotContain(plan.timeProof().argument())
                .doesNotContain("made by hand")
                .doesNotContain(String.valueOf(plan.time().total()));
    }

    private static String sheet(SmallPlan plan) {
        return BenchSheet.xhtml(plan.plan(), List.of(DRAWING), List.of("tolerates-power-cut: taken as no"));
    }

    private static Document parsed(String sheet) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        EntityResolver nothing = (publicId, systemId) -> {
            throw new IllegalStateException("refers to " + systemId);
        };
        javax.xml.parsers.DocumentBuilder builder = factory.newDocumentBuilder();
        builder.setEntityResolver(nothing);
        return builder.parse(new InputSource(new StringReader(sheet)));
    }

    private static String text(Document page) {
        return page.getElementsByTagName("body").item(0).getTextContent();
    }

    private static List<String> metas(Document page) {
        List<String> names = new ArrayList<>();
        NodeList metas = page.getElementsByTagName("meta");
        for (int i = 0; i < metas.getLength(); i++) {
            names.add(((Element) metas.item(i)).getAttribute("name"));
        }
        return names;
    }

    private static List<String> texts(Document page, String element, String styleClass) {
        return new ArrayList<>(all(page, element, styleClass).stream()
                .map(Element::getTextContent)
                .toList());
    }

    private static List<Element> all(Document page, String element, String styleClass) {
        return all(page.getDocumentElement(), element, styleClass);
    }

    private static List<Element> all(Element page, String element, String styleClass) {
        List<Element> found = new ArrayList<>();
        NodeList elements = page.getElementsByTagName(element);
        for (int i = 0; i < elements.getLength(); i++) {
            Element each = (Element) elements.item(i);
            if (List.of(each.getAttribute("class").split(" ")).contains(styleClass)) {
                found.add(each);
            }
        }
        return found;
    }
}
