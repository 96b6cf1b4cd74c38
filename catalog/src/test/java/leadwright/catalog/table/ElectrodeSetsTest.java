package leadwright.catalog.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import leadwright.catalog.house.LabelCode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ElectrodeSetsTest {
    private final ElectrodeSets table = ElectrodeSets.builtIn();

    /** The two ECG codes, transcribed from GOST IEC 60601-2-51-2011, Table 101, and public users' texts. */
    @ParameterizedTest
    @CsvSource({
        "R,  R,  red,                    RA, white",
        "L,  L,  yellow,                 LA, black",
        "F,  F,  green,                  LL, red",
        "N,  N,  black,                  RL, green",
        "C1, C1, white/red or red,       V1, brown/red or red or brown",
        "C2, C2, white/yellow or yellow, V2, brown/yellow or yellow",
        "C3, C3, white/green or green,   V3, brown/green or green",
        "C4, C4, white/brown or brown,   V4, brown/blue or blue",
        "C5, C5, white/black or black,   V5, brown/orange or orange",
        "C6, C6, white/violet or violet, V6, brown/violet or violet"
    })
    void ecg_labels_and_colours(String id, String iec, String iecColours, String aha, String ahaColours) {
        ElectrodeWire wire = wire("ecg-10", id);
        assertThat(wire.marking(LabelCode.IEC).label()).isEqualTo(iec);
        assertThat(wire.marking(LabelCode.IEC).colours()).isEqualTo(iecColours);
        assertThat(wire.marking(LabelCode.AHA).label()).isEqualTo(aha);
        assertThat(wire.marking(LabelCode.AHA).colours()).isEqualTo(ahaColours);
    }

    @ParameterizedTest
    @CsvSource({
        "ecg-5, C,  C,  white,     V,  brown",
        "ecg-6, Ca, Ca, white,     Va, brown",
        "ecg-6, Cb, Cb, white/red, Vb, brown/white"
    })
    void chest_wires_of_the_smaller_sets(
            String set, String id, String iec, String iecColours, String aha, String ahaColours) {
        ElectrodeWire wire = wire(set, id);
        assertThat(wire.iec().label()).isEqualTo(iec);
        assertThat(wire.iec().colours()).isEqualTo(iecColours);
        assertThat(wire.aha().label()).isEqualTo(aha);
        assertThat(wire.aha().colours()).isEqualTo(ahaColours);
    }

    /** A set is counted in wires: ten for the twelve leads. */
    @ParameterizedTest
    @CsvSource({
        "ecg-3, 3, R L F",
        "ecg-4, 4, R L F N",
        "ecg-5, 5, R L F N C",
        "ecg-6, 6, R L F N Ca Cb",
        "ecg-10, 10, R L F N C1 C2 C3 C4 C5 C6",
        "eeg-21, 21, Fp1 Fp2 F7 F3 Fz F4 F8 T3 C3 Cz C4 T4 T5 P3 Pz P4 T6 O1 O2 A1 A2",
        "sleep-21, 21, F3 F4 C3 C4 O1 O2 M1 M2 E1 E2 Chin1 Chin2 Chin3 LegL1 LegL2 LegR1 LegR2 Ecg1 Ecg2 Gnd Ref"
    })
    void wires_of_each_set(String id, int count, String wires) {
        List<String> ids = table.find(id).orElseThrow().wires().stream()
                .map(ElectrodeWire::id)
                .toList();
        assertThat(ids).hasSize(count).containsExactly(wires.split(" "));
        assertThat(new HashSet<>(ids)).hasSize(count);
    }

    @Test
    void no_two_wires_of_a_set_look_alike_in_either_code() {
        for (LabelCode code : LabelCode.values()) {
            table.byId()
                    .values()
                    .forEach(set -> assertThat(set.wires())
                            .as(set.id() + " in " + code.word())
                            .extracting(wire -> wire.marking(code).label())
                            .doesNotHaveDuplicates());
            assertThat(table.find("ecg-10").orElseThrow().wires())
                    .extracting(wire -> wire.marking(code).colour() + " "
                            + wire.marking(code).second())
                    .doesNotHaveDuplicates();
        }
    }

    @Test
    void no_colour_is_made_up_for_eeg_and_sleep() {
        for (String set : List.of("eeg-21", "sleep-21")) {
            for (ElectrodeWire wire : table.find(set).orElseThrow().wires()) {
                assertThat(wire.iec().colours()).isEmpty();
                assertThat(wire.aha()).isEqualTo(wire.iec());
            }
        }
    }

    private ElectrodeWire wire(String set, String id) {
        return table.find(set).orElseThrow().wires().stream()
                .filter(wire -> wire.id().equals(id))
                .findFirst()
                .orElseThrow();
    }
}
