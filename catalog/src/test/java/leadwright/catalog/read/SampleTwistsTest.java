package leadwright.catalog.read;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.Earthed;
import leadwright.catalog.device.FunctionalEarth;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.Surface;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.kit.SourceReading;
import leadwright.catalog.kit.Ties;
import leadwright.catalog.kit.TouchThrough;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantities;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.table.Conductor;
import leadwright.catalog.table.Conductors;
import leadwright.catalog.table.Connectors;
import leadwright.catalog.table.MainsCouplers;
import leadwright.catalog.table.Mating;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Each sample really carries what its first line says it shows. */
class SampleTwistsTest {

    private static byte[] bytes(String name) {
        return TestFiles.text(Path.of("../samples/" + name + ".yaml")).getBytes(StandardCharsets.UTF_8);
    }

    private static Device device(String name) {
        return DeviceReader.read(name, bytes(name)).orThrow();
    }

    private static Kit kit(String name) {
        return KitReader.read(name, bytes(name)).orThrow();
    }

    /** Terminals of a device by word, each with how often it occurs. */
    private static Map<String, Integer> terminals(List<Connection> connections) {
        Map<String, Integer> count = new TreeMap<>();
        connections.forEach(connection -> count.merge(connection.terminal(), 1, Integer::sum));
        return count;
    }

    /** Places of a kit that mate with a terminal: ends of items, branches of fan-outs. */
    private static int places(Kit kit, String terminal) {
        int places = 0;
        for (KitItem item : kit.items()) {
            int first = item.kind() == ItemKind.FAN_OUT ? 1 : 0;
            for (String end : item.ends().subList(first, 2)) {
                if (Connectors.builtIn().mates(terminal, end) != Mating.NO) {
                    places += item.stock() * Math.max(item.branches(), 1);
                }
            }
        }
        return places;
    }

    @Test
    void the_marrowgate_bench_has_a_place_for_everything_on_brindlewick() {
        Device device = device("brindlewick-ward-monitor");
        Kit kit = kit("k1-marrowgate-bench");
        assertThat(device.connections()).hasSize(18);
        Map<String, Integer> terminals = terminals(device.connections());
        assertThat(terminals)
                .containsOnly(
                        Map.entry("snap-socket", 10),
                        Map.entry("skin-surface", 3),
                        Map.entry("liquid-column", 2),
                        Map.entry("metal", 3));
        terminals.forEach((terminal, count) ->
                assertThat(places(kit, terminal)).as(terminal).isGreaterThanOrEqualTo(count));
    }

    @Test
    void the_default_kit_has_a_place_for_everything_on_a_ward_monitor() {
        Path catalog = Path.of("src/main/resources/leadwright/catalog");
        Device device = DeviceReader.read(
                        "ward-monitor",
                        TestFiles.text(catalog.resolve("outlines/ward-monitor.yaml"))
                                .getBytes(StandardCharsets.UTF_8))
                .orThrow();
        Kit kit = KitReader.read(
                        "default-kit",
                        TestFiles.text(catalog.resolve("default-kit.yaml")).getBytes(StandardCharsets.UTF_8))
                .orThrow();
        assertThat(device.connections()).hasSize(12);
        // Foil serves sensors, cuffs and the plastic case alike: together they must not ask for more than there is.
        assertThat(device.connections().stream()
                        .filter(connection ->
                                Connectors.builtIn().mates(connection.terminal(), "foil-wrap") != Mating.NO))
                .hasSizeLessThanOrEqualTo(kit.item("wrap").orElseThrow().stock());
        terminals(device.connections())
                .forEach((terminal, count) ->
                        assertThat(places(kit, terminal)).as(terminal).isGreaterThanOrEqualTo(count));
    }

    @Test
    void the_marrowgate_bench_is_six_touch_proof_places_short_of_noctuary() {
        Device device = device("noctuary-sleep-recorder");
        assertThat(terminals(device.patientConnections())).containsOnly(Map.entry("tp15-socket", 64));
        assertThat(places(kit("k1-marrowgate-bench"), "tp15-socket")).isEqualTo(64 - 6);
        assertThat(device.appliedParts()).singleElement().satisfies(part -> {
            assertThat(part.type()).isEqualTo(PartType.BF);
            assertThat(part.functions()).hasSizeGreaterThan(3);
        });
        assertThat(device.protection()).isEqualTo(Protection.CLASS_2);
        assertThat(device.functionalEarth()).isEqualTo(FunctionalEarth.VIA_CORD);
    }

    @Test
    void slaterow_has_seventeen_earthed_points_two_of_them_painted_and_one_unknown() {
        Device device = device("slaterow-tilt-table");
        assertThat(device.touchPoints().stream().filter(point -> point.earthed() == Earthed.YES))
                .hasSize(17)
                .filteredOn(point -> point.surface() == Surface.PAINTED)
                .hasSize(2);
        assertThat(device.touchPoints().stream().filter(point -> point.earthed() == Earthed.UNKNOWN))
                .hasSize(1);
        assertThat(device.touchPoints().stream()
                        .map(point -> point.distance().orElseThrow())
                        .max(Quantity::compareTo))
                .contains(Quantities.parse("16 m", Dimension.LENGTH));
        assertThat(device.earthPoints()).as("no stud").isEmpty();
        assertThat(device.supply().cordPlug()).isEmpty();
    }

    /** 25 A from 6 V allows 0.24 ohm in the whole loop; the long lead alone has 0.266. */
    @Test
    void the_long_lead_of_the_fixed_plant_case_cannot_carry_25_A_from_6_V() {
        Kit kit = kit("k3-fixed-plant-case");
        KitItem lead = kit.item("lead-far").orElseThrow();
        Conductor conductor =
                Conductors.builtIn().find(lead.conductor().orElseThrow()).orElseThrow();
        Quantity ohms = conductor.resistance(lead.length().orElseThrow());
        double allowed = kit.tester().earthTest().orElseThrow().openCircuit().inSi() / 25;
        assertThat(ohms.text()).isEqualTo("266 mohm");
        assertThat(ohms.inSi()).isGreaterThan(allowed);
        assertThat(kit.tester().outlets()).isEmpty();
        assertThat(kit.tester().calibratedUntil()).contains(LocalDate.of(2027, 1, 15));
    }

    @Test
    void the_round_trolley_is_as_thin_as_it_says() {
        Kit kit = kit("k2-round-trolley");
        assertThat(kit.tester().jacks().orElseThrow()).satisfies(jacks -> {
            assertThat(jacks.count()).isEqualTo(4);
            assertThat(jacks.ties()).isEqualTo(Ties.RUNS);
            assertThat(jacks.atRest()).isEqualTo(AtRest.EARTHED);
        });
        assertThat(kit.tester().touchThrough()).contains(TouchThrough.JACK);
        assertThat(kit.tester().earthTest().orElseThrow().source()).isEqualTo(Component.DC);
        assertThat(kit.tester().partSource().orElseThrow().reading()).isEqualTo(SourceReading.RAW);
        assertThat(kit.items().stream().filter(item -> item.kind() == ItemKind.FAN_OUT))
                .singleElement()
                .satisfies(item -> assertThat(item.branches() * item.stock()).isEqualTo(8));
        assertThat(kit.items().stream().flatMap(item -> item.ends().stream()))
                .as("bare plugs only")
                .doesNotContain("lab-4mm-plug-shrouded", "lab-4mm-plug-retractable");
    }

    /** A 20 A plug enters no 15 A outlet, and 14 A is more than 80 % of 15 A, so that no adapter helps. */
    @Test
    void fenlark_is_too_much_for_a_15_A_outlet() {
        Device device = device("fenlark-scanner");
        String outlet = kit("k2-round-trolley").tester().outlets().get(0).socket();
        assertThat(MainsCouplers.builtIn().enters(device.supply().cordPlug().orElseThrow(), outlet))
                .isFalse();
        assertThat(device.supply().current().orElseThrow()).isGreaterThan(Quantities.parse("12 A", Dimension.CURRENT));
        assertThat(device.toleratesPowerCut()).contains(false);
    }

    @Test
    void oddlebar_has_therapy_outputs_that_are_made_safe_and_share_with_nothing() {
        Device device = device("oddlebar-rescue-set");
        assertThat(device.outputs()).hasSize(3).allSatisfy(output -> {
            assertThat(output.madeSafeBy()).isPresent();
            assertThat(output.waitTime()).isPresent();
            assertThat(output.mayShare()).isEmpty();
        });
    }

    @Test
    void wickling_has_nothing_to_earth_and_no_mains() {
        Device card = device("wickling-rhythm-card");
        assertThat(card.runsOnMains()).isFalse();
        assertThat(card.touchPoints()).allMatch(point -> point.surface() == Surface.INSULATING);
        assertThat(device("wickling-on-charger").appliedParts()).isEmpty();
    }

    @Test
    void the_others_carry_their_twist_too() {
        assertThat(device("kettlemoor-bench-steriliser").appliedParts()).isEmpty();
        Device kettlemoor = device("kettlemoor-bench-steriliser");
        assertThat(kettlemoor.electrical().get("line-earth"))
                .isEqualTo(kettlemoor.electrical().get("neutral-earth"));
        Device dovecote = device("dovecote-infant-warmer");
        assertThat(dovecote.builtTo()).contains("iec-60601-1-ed2");
        assertThat(dovecote.forbids()).extracting("test").containsExactly("insulation-resistance");
        assertThat(dovecote.touchPoints()).anyMatch(point -> point.earthed() == Earthed.UNKNOWN);
        Device mossback = device("mossback-bed");
        assertThat(mossback.touchPoints().stream()
                        .filter(point -> point.surface() == Surface.METAL && point.earthed() == Earthed.NO))
                .hasSize(2);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "brindlewick-ward-monitor",
                "oddlebar-rescue-set",
                "noctuary-sleep-recorder",
                "fenlark-scanner",
                "slaterow-tilt-table",
                "kettlemoor-bench-steriliser",
                "dovecote-infant-warmer",
                "mossback-bed",
                "wickling-rhythm-card",
                "wickling-on-charger",
                "k1-marrowgate-bench",
                "k2-round-trolley",
                "k3-fixed-plant-case",
                "ambersluice-house"
            })
    void begins_with_a_line_that_says_what_it_shows(String name) {
        assertThat(TestFiles.text(Path.of("../samples/" + name + ".yaml"))).startsWith("# Shows ");
    }
}
