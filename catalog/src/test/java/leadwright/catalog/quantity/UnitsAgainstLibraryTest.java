package leadwright.catalog.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Map;
import java.util.stream.Stream;
import javax.measure.IncommensurableException;
import javax.measure.Unit;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import tech.units.indriya.format.SimpleUnitFormat;

/** A units library as judge: one of each unit, converted to the base unit, is exactly the table's whole number. */
class UnitsAgainstLibraryTest {

    /** Spellings that the library has in other words; it takes mm2 for a thousandth of a square metre. */
    private static final Map<String, String> IN_THE_LIBRARYS_WORDS = Map.of("VA", "V·A", "um2", "µm^2", "mm2", "mm^2");

    /** ppm is not in the library; temperatures have an offset in the library, and no unit but the degree here; money is not its subject. */
    static Stream<Arguments> units() {
        return Arrays.stream(Dimension.values())
                .filter(dimension -> dimension != Dimension.TEMPERATURE && dimension != Dimension.PRICE)
                .flatMap(dimension -> dimension.units().stream()
                        .filter(unit -> !unit.symbol().equals("ppm"))
                        .map(unit -> Arguments.of(dimension, unit.symbol(), unit.baseUnits())));
    }

    private static Unit<?> parsed(String symbol) {
        String spelling = IN_THE_LIBRARYS_WORDS.getOrDefault(
                symbol, symbol.replace("ohm", "Ω").replaceFirst("^u", "µ"));
        return SimpleUnitFormat.getInstance().parse(spelling);
    }

    @ParameterizedTest(name = "{0}: 1 {1} = {2}")
    @MethodSource("units")
    void isWhatTheTableSays(Dimension dimension, String symbol, long baseUnits) throws IncommensurableException {
        Unit<?> base = dimension == Dimension.RATIO ? parsed("%") : parsed(dimension.baseUnit());
        Number converted = parsed(symbol).getConverterToAny(base).convert(BigDecimal.ONE);
        BigDecimal expected = dimension == Dimension.RATIO
                ? BigDecimal.valueOf(baseUnits).movePointLeft(4)
                : BigDecimal.valueOf(baseUnits);
        assertThat(new BigDecimal(converted.toString())).isEqualByComparingTo(expected);
    }
}
