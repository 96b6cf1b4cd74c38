package leadwright.render;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.house.Paper;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.read.DeviceReader;
import leadwright.catalog.read.HouseReader;
import leadwright.catalog.read.KitReader;
import leadwright.catalog.read.ReadingsReader;
import leadwright.catalog.table.RuleSets;
import leadwright.catalog.text.Outcome;
import leadwright.catalog.text.Problem;
import leadwright.planner.Plan;
import leadwright.planner.Planner;
import leadwright.planner.Request;
import leadwright.planner.judge.Judge;
import leadwright.planner.judge.PlanFile;
import leadwright.planner.judge.TestRecord;
import leadwright.planner.plan.Occasion;
import leadwright.render.diagram.Diagrams;
import leadwright.render.diagram.Drawing;
import leadwright.render.export.PdfExport;
import leadwright.render.export.PlanCsv;
import leadwright.render.export.PlanJson;
import leadwright.render.export.RecordCsv;
import leadwright.render.export.RecordJson;
import leadwright.render.sheet.BenchSheet;
import leadwright.render.sheet.RecordSheet;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NamedNodeMap;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/**
 * Every text field of every file filled with text that means to be more: it is refused with its place, or it stays text in
 * all that is written, which has then the same elements and attributes as with a harmless name, and the same scripts.
 */
class HostileTextTest {
    static final String HARMLESS = "harmless";

    private static final String DEVICE = """
            leadwright: device/1
            name: %1$s
            supply: {connection: detachable-cord, inlet: iec-60320-c14, cord-plug: bs-1363, system: line-neutral, voltage: 230 V, frequency: 50 Hz, current: 0.6 A}
            protection: class-1
            applied-parts:
              - {id: line, name: %1$s, type: CF, connections: [{id: line, terminal: liquid-column}]}
            ports: [{id: lan, name: %1$s}]
            outputs:
              - {id: pads, applied-part: line, kind: pacing, made-safe-by: %1$s}
            touch-points:
              - {id: clamp, name: %1$s, earthed: yes, surface: metal}
              - {id: screw, name: %1$s, earthed: no, surface: metal}
            forbids: [{test: insulation-resistance, because: %1$s}]
            panel: [line]
            """;

    private static Device device(String quoted) {
        return DeviceReader.read("device.yaml", bytes(String.format(DEVICE, quoted)))
                .orThrow();
    }

    private static String kitText(String quoted) throws Exception {
        return Files.readString(Path.of("..", "samples", "k1-marrowgate-bench.yaml"))
                .replaceAll("(?m)^( *)name: .*$", "$1name: " + java.util.regex.Matcher.quoteReplacement(quoted));
    }

    private static String houseText(String quoted) {
        return "leadwright: house/1\ndepartment: " + quoted + "\nsigns: [technician]\n"
                + "extra-tests: [{quantity: touch-current, because: " + quoted + "}]\n";
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static String readingsText(String quoted) throws Exception {
        return Files.readString(Records.SETS.resolve("readings/all-well.yaml"))
                .replace("\"BW-0417\"", quoted)
                .replace("\"A-17\"", quoted)
                .replace("ECG trunk cable", quoted)
                .replace("\"R. Sedgemere\"", quoted)
                .replace("\"bench 2, number 0093\"", quoted)
                .replace("value: 99.8 uA", "value: 99.8 uA, remark: " + quoted);
    }

    static Stream<String> names() {
        return IntStream.range(0, HostileStrings.all().size())
                .mapToObj(i -> i + ": "
                        + HostileStrings.seen(HostileStrings.all().get(i)).replaceAll("(.{30}).*", "$1"));
    }

    static String string(String name) {
        return HostileStrings.all().get(Integer.parseInt(name.substring(0, name.indexOf(':'))));
    }

    @Test
    void there_are_many_kinds() {
        assertThat(HostileStrings.all()).hasSizeGreaterThanOrEqualTo(60).doesNotHaveDuplicates();
    }

    /** Each file is read or refused as a whole, and what is refused says where. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("names")
    void a_file_is_read_or_refused_with_line_and_column(String name) throws Exception {
        String quoted = HostileStrings.quoted(string(name));
        List<Outcome<?>> outcomes = List.of(
                DeviceReader.read("device.yaml", bytes(String.format(DEVICE, quoted))),
                KitReader.read("kit.yaml", bytes(kitText(quoted))),
                HouseReader.read("house.yaml", bytes(houseText(quoted))),
                ReadingsReader.read("readings.yaml", bytes(readingsText(quoted))));
        boolean text = string(name)
                .codePoints()
                .allMatch(c -> c == '\t'
                        || c == '\n'
                        || c == '\r'
                        || c >= 0x20 && c < 0x7f
                        || c >= 0xa0 && c < 0xd800
                        || c >= 0xe000 && (c & 0xfffe) != 0xfffe);
        for (Outcome<?> outcome : outcomes) {
            assertThat(outcome.problems().isEmpty())
                    .as("%s", outcome.problems())
                    .isEqualTo(text);
            for (Problem problem : outcome.problems()) {
                assertThat(problem.line()).isGreaterThan(1);
                assertThat(problem.column()).isGreaterThan(1);
                assertThat(problem.message()).isNotBlank();
                assertThat(problem.text()).matches("[^\\p{Cntrl}\\u202a-\\u202e\\u2066-\\u2069]*");
            }
        }
    }

    record Written(Plan plan, List<Drawing> drawings, String sheet) {}

    static Optional<Written> written(String text) throws Exception {
        String quoted = HostileStrings.quoted(text);
        if (!DeviceReader.read("device.yaml", bytes(String.format(DEVICE, quoted)))
                .problems()
                .isEmpty()) {
            return Optional.empty();
        }
        Kit kit = KitReader.read("kit.yaml", bytes(kitText(quoted))).orThrow();
        House house = HouseReader.read("house.yaml", bytes(houseText(quoted))).orThrow();
        leadwright.planner.Outcome outcome = Planner.plan(new Request(
                device(quoted),
                kit,
                RuleSets.builtIn().find("iec-62353-2014").orElseThrow(),
                house,
                Occasion.RECURRENT,
                Optional.empty()));
        Plan plan = ((leadwright.planner.Outcome.Planned) outcome).plan();
        List<Drawing> drawings = Diagrams.draw(plan);
        return Optional.of(new Written(plan, drawings, BenchSheet.xhtml(plan, drawings, List.of(text))));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("names")
    void what_a_plan_writes_has_it_as_text_alone(String name) throws Exception {
        Optional<Written> found = written(string(name));
        if (found.isEmpty()) {
            return;
        }
        Written hostile = found.get();
        Written harmless = written(HARMLESS).orElseThrow();
        String seen = HostileStrings.seen(string(name));
        for (int i = 0; i < hostile.drawings().size(); i++) {
            Document drawing = parsed(hostile.drawings().get(i).svg());
            assertThat(shapes(drawing))
                    .isSubsetOf(
                            withTitles(shapes(parsed(harmless.drawings().get(0).svg()))));
            assertThat(visible(drawing)).contains(seen);
            noTurn(hostile.drawings().get(i).svg());
        }
        Document page = parsed(hostile.sheet());
        Document same = parsed(harmless.sheet());
        assertThat(shapes(page)).isSubsetOf(withTitles(shapes(same)));
        assertThat(contents(page, "script")).isEqualTo(contents(same, "script"));
        assertThat(rules(page)).isEqualTo(rules(same));
        assertThat(visible(page)).contains(seen);
        noTurn(hostile.sheet());
        assertThat(strings(PlanJson.of(hostile.plan())))
                .contains(hostile.plan().device().name());
        assertThat(hostile.plan().device().name()).isEqualTo(string(name));
        harmlessCells(PlanCsv.of(hostile.plan()));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("names")
    void what_a_record_writes_has_it_as_text_alone(String name) throws Exception {
        String readings = readingsText(HostileStrings.quoted(string(name)));
        if (!ReadingsReader.read("readings.yaml", bytes(readings)).problems().isEmpty()) {
            return;
        }
        TestRecord record = record(readings);
        String benign = readingsText(HostileStrings.quoted(HARMLESS));
        Document same = parsed(RecordSheet.xhtml(record(benign), Paper.A4));
        String sheet = RecordSheet.xhtml(record, Paper.A4);
        Document page = parsed(sheet);
        assertThat(shapes(page)).isSubsetOf(withTitles(shapes(same)));
        assertThat(contents(page, "script")).isEqualTo(contents(same, "script"));
        assertThat(rules(page)).isEqualTo(rules(same));
        assertThat(visible(page)).contains(HostileStrings.seen(string(name)));
        noTurn(sheet);
        assertThat(strings(RecordJson.of(record)).stream().map(HostileStrings::seen))
                .contains(HostileStrings.seen(string(name)));
        harmlessCells(RecordCsv.of(record));
    }

    private static TestRecord record(String readings) throws Exception {
        return Judge.judge(
                        PlanFile.read("plan", Files.readAllBytes(Records.SETS.resolve("plan.json")))
                                .orThrow(),
                        ReadingsReader.read("readings.yaml", bytes(readings)).orThrow(),
                        new Judge.Options(Optional.empty(), Optional.empty(), Optional.empty()))
                .orThrow();
    }

    /** One paper with every string on it: names of touch points, in the words of the shipped faces. */
    @Test
    void paper_has_them_as_text_without_anything_that_acts() throws Exception {
        StringBuilder points = new StringBuilder();
        List<String> shown = new ArrayList<>();
        for (String text : HostileStrings.all()) {
            String point = "  - {id: p" + shown.size() + ", name: " + HostileStrings.quoted(text)
                    + ", earthed: yes, surface: metal}\n";
            String alone = String.format(DEVICE, HARMLESS).replace("forbids:", point + "forbids:");
            if (text.length() < 40
                    && text.matches("\\p{ASCII}*")
                    && DeviceReader.read("device.yaml", bytes(alone)).problems().isEmpty()) {
                points.append(point);
                shown.add(HostileStrings.seen(text));
            }
        }
        assertThat(shown).hasSizeGreaterThan(30);
        String device = String.format(DEVICE, HARMLESS).replace("forbids:", points + "forbids:");
        Plan plan = ((leadwright.planner.Outcome.Planned) Planner.plan(new Request(
                        DeviceReader.read("device.yaml", bytes(device)).orThrow(),
                        KitReader.read("kit.yaml", bytes(kitText(HARMLESS))).orThrow(),
                        RuleSets.builtIn().find("iec-62353-2014").orElseThrow(),
                        House.defaults(),
                        Occasion.RECURRENT,
                        Optional.empty())))
                .plan();
        byte[] pdf = PdfExport.pdf(BenchSheet.xhtml(plan, Diagrams.draw(plan), List.of()), Optional.empty());
        assertThat(new String(pdf, StandardCharsets.ISO_8859_1))
                .doesNotContain("/JavaScript", "/JS ", "/Launch", "/URI", "/EmbeddedFile", "/OpenAction");
        try (PDDocument document = Loader.loadPDF(pdf)) {
            String text = new PDFTextStripper().getText(document).replaceAll("\\s+", "");
            for (String each : shown) {
                assertThat(text).contains(each.replaceAll("\\s+", ""));
            }
        }
    }

    static Document parsed(String xml) throws Exception {
        DocumentBuilder builder = DocumentBuilderFactory.newInstance().newDocumentBuilder();
        builder.setEntityResolver((publicId, systemId) -> {
            throw new IllegalStateException("refers to " + systemId);
        });
        return builder.parse(new InputSource(new StringReader(xml)));
    }

    /** Every element with the names of its attributes, and what could act in their values. */
    static TreeSet<String> shapes(Document document) {
        TreeSet<String> shapes = new TreeSet<>();
        NodeList all = document.getElementsByTagName("*");
        for (int i = 0; i < all.getLength(); i++) {
            NamedNodeMap attributes = all.item(i).getAttributes();
            shapes.add(all.item(i).getNodeName());
            for (int a = 0; a < attributes.getLength(); a++) {
                String name = attributes.item(a).getNodeName();
                String value = attributes.item(a).getNodeValue().toLowerCase(java.util.Locale.ROOT);
                boolean acts = List.of("href", "src", "style", "d").contains(name)
                        && (value.contains("script:") || value.contains("url(") || value.contains("data:"));
                shapes.add(all.item(i).getNodeName() + " " + name + (acts ? " that acts" : ""));
            }
        }
        return shapes;
    }

    /** A text that is cut or wrapped stands in a group with a title. */
    static TreeSet<String> withTitles(TreeSet<String> shapes) {
        TreeSet<String> more = new TreeSet<>(shapes);
        more.addAll(List.of("g", "title", "wbr", "br"));
        return more;
    }

    static List<String> contents(Document document, String element) {
        NodeList all = document.getElementsByTagName(element);
        return IntStream.range(0, all.getLength())
                .mapToObj(i -> ((Element) all.item(i)).getTextContent())
                .toList();
    }

    /** The style sheets without what stands in quotes: a running head repeats names there. */
    private static List<String> rules(Document document) {
        return contents(document, "style").stream()
                .map(style -> style.replaceAll("\"(?:\\\\[\\s\\S]|[^\"\\\\\n])*\"", "\"\""))
                .toList();
    }

    static String visible(Document document) {
        // The page shows a mark that may not stand in it as the replacement character.
        return HostileStrings.seen(
                document.getDocumentElement().getTextContent().replace("\ufffd", ""));
    }

    /** No mark that turns the direction of what follows, nor one spelt as a style sheet spells it. */
    private static void noTurn(String source) {
        assertThat(source).doesNotContainPattern("[\\u202a-\\u202e\\u2066-\\u2069]|\\\\20(2[a-e]|6[6-9]) ");
    }

    private static List<String> strings(String json) throws Exception {
        List<String> strings = new ArrayList<>();
        try (JsonParser parser = new JsonFactory().createParser(json)) {
            for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
                if (token == JsonToken.VALUE_STRING) {
                    strings.add(parser.getText());
                }
            }
        }
        return strings;
    }

    /** No cell begins like a formula, after what a spreadsheet may skip. */
    private static void harmlessCells(String csv) {
        boolean quoted = false;
        StringBuilder cell = new StringBuilder();
        for (char c : (csv + ",").toCharArray()) {
            if (c == '"') {
                quoted = !quoted;
            } else if (!quoted && (c == ',' || c == '\n')) {
                assertThat(cell.toString().strip()).doesNotMatch("(?s)[=+\\-@|%\\uff1d\\uff0b\\uff0d\\uff20].*");
                cell.setLength(0);
            } else {
                cell.append(c);
            }
        }
    }
}
