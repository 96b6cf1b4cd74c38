package leadwright.planner.circuit;

import static leadwright.planner.circuit.Parts.EARTH;
import static leadwright.planner.circuit.Parts.across;
import static leadwright.planner.circuit.Parts.c;
import static leadwright.planner.circuit.Parts.circuit;
import static leadwright.planner.circuit.Parts.printed;
import static leadwright.planner.circuit.Parts.r;
import static leadwright.planner.circuit.Parts.v;
import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Capacitances and the currents that they let through; all figures calc. */
class LimitCapacitancesTest {

    /** The capacitance that just reaches a limit, calc: from the current that one nanofarad lets through. */
    @ParameterizedTest
    @CsvSource({
        "10, 0.138, 0.133, 0.126, 0.221, 0.201",
        "50, 0.692, 0.663, 0.629, 1.105, 1.005",
        "100, 1.384, 1.326, 1.258, 2.210, 2.010",
        "500, 6.920, 6.631, 6.291, 11.05, 10.05",
        "1000, 13.84, 13.26, 12.58, 22.10, 20.10",
        "5000, 69.2, 66.3, 62.9, 110.5, 100.5",
        "10000, 138.4, 132.6, 125.8, 221.0, 201.0"
    })
    void reaches_a_limit(double microAmperes, String at230, String at240, String at253, String at120, String at132) {
        reaches(microAmperes, at230, 230, 50);
        reaches(microAmperes, at240, 240, 50);
        reaches(microAmperes, at253, 253, 50);
        reaches(microAmperes, at120, 120, 60);
        reaches(microAmperes, at132, 132, 60);
    }

    private static void reaches(double microAmperes, String nanoFarads, double volts, double hertz) {
        double found = microAmperes / (across(1e-9, volts, hertz) * 1e6);
        printed(found, nanoFarads, volts + " V " + hertz + " Hz");
        // The measuring network's kilohm in series lowers it by so little (calc, as said beside the table).
        double share = throughAKilohm(found * 1e-9, volts, hertz) / (microAmperes * 1e-6);
        assertThat(share).isBetween(hertz == 50 ? 0.999 : 0.996, 1.0);
    }

    private static double throughAKilohm(double farads, double volts, double hertz) {
        return circuit(v("V", "line", EARTH, volts), c("C", "line", "part", farads), r("R", "part", EARTH, 1000))
                .solve(hertz)
                .current("V")
                .getMagnitude();
    }

    /** Capacitive leakage by capacitance, calc. */
    @ParameterizedTest
    @CsvSource({
        "1e-12, 0.079, 0.083, 0.100",
        "10e-12, 0.79, 0.83, 1.00",
        "100e-12, 7.9, 8.3, 10.0",
        "1e-9, 79, 83, 99.5"
    })
    void leakage_of_a_capacitance(double farads, String at253, String at264, String at264and60) {
        printed(across(farads, 253, 50) * 1e6, at253, "calc");
        printed(across(farads, 264, 50) * 1e6, at264, "calc");
        printed(across(farads, 264, 60) * 1e6, at264and60, "calc");
    }

    /** Three metres at 100 pF a metre against a limit of 10 µA, calc. */
    @ParameterizedTest
    @CsvSource({"300e-12, 253, 50, 24", "2.2e-9, 230, 50, 159", "2.2e-9, 120, 60, 99.5", "100e-12, 230, 50, 7.2"})
    void examples(double farads, double volts, double hertz, String microAmperes) {
        printed(across(farads, volts, hertz) * 1e6, microAmperes, "calc");
    }
}
