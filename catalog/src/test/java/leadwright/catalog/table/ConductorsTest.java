package leadwright.catalog.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantities;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.quantity.QuantityException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ConductorsTest {
    private final Conductors table = Conductors.builtIn();

    /** IEC 60228, class 5, as transcribed from three public tables; the last column is plain over ideal copper. */
    @ParameterizedTest
    @CsvSource({
        "0.5, 39000, 40100, 1.131",
        "0.75, 26000, 26700, 1.131",
        "1, 19500, 20000, 1.131",
        "1.5, 13300, 13700, 1.157",
        "2.5, 7980, 8210, 1.157",
        "4, 4950, 5090, 1.148",
        "6, 3300, 3390, 1.148",
        "10, 1910, 1950, 1.108"
    })
    void class_5_copper(String mm2, long plain, long tinned, double ratio) {
        Conductor conductor = table.find(mm2 + " mm2").orElseThrow();
        assertThat(conductor.basis()).isEqualTo(Conductor.Basis.CLASS_5);
        assertThat(conductor.perMetre().amount()).isEqualTo(plain);
        assertThat(conductor.tinnedPerMetre().orElseThrow().amount()).isEqualTo(tinned);
        double ideal = Wire.resistance(table.constant("resistivity").doubleValue() * 1e-9, 1, area(mm2));
        assertThat(conductor.perMetre().inSi() / ideal).isCloseTo(ratio, within(0.0006));
        assertThat(conductor.perMetre().inSi() / ideal)
                .isLessThan(table.constant("class-5-most").doubleValue());
    }

    /** DIN VDE 0295 sizes below IEC 60228's. */
    @ParameterizedTest
    @CsvSource({"0.14, 134000", "0.22, 96000", "0.25, 76000", "0.34, 53000"})
    void small_sizes(String mm2, long plain) {
        Conductor conductor = table.find(mm2 + " mm2").orElseThrow();
        assertThat(conductor.basis()).isEqualTo(Conductor.Basis.SMALL);
        assertThat(conductor.perMetre().amount()).isEqualTo(plain);
    }

    /** The AWG series is d = 0.127 mm x 92^((36 - n)/39); ohms follow from ideal copper. */
    @ParameterizedTest
    @CsvSource({"10", "12", "14", "16", "18", "20", "22", "24", "28"})
    void awg_follows_its_own_law(int number) {
        double diameter = 0.127e-3 * Math.pow(92, (36 - number) / 39.0);
        double perMetre = Wire.resistance(1.7241e-8, 1, Wire.area(diameter));
        Conductor conductor = table.find("AWG " + number).orElseThrow();
        assertThat(conductor.basis()).isEqualTo(Conductor.Basis.AWG);
        assertThat(conductor.perMetre().inSi()).isCloseTo(perMetre, within(perMetre * 5e-4));
        assertThat(conductor.area().amount() * 1e-12).isCloseTo(Wire.area(diameter), within(0.5e-9));
        assertThat(table.find(number + " AWG")).contains(conductor);
    }

    /** Diameters and circular mils as printed in public tables after ASTM B258; ohms calc, to the last digit of printed tables. */
    @ParameterizedTest
    @CsvSource({
        "10, 2.588, 101.90, 10383, 5.261, 3.277, 0.9988",
        "12, 2.053, 80.81, 6529.9, 3.309, 5.211, 1.588",
        "14, 1.628, 64.08, 4106.7, 2.081, 8.285, 2.525",
        "16, 1.291, 50.82, 2582.7, 1.309, 13.17, 4.016",
        "18, 1.024, 40.30, 1624.3, 0.823, 20.95, 6.385",
        "20, 0.812, 31.96, 1021.5, 0.518, 33.31, 10.15",
        "22, 0.644, 25.35, 642.4, 0.326, 52.96, 16.14",
        "24, 0.511, 20.10, 404.0, 0.205, 84.2, 25.67",
        "28, 0.321, 12.64, 159.8, 0.081, 212.9, 64.9"
    })
    void awg_table(
            int number, String mm, String mils, String circularMils, String mm2, String perKm, String perThousandFeet) {
        double diameter = 0.127e-3 * Math.pow(92, (36 - number) / 39.0);
        printed(diameter * 1e3, mm);
        printed(diameter / 25.4e-6, mils);
        printed(Math.pow(diameter / 25.4e-6, 2), circularMils);
        Conductor conductor = table.find("AWG " + number).orElseThrow();
        printed(conductor.area().amount() * 1e-6, mm2);
        printed(conductor.perMetre().inSi() * 1000, perKm);
        printed(Wire.resistance(1.7241e-8, 304.8, Wire.area(diameter)), perThousandFeet);
    }

    /** The figure as printed, a unit of its last digit allowed for the table's own rounding. */
    private static void printed(double got, String figure) {
        BigDecimal value = new BigDecimal(figure);
        assertThat(got).isCloseTo(value.doubleValue(), within(value.ulp().doubleValue()));
    }

    /** Both conductors of a two-wire lead count, calc, in milliohms. */
    @ParameterizedTest
    @CsvSource({"2.5 mm2, 3 m, 23.9, 47.9", "1 mm2, 1.5 m, 29.3, 58.5", "AWG 18, 2 m, 41.9, 83.8"})
    void resistance_of_a_loop(String conductor, String length, String single, String loop) {
        Quantity got = table.find(conductor).orElseThrow().resistance(Quantities.parse(length, Dimension.LENGTH));
        printed(got.inSi() * 1000, single);
        printed(2 * got.inSi() * 1000, loop);
    }

    /** Ideal copper: 1.7241e-8 ohm m is 17.241 ohm mm2/km, and 0.15328 ohm g/m2 at 8.89 g/cm3. */
    @Test
    void resistivity_of_copper() {
        double resistivity = table.constant("resistivity").doubleValue() * 1e-9;
        printed(resistivity * 1e9, "17.241");
        assertThat(0.15328 / 8.89).isCloseTo(resistivity * 1e6, within(1e-6));
        printed(1 / table.constant("coefficient-20").doubleValue(), "254.5");
    }

    /** The loop examples of the project's page of facts, and two of its bench page's. */
    @ParameterizedTest
    @CsvSource({
        "2.5 mm2, 3 m, 23940",
        "1 mm2, 1.5 m, 29250",
        "AWG 18, 2 m, 41900",
        "2.5 mm2, 18 m, 143640",
        "1.5 mm2, 20 m, 266000"
    })
    void resistance_of_a_lead(String conductor, String length, long microOhm) {
        Quantity got = table.find(conductor).orElseThrow().resistance(Quantities.parse(length, Dimension.LENGTH));
        assertThat(got).isEqualTo(new Quantity(Dimension.RESISTANCE, microOhm));
    }

    @Test
    void a_fraction_of_a_microohm_is_rounded_up() {
        Quantity length = Quantities.parse("0.1 mm", Dimension.LENGTH);
        assertThat(table.find("2.5 mm2").orElseThrow().resistance(length).amount())
                .as("0.798 microohm")
                .isEqualTo(1);
        assertThat(table.find("2.5 mm2")
                        .orElseThrow()
                        .resistance(length.times(0))
                        .amount())
                .isZero();
    }

    /** An area without a row errs towards more: ideal copper times the greatest ratio that a class 5 row has to it. */
    @Test
    void an_area_without_a_row_is_computed_and_says_so() {
        Conductor conductor = table.find("2 mm2").orElseThrow();
        assertThat(conductor.basis()).isEqualTo(Conductor.Basis.COMPUTED);
        // 17.241 x 1.158 / 2 = 9.98254 ohm per km
        assertThat(conductor.perMetre().amount()).isEqualTo(9983);
    }

    @Test
    void what_is_neither_area_nor_awg_is_refused() {
        assertThat(table.find("AWG 99")).isEmpty();
        assertThatThrownBy(() -> table.find("1.5")).isInstanceOf(QuantityException.class);
        assertThatThrownBy(() -> table.find("thick")).isInstanceOf(QuantityException.class);
        assertThatThrownBy(() -> table.find("0 mm2")).isInstanceOf(QuantityException.class);
        assertThatThrownBy(() -> table.find("1 mm2").orElseThrow().resistance(Quantity.seconds(1)))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /** The standard's table of factors, transcribed; it equals 1/(1 + 0.004 (t - 20)) to its three decimals. */
    @ParameterizedTest
    @CsvSource({"5, 1.064", "10, 1.042", "25, 0.980", "30, 0.962", "40, 0.926", "70, 0.833"})
    void temperature_factors_of_iec_60228(String celsius, String factor) {
        assertThat(table.factorsTo20()).containsEntry(new BigDecimal(celsius), new BigDecimal(factor));
        assertThat(table.factorTo20(Double.parseDouble(celsius))).isCloseTo(Double.parseDouble(factor), within(0.0005));
    }

    /** The two public forms of copper's coefficient agree: 0.00393 at 20 degrees is 1/254.5. */
    @Test
    void the_constants_of_copper_agree() {
        double byCoefficient = Wire.warming(table.constant("coefficient-20").doubleValue(), 20, 20, 70);
        assertThat(table.warming(20, 70)).isCloseTo(byCoefficient, within(1e-4));
        assertThat(table.warming(20, 20)).isEqualTo(1);
    }

    private static double area(String mm2) {
        return Double.parseDouble(mm2) * 1e-6;
    }
}
