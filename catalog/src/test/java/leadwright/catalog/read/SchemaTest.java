package leadwright.catalog.read;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import leadwright.catalog.device.ElectricalKey;
import leadwright.catalog.house.Times;
import leadwright.catalog.rules.PlaceRow;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.table.Connectors;
import leadwright.catalog.table.ElectrodeSets;
import leadwright.catalog.table.MainsCouplers;
import leadwright.catalog.table.RuleSets;
import leadwright.catalog.text.JsonOf;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/** The schemas and the readers agree, and the schemas' words are the tables'. */
class SchemaTest {

    /** What a schema cannot say: ids and references, calendars, order of amounts, words of other sections and tables. */
    private static final List<String> BEYOND_A_SCHEMA = List.of(
            "stands twice",
            "is no .* of this file",
            "run in a circle",
            "runs downwards",
            "longer than a day",
            "no earth pin",
            "there is no day",
            "is the catalog's own",
            "is the first key",
            "lists no 'jacks'",
            "is named, but the tester",
            "more than the whole limit",
            "is not in the conductor table",
            "begins the names of other connections",
            "did you mean '(snap|lab|recessed)",
            "no known word is near it",
            "unit '(ohm|uA)' is not one for this value; use (nA|uohm)",
            "the limit is at-(most|least)",
            "is no limit of any rule set",
            "is no circumstance that a rule set lists",
            "did you mean 'iec-62353-2014'");

    static List<Path> files() {
        return TestFiles.all();
    }

    @ParameterizedTest
    @MethodSource("files")
    void shippedFilesAreValid(Path path) {
        String text = TestFiles.text(path);
        assertThat(errors(TestFiles.kind(text), text)).contains(List.of());
    }

    @Test
    void everyKeyOfADeviceIsValid() {
        assertThat(errors("device", DefaultsTest.FULL_DEVICE)).contains(List.of());
    }

    private static Optional<List<String>> errors(String kind, String text) {
        return JsonOf.file(text.getBytes(StandardCharsets.UTF_8)).map(json -> Schemas.errors(kind, json));
    }

    @Test
    void whatTheReadersRefuseTheSchemasRefuseWhereASchemaCan() {
        List<String> refusedByBoth = new ArrayList<>();
        List<String> unexpected = new ArrayList<>();
        for (BrokenFile broken : BrokenFilesTest.files()) {
            Optional<List<String>> errors = errors(broken.kind(), broken.text());
            if (errors.isEmpty() || !errors.get().isEmpty()) {
                refusedByBoth.add(broken.toString());
            } else if (!broken.fragments().stream().allMatch(SchemaTest::isBeyondASchema)) {
                unexpected.add(broken + " -> " + broken.fragments());
            }
        }
        assertThat(unexpected).isEmpty();
        assertThat(refusedByBoth).hasSizeGreaterThan(130);
    }

    private static boolean isBeyondASchema(String fragment) {
        return BEYOND_A_SCHEMA.stream()
                .anyMatch(each -> Pattern.compile(each).matcher(fragment).find());
    }

    static Stream<Arguments> words() {
        return Stream.of(
                Arguments.of(
                        "device",
                        "/$defs/terminal/anyOf/0/enum",
                        Connectors.builtIn().byId().keySet()),
                Arguments.of(
                        "kit",
                        "/$defs/terminal/anyOf/0/enum",
                        Connectors.builtIn().byId().keySet()),
                Arguments.of(
                        "device",
                        "/properties/applied-parts/items/properties/set/enum",
                        ElectrodeSets.builtIn().byId().keySet()),
                Arguments.of(
                        "device",
                        "/properties/supply/properties/inlet/enum",
                        MainsCouplers.builtIn().inlets().keySet()),
                Arguments.of(
                        "device",
                        "/$defs/plug/enum",
                        MainsCouplers.builtIn().plugs().keySet()),
                Arguments.of(
                        "kit",
                        "/$defs/plug/enum",
                        MainsCouplers.builtIn().plugs().keySet()),
                Arguments.of(
                        "device",
                        "/$defs/quantity-word/enum",
                        Stream.of(QuantityKind.values()).map(QuantityKind::word).toList()),
                Arguments.of(
                        "house",
                        "/$defs/quantity-word/enum",
                        Stream.of(QuantityKind.values()).map(QuantityKind::word).toList()),
                Arguments.of(
                        "house",
                        "/properties/where/enum",
                        RuleSets.builtIn().all().stream()
                                .flatMap(rules -> rules.places().stream())
                                .map(PlaceRow::id)
                                .toList()));
    }

    @ParameterizedTest(name = "{0} {1}")
    @MethodSource("words")
    void wordsAreTheTables(String kind, String pointer, Iterable<String> words) {
        List<String> listed = new ArrayList<>();
        schema(kind).at(pointer).forEach(word -> listed.add(word.asString()));
        assertThat(listed).containsExactlyInAnyOrderElementsOf(words);
    }

    private static JsonNode schema(String kind) {
        return new ObjectMapper().readTree(Schemas.text(kind));
    }

    @Test
    void keysAreTheRecords() {
        TreeSet<String> times = new TreeSet<>(Times.defaults().contacts().keySet());
        times.addAll(Times.defaults().actions().keySet());
        assertThat(schema("house").at("/properties/times/properties").propertyNames())
                .containsExactlyInAnyOrderElementsOf(times);
        assertThat(schema("device").at("/properties/electrical/properties").propertyNames())
                .containsExactlyInAnyOrderElementsOf(Stream.of(ElectricalKey.values())
                        .map(ElectricalKey::word)
                        .toList());
    }

    /** Every section says what it is for, and takes no unknown key. */
    @Test
    void sectionsAreDescribedAndClosed() {
        for (String kind : List.of("device", "kit", "house", "readings")) {
            List<String> open = new ArrayList<>();
            walk(schema(kind), "", open);
            assertThat(open).isEmpty();
        }
    }

    private static void walk(JsonNode node, String path, List<String> open) {
        if (node.path("type").asString("").equals("object")
                && (node.path("additionalProperties").asBoolean(true) || !node.has("description"))) {
            open.add(path);
        }
        if (node.isObject()) {
            node.properties().forEach(entry -> walk(entry.getValue(), path + "/" + entry.getKey(), open));
        } else if (node.isArray()) {
            for (int i = 0; i < node.size(); i++) {
                walk(node.get(i), path + "/" + i, open);
            }
        }
    }

    /** The users' page names every key. */
    @Test
    void everyKeyIsInTheUsersPage() {
        String page = TestFiles.text(Path.of("../docs/files.md"));
        TreeSet<String> unnamed = new TreeSet<>();
        for (String kind : List.of("device", "kit", "house", "readings")) {
            keys(schema(kind), unnamed);
        }
        unnamed.removeIf(key -> page.contains("`" + key + "`") || page.contains("`" + key + ":"));
        assertThat(unnamed).isEmpty();
    }

    /** It also names every word that the keys with long lists take. */
    @Test
    void everyWordOfTerminalSurfaceInletAndOutputIsInTheUsersPage() {
        String page = TestFiles.text(Path.of("../docs/files.md"));
        JsonNode device = schema("device");
        List<JsonNode> lists = List.of(
                device.at("/$defs/terminal/anyOf/0/enum"),
                device.at("/$defs/plug/enum"),
                device.at("/properties/supply/properties/inlet/enum"),
                device.at("/properties/outputs/items/properties/kind/enum"),
                device.at("/properties/touch-points/items/properties/surface/enum"),
                device.at("/properties/ports/items/properties/surface/enum"));
        for (JsonNode list : lists) {
            assertThat(list.size()).isGreaterThan(2);
            list.forEach(word -> assertThat(page).contains("`" + word.asString() + "`"));
        }
    }

    private static void keys(JsonNode node, TreeSet<String> keys) {
        if (node.has("additionalProperties")) {
            keys.addAll(node.path("properties").propertyNames());
        }
        node.forEach(inner -> keys(inner, keys));
    }
}
