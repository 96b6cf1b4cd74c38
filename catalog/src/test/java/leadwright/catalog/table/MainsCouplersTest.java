package leadwright.catalog.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import leadwright.catalog.device.SupplySystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MainsCouplersTest {
    private final MainsCouplers table = MainsCouplers.builtIn();

    /** IEC 60320 as transcribed from public tables: inlet, class, rated current, American listing, pin temperature. */
    @ParameterizedTest
    @CsvSource({
        "c2,   class-2, 0.2 A, -,     70",
        "c6,   class-1, 2.5 A, 2.5 A, 70",
        "c8,   class-2, 2.5 A, 2.5 A, 70",
        "c10,  class-2, 6 A,   -,     70",
        "c14,  class-1, 10 A,  15 A,  70",
        "c16,  class-1, 10 A,  15 A,  120",
        "c16a, class-1, 10 A,  15 A,  155",
        "c18,  class-2, 10 A,  15 A,  70",
        "c20,  class-1, 16 A,  20 A,  70",
        "c22,  class-1, 16 A,  20 A,  155",
        "c24,  class-2, 16 A,  20 A,  70"
    })
    void appliance_inlets(String inlet, String protection, String current, String american, int celsius) {
        MainsCoupler coupler = table.inlet("iec-60320-" + inlet).orElseThrow();
        assertThat(coupler.protection().word()).isEqualTo(protection);
        assertThat(coupler.current().text()).isEqualTo(current.replace("0.2 A", "200 mA"));
        assertThat(coupler.currentNorthAmerica().map(Object::toString).orElse("-"))
                .isEqualTo(american);
        assertThat(coupler.pinCelsius()).isEqualTo(celsius);
    }

    /** The cord's end has the number below the inlet's. */
    @Test
    void connector_number_is_one_below_the_inlet() {
        for (MainsCoupler coupler : table.inlets().values()) {
            assertThat(number(coupler.connector())).as(coupler.inlet()).isEqualTo(number(coupler.inlet()) - 1);
            assertThat(coupler.accepts()).contains(coupler.connector());
        }
    }

    /** An over-rated cord end may serve a lower-rated inlet, never the reverse. */
    @Test
    void no_inlet_accepts_an_under_rated_cord() {
        for (MainsCoupler inlet : table.inlets().values()) {
            for (MainsCoupler made : table.inlets().values()) {
                if (inlet.accepts().contains(made.connector())) {
                    assertThat(made.current())
                            .as(made.connector() + " in " + inlet.inlet())
                            .isGreaterThanOrEqualTo(inlet.current());
                    assertThat(made.pinCelsius()).isGreaterThanOrEqualTo(inlet.pinCelsius());
                    if (inlet.protection() != made.protection()) {
                        assertThat(inlet.inlet())
                                .as("a cord with an earth may serve a two-pole inlet, never the reverse")
                                .isEqualTo("iec-60320-c18");
                    }
                }
            }
        }
    }

    @ParameterizedTest
    @CsvSource({
        "nema-5-15, nema-5-15, true",
        "nema-5-15, nema-5-20, true",
        "nema-5-20, nema-5-20, true",
        "nema-5-20, nema-5-15, false",
        "nema-6-15, nema-6-20, true",
        "nema-6-20, nema-6-15, false",
        "nema-6-15, nema-5-15, false",
        "nema-5-15, nema-6-15, false",
        "nema-1-15, nema-5-20, true",
        "cee-7-7, cee-7-3, true",
        "cee-7-7, cee-7-5, true",
        "cee-7-4, cee-7-5, false",
        "cee-7-16, cee-7-7, true",
        "bs-1363, cee-7-7, false",
        "bs-1363, bs-1363, true",
        "iec-60309, iec-60309, true",
        "iec-60309, bs-1363, false",
        "no-such-plug, bs-1363, false"
    })
    void which_plug_enters_which_socket(String plug, String socket, boolean enters) {
        assertThat(table.enters(plug, socket)).isEqualTo(enters);
    }

    /** By current, never into a smaller socket; and never from one supply voltage class into another. */
    @Test
    void no_plug_enters_a_socket_of_less_current_or_other_voltage() {
        for (MainsPlug plug : table.plugs().values()) {
            for (String socket : plug.enters()) {
                table.plug(socket).ifPresent(made -> {
                    assertThat(made.voltage()).isEqualTo(plug.voltage());
                    assertThat(made.currents().get(made.currents().size() - 1))
                            .isGreaterThanOrEqualTo(plug.currents().get(0));
                });
            }
        }
    }

    @Test
    void every_plug_word_of_the_file_formats_is_known() {
        assertThat(table.plugs().keySet())
                .containsAll(List.of(
                        "bs-1363",
                        "cee-7-7",
                        "nema-5-15",
                        "nema-5-20",
                        "nema-6-15",
                        "nema-6-20",
                        "as-nzs-3112",
                        "iec-60309"));
        assertThat(table.plug("cee-7-7").orElseThrow().polarised()).isFalse();
        assertThat(table.plug("bs-1363").orElseThrow().polarised()).isTrue();
        assertThat(table.plug("nema-6-20").orElseThrow().systems())
                .as("no neutral")
                .doesNotContain(SupplySystem.LINE_NEUTRAL);
        assertThat(table.plug("as-nzs-3112").orElseThrow().fits()).isEqualTo(MainsPlug.Fits.EQUAL_OR_HIGHER);
        assertThat(table.plug("iec-60309").orElseThrow().fits()).isEqualTo(MainsPlug.Fits.EQUAL);
    }

    private static int number(String id) {
        return Integer.parseInt(id.replaceAll(".*-c(\\d+)a?", "$1"));
    }
}
