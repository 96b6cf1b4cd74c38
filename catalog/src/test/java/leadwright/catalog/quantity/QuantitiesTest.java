package leadwright.catalog.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class QuantitiesTest {

    @ParameterizedTest
    @CsvSource({
        "230 V, VOLTAGE, 230000000",
        "0.6 A, CURRENT, 600000000",
        "20uA, CURRENT, 20000",
        "20 µA, CURRENT, 20000",
        "20 μA, CURRENT, 20000",
        "1.5 mm2, AREA, 1500000",
        "1.5 mm², AREA, 1500000",
        "0.2 ohm, RESISTANCE, 200000",
        "0.2 Ω, RESISTANCE, 200000",
        "300 mohm, RESISTANCE, 300000",
        "2.3 Mohm, RESISTANCE, 2300000000000",
        "75 s, TIME, 75000",
        "1.5 min, TIME, 90000",
        "60 pF/m, CAPACITANCE_PER_LENGTH, 60000",
        "2.2 nF, CAPACITANCE, 2200000",
        "10 %, RATIO, 100000",
        "50 Hz, FREQUENCY, 50000",
        "-3 degC, TEMPERATURE, -3000",
        "0.001 uA, CURRENT, 1"
    })
    void readsExactly(String written, Dimension dimension, long amount) {
        assertThat(Quantities.parse(written, dimension)).isEqualTo(Quantity.of(dimension, amount));
    }

    @ParameterizedTest
    @CsvSource({
        "230, VOLTAGE, '''230'' has no unit; write for instance ''230 V'''",
        "230 W, VOLTAGE, 'unit ''W'' is not one for this value; use uV, mV, V, kV'",
        "230 v, VOLTAGE, unit 'v' is not one for this value",
        "1 m, CURRENT, unit 'm' is not one for this value",
        "about 3 A, CURRENT, is not a number with its unit",
        "1e3 A, CURRENT, is not a number with its unit",
        "'1,5 mm2', AREA, has a comma; decimals are written with a point",
        "0.0001 uA, CURRENT, too large or finer than this program counts",
        "99999999999999999999 A, CURRENT, too large or finer than this program counts",
        "'', CURRENT, is not a number with its unit",
        "NaN A, CURRENT, is not a number with its unit"
    })
    void refusesAndSaysWhy(String written, Dimension dimension, String message) {
        assertThatThrownBy(() -> Quantities.parse(written, dimension))
                .isInstanceOf(QuantityException.class)
                .hasMessageContaining(message);
    }

    @Test
    void unitTellsTheDimension() {
        List<Dimension> either = List.of(Dimension.CAPACITANCE, Dimension.RESISTANCE);
        assertThat(Quantities.parse("2.2 nF", either).dimension()).isEqualTo(Dimension.CAPACITANCE);
        assertThat(Quantities.parse("10 Mohm", either).dimension()).isEqualTo(Dimension.RESISTANCE);
        assertThatThrownBy(() -> Quantities.parse("1 A", either)).hasMessageContaining("uF, uohm");
    }

    @ParameterizedTest(name = "{0}, seed 20261125")
    @EnumSource(mode = EnumSource.Mode.EXCLUDE, names = "PRICE")
    void textIsReadBackAsTheSameAmount(Dimension dimension) {
        Random random = new Random(20261125);
        for (int i = 0; i < 2000; i++) {
            Quantity quantity = Quantity.of(dimension, random.nextLong() >> random.nextInt(63));
            assertThat(Quantities.parse(quantity.text(), dimension)).isEqualTo(quantity);
        }
    }

    @Test
    void noUnitBelongsToTwoDimensions() {
        List<String> symbols = java.util.Arrays.stream(Dimension.values())
                .flatMap(dimension -> dimension.units().stream())
                .map(Dimension.Unit::symbol)
                .toList();
        assertThat(symbols).doesNotHaveDuplicates();
    }
}
