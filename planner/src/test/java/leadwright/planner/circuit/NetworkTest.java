package leadwright.planner.circuit;

import static leadwright.planner.circuit.Parts.EARTH;
import static leadwright.planner.circuit.Parts.i;
import static leadwright.planner.circuit.Parts.printed;
import static leadwright.planner.circuit.Parts.r;
import static leadwright.planner.circuit.Parts.v;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Measuring networks. Part values: see {@link Network}; responses are calc from them. */
class NetworkTest {
    private static final String CALC = "calc";
    private final Network medical = Network.iec60601();

    /** IEC 60601-1:2005/AMD1:2012/COR1:2014, Figure 12: values, columns calc, the meter's 1 MΩ and 150 pF last. */
    @ParameterizedTest
    @CsvSource({
        "10, 999.946, 1.000000, 0.000, -0.59, 999.99, 989.07",
        "50, 998.659, 0.998713, -0.011, -2.97, 999.77, 987.80",
        "60, 998.071, 0.998125, -0.016, -3.56, 999.67, 987.22",
        "100, 994.669, 0.994722, -0.046, -5.92, 999.08, 983.86",
        "1e3, 694.244, 0.694281, -3.169, -46.0, 953.99, 687.04",
        "1e4, 96.012, 0.096017, -20.353, -84.5, 909.97, 95.06",
        "1e5, 9.6453, 0.009646, -40.313, -89.4, 909.10, 9.550",
        "1e6, 0.96457, 0.000965, -60.313, -89.9, 909.09, 0.9550"
    })
    void figure_12(
            double hertz, String transfer, String ratio, String decibel, String degrees, String input, String metered) {
        double z = medical.transferImpedance(hertz);
        printed(z, transfer, CALC);
        printed(z / medical.transferImpedance(10), ratio, CALC);
        printed(20 * Math.log10(z / medical.transferImpedance(10)), decibel, CALC);
        printed(phase(hertz), degrees, CALC);
        printed(medical.inputImpedance(hertz), input, CALC);
        printed(medical.metered(1e6, 150e-12).transferImpedance(hertz), metered, CALC);
        // The closed form of the same, calc.
        assertThat(z).isCloseTo(1000 / Math.hypot(1, 2 * Math.PI * hertz * 15e-9 * 11_000), within(1e-9 * z));
    }

    private double phase(double hertz) {
        List<Element> all = new ArrayList<>(medical.between("", Network.IN, EARTH));
        all.add(i("I", EARTH, Network.IN, 1));
        Solved solved = new Circuit(all).solve(hertz);
        var out = solved.voltage(Network.OUT, EARTH);
        return Math.toDegrees(Math.atan2(out.imaginary, out.real));
    }

    /** Corners of 5 % on R1 and C1 and 1 % on R2, calc. */
    @ParameterizedTest
    @CsvSource({
        "10, 989.9, 1010.0",
        "50, 988.4, 1008.9",
        "60, 987.7, 1008.4",
        "100, 983.7, 1005.6",
        "1e3, 653.8, 735.5",
        "1e4, 86.7, 106.7",
        "1e5, 8.71, 10.73",
        "1e6, 0.871, 1.073"
    })
    void tolerance_corners(double hertz, String least, String most) {
        double low = Double.MAX_VALUE;
        double high = 0;
        for (double r1 : new double[] {0.95, 1.05}) {
            for (double r2 : new double[] {0.99, 1.01}) {
                for (double c1 : new double[] {0.95, 1.05}) {
                    Map<String, Double> factors = Map.of("R1", r1, "R2", r2, "C1", c1);
                    double z = medical.scaled(factors::get).transferImpedance(hertz);
                    low = Math.min(low, z);
                    high = Math.max(high, z);
                }
            }
        }
        printed(low, least, CALC);
        printed(high, most, CALC);
    }

    /** A second table of the same network, calc: weight, decibel and input impedance. */
    @ParameterizedTest
    @CsvSource({
        "10, 0.99995, -0.00, 1000",
        "50, 0.9987, -0.01, 999.8",
        "60, 0.9981, -0.02, 999.7",
        "100, 0.9947, -0.05, 999.1",
        "200, 0.9792, -0.18, 996.4",
        "500, 0.8878, -1.03, 981.4",
        "1e3, 0.6942, -3.17, 954.0",
        "2e3, 0.4344, -7.24, 926.9",
        "3e3, 0.3061, -10.28, 918",
        "5e3, 0.1894, -14.45, 913",
        "1e4, 0.0960, -20.35, 910",
        "2e4, 0.0482, -26.34, 909",
        "5e4, 0.0193, -34.29, 909",
        "1e5, 0.00965, -40.31, 909",
        "2e5, 0.00482, -46.33, 909",
        "1e6, 0.00096, -60.31, 909"
    })
    void weight(double hertz, String weight, String decibel, String input) {
        printed(medical.weight(hertz), weight, CALC);
        printed(20 * Math.log10(medical.weight(hertz)), decibel, CALC);
        printed(medical.inputImpedance(hertz), input, CALC);
    }

    /** The corner frequencies, calc: driven by a current, and by a voltage. */
    @Test
    void corners() {
        double driven = 1 / (2 * Math.PI * 15e-9 * 11_000);
        printed(driven, "964.58", CALC);
        assertThat(medical.weight(driven)).isCloseTo(Math.sqrt(0.5), within(1e-12));
        double byVoltage = 1 / (2 * Math.PI * 15e-9 * 10_000);
        printed(byVoltage, "1061", CALC);
        List<Element> all = new ArrayList<>(medical.between("", "in", EARTH));
        all.add(v("V", "in", EARTH, 1));
        assertThat(new Circuit(all).solve(byVoltage).volts("out", EARTH)).isCloseTo(Math.sqrt(0.5), within(1e-12));
    }

    @Test
    void direct_current_sees_1_kilohm() {
        printed(medical.transferImpedance(0), "1000.0000", CALC);
        printed(medical.inputImpedance(0), "1000.0000", CALC);
    }

    /** A meter of 1 MΩ alone reads 1.09 % low at a low frequency, one of 10 MΩ 0.11 %, calc. */
    @Test
    void a_meter_loads_it() {
        printed(100 * (1 - medical.metered(1e6, 1e-18).transferImpedance(1) / 1000), "1.09", CALC);
        printed(100 * (1 - medical.metered(1e7, 1e-18).transferImpedance(1) / 1000), "0.11", CALC);
    }

    /** IEC 60990, Figures 3 and 4; calc. */
    @ParameterizedTest
    @CsvSource({
        "10, 1999.6, 1999.6, 499.95, 0.9999",
        "20, 1998.4, 1998.4, 499.79, 0.9996",
        "50, 1990.0, 1990.0, 498.69, 0.9974",
        "60, 1985.7, 1985.7, 498.11, 0.9962",
        "100, 1961.0, 1961.0, 494.82, 0.9896",
        "200, 1857.3, 1857.4, 480.18, 0.9604",
        "500, 1434.4, 1433.3, 404.67, 0.8093",
        "1e3, 978.6, 972.5, 283.68, 0.5674",
        "2e3, 675.3, 660.9, 162.85, 0.3257",
        "5e3, 533.4, 511.9, 68.25, 0.1365",
        "1e4, 508.6, 485.4, 34.37, 0.0687",
        "1e5, 500.1, 476.3, 3.445, 0.0069",
        "1e6, 500.0, 476.2, 0.3445, 0.0007"
    })
    void iec_60990(double hertz, String input3, String input4, String transfer4, String weight4) {
        printed(Network.iec60990Unweighted().inputImpedance(hertz), input3, CALC);
        printed(Network.iec60990().inputImpedance(hertz), input4, CALC);
        printed(Network.iec60990().transferImpedance(hertz), transfer4, CALC);
        printed(Network.iec60990().weight(hertz), weight4, CALC);
    }

    /** The calibration table of the standard, from memory. */
    @ParameterizedTest
    @CsvSource({
        "20, 1998",
        "50, 1990",
        "60, 1986",
        "100, 1961",
        "200, 1857",
        "500, 1434",
        "1e3, 979",
        "2e3, 675",
        "5e3, 533",
        "1e4, 509"
    })
    void input_impedance_of_figure_3(double hertz, String ohms) {
        printed(Network.iec60990Unweighted().inputImpedance(hertz), ohms, "from memory");
    }

    /** DKE interpretation note on DIN EN 61557-16: at 3.5 mA and 230 V, 1.5 % between 1 kΩ and 2 kΩ; check calc. */
    @Test
    void one_kilohm_against_two() {
        double source = 230 / 3.5e-3;
        printed(source / 1000, "65.7", CALC);
        double one = throughSource(source, 1000);
        double two = throughSource(source, 2000);
        printed(100 * (one / two - 1), "1.5", "DKE interpretation note, about 1.5 %");
    }

    private static double throughSource(double sourceOhms, double load) {
        return Parts.circuit(v("V", "a", EARTH, 230), r("S", "a", "b", sourceOhms), r("L", "b", EARTH, load))
                .solve(50)
                .current("V")
                .getMagnitude();
    }
}
