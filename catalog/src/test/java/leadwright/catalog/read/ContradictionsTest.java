package leadwright.catalog.read;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import leadwright.catalog.text.Problem;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Supply, protection, battery and adapter of one device: which go together. */
class ContradictionsTest {

    private static List<String> problems(String supply, String protection, String more) {
        return TestFiles.read(
                        "device",
                        "leadwright: device/1\nname: x\nsupply: {" + supply + "}\nprotection: " + protection + "\n"
                                + more + "\n")
                .problems()
                .stream()
                .map(Problem::text)
                .toList();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "connection: none | internally-powered | battery: only",
                "connection: none | internally-powered | ports: []",
                "connection: external-adapter, voltage: 100-240 V | internally-powered | 'adapter: {class: class-2}'",
                "connection: external-adapter, voltage: 100-240 V | class-2 | battery: backs-up",
                "connection: permanent, system: three-phase, voltage: 400 V | class-1 | battery: none",
                "connection: fixed-cord, cord-plug: cee-7-16, voltage: 230 V | class-2 | battery: none",
                "connection: detachable-cord, inlet: iec-60320-c8, voltage: 230 V | class-2 | battery: only"
            })
    void goTogether(String supply, String protection, String more) {
        assertThat(problems(supply, protection, more)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "connection: none | class-1 | battery: only | t.yaml:4:13: a device whose supply.connection is none cannot be class-1",
                "connection: none | class-2 | battery: only | t.yaml:4:13: a device whose supply.connection is none cannot be class-2",
                "connection: none, voltage: 9 V | internally-powered | battery: only | t.yaml:3:37: 'voltage' does not go with connection none",
                "connection: none, cord-plug: bs-1363 | internally-powered | battery: only | t.yaml:3:39: 'cord-plug' does not go with connection none",
                "connection: fixed-cord, voltage: 230 V | internally-powered | battery: only | t.yaml:4:13: a device on the mains (fixed-cord) is class-1 or class-2 while it is",
                "connection: external-adapter, voltage: 230 V | class-2 | 'adapter: {class: internally-powered}' | t.yaml:5:18: 'internally-powered' is not a word for 'class'; known: class-1, class-2",
                "connection: permanent, voltage: 230 V | class-1 | 'adapter: {class: class-1}' | t.yaml:5:10: 'adapter' describes an external adapter, but supply.connection is permanent"
            })
    void contradict(String supply, String protection, String more, String expected) {
        assertThat(problems(supply, protection, more))
                .singleElement()
                .asString()
                .startsWith(expected);
    }
}
