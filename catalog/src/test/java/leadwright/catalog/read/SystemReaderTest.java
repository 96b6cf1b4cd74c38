package leadwright.catalog.read;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.DeviceSystem;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.text.JsonOf;
import leadwright.catalog.text.Outcome;
import leadwright.catalog.text.Problem;
import org.junit.jupiter.api.Test;

/** Systems: what the whole is made of, and what is refused, at its place in the file. */
class SystemReaderTest {
    private static final Path SAMPLES = Path.of("..", "samples");
    private static final String TROLLEY = text("pennywhistle-trolley.yaml");

    private static String text(String file) {
        try {
            return Files.readString(SAMPLES.resolve(file));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Outcome<DeviceSystem> read(String text) {
        return SystemReader.read(
                "trolley.yaml",
                text.getBytes(StandardCharsets.UTF_8),
                name -> DeviceReader.read(name, text(name).getBytes(StandardCharsets.UTF_8)));
    }

    private static List<String> problems(String piece, String instead) {
        assertThat(TROLLEY).contains(piece);
        return read(TROLLEY.replace(piece, instead)).problems().stream()
                .map(Problem::text)
                .toList();
    }

    @Test
    void the_whole_has_the_parts_of_every_member_under_its_id() {
        Device whole = read(TROLLEY).orThrow().whole();
        assertThat(whole.appliedParts())
                .extracting(AppliedPart::id)
                .containsExactly("pump-1-line", "pump-2-line", "pump-3-line", "pump-4-line", "warmer-coil");
        assertThat(whole.panel())
                .containsExactly("pump-1-line", "pump-2-line", "pump-3-line", "pump-4-line", "warmer-coil");
        assertThat(whole.patientConnections())
                .extracting(Connection::name)
                .contains("pump-1-line.line", "warmer-coil.coil");
        assertThat(whole.touchPoints())
                .extracting(TouchPoint::id)
                .contains("pump-4-clamp", "warmer-plate", "warmer-handle");
        assertThat(whole.protection()).isEqualTo(Protection.CLASS_1);
        // Four pumps of 0.2 A and a warmer of 2 A.
        assertThat(whole.supply().current().orElseThrow().text()).isEqualTo("2.8 A");
        assertThat(whole.system().orElseThrow().memberOf("pump-1-clamp")).contains("pump-1");
        assertThat(whole.system().orElseThrow().separatingTransformer()).isTrue();
        assertThat(whole.builtTo()).contains("iec-60601-1-ed3");
        assertThat(whole.staysOnWithoutMains()).isTrue();
    }

    @Test
    void the_schema_takes_the_sample_and_no_other_key() {
        String more = TROLLEY.replace("members:", "wheels: 4\nmembers:");
        assertThat(schemaErrors(TROLLEY)).isEmpty();
        assertThat(schemaErrors(more)).isNotEmpty();
        assertThat(read(more).problems()).isNotEmpty();
    }

    private static List<String> schemaErrors(String text) {
        return JsonOf.file(text.getBytes(StandardCharsets.UTF_8))
                .map(json -> Schemas.errors("system", json))
                .orElseThrow();
    }

    @Test
    void the_outlet_carries_no_more_than_it_may() {
        assertThat(problems("current: 6 A", "current: 2 A"))
                .singleElement()
                .asString()
                .contains("trolley.yaml:11:", "the members draw 2.8 A together, and the outlet carries 2 A");
    }

    @Test
    void a_member_of_another_voltage_or_plug_is_refused_where_it_stands() {
        assertThat(problems("voltage: 230 V", "voltage: 120 V"))
                .hasSize(5)
                .first()
                .asString()
                .contains("trolley.yaml:14:", "'Pennywhistle pump' is not rated for the outlet's 120 V");
        assertThat(problems("socket: bs-1363", "socket: nema-5-15"))
                .hasSize(5)
                .last()
                .asString()
                .contains("the plug bs-1363 of 'Pennywhistle warmer' does not enter the outlet's nema-5-15");
    }

    @Test
    void wired_in_and_battery_devices_are_no_members() {
        assertThat(problems(
                        "{id: warmer, device: pennywhistle-warmer.yaml}", "{id: t, device: slaterow-tilt-table.yaml}"))
                .last()
                .asString()
                .contains("'Slaterow tilt table' has no plug for the outlet");
    }

    @Test
    void ids_are_unique_files_stand_beside_and_something_is_a_member() {
        assertThat(problems("id: pump-2", "id: pump-1"))
                .singleElement()
                .asString()
                .contains("pump-1");
        assertThat(problems("{id: warmer, device: pennywhistle-warmer.yaml}", "{id: warmer, device: ../etc/hosts}"))
                .singleElement()
                .asString()
                .contains("a member's file stands beside the system's");
        assertThat(problems(
                        "{id: warmer, device: pennywhistle-warmer.yaml}",
                        "{id: warmer, device: k1-marrowgate-bench.yaml}"))
                .allSatisfy(problem -> assertThat(problem).contains("the member's file is not right"));
        assertThat(problems(TROLLEY.substring(TROLLEY.indexOf("members:")), "members: []\n"))
                .singleElement()
                .asString()
                .contains("lists none");
    }
}
