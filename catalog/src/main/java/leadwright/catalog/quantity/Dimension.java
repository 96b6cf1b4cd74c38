package leadwright.catalog.quantity;

import java.util.List;

/**
 * What a quantity measures. Each has a base unit, the whole-number grain of {@link Quantity#amount()}, and the units a
 * person may write, from small to large, with their size in base units.
 */
public enum Dimension {
    CURRENT(
            "nA",
            1e-9,
            "A",
            List.of(unit("nA", 1), unit("uA", 1_000), unit("mA", 1_000_000), unit("A", 1_000_000_000))),
    VOLTAGE(
            "uV",
            1e-6,
            "V",
            List.of(unit("uV", 1), unit("mV", 1_000), unit("V", 1_000_000), unit("kV", 1_000_000_000))),
    RESISTANCE(
            "uohm",
            1e-6,
            "ohm",
            List.of(
                    unit("uohm", 1),
                    unit("mohm", 1_000),
                    unit("ohm", 1_000_000),
                    unit("kohm", 1_000_000_000),
                    unit("Mohm", 1_000_000_000_000L),
                    unit("Gohm", 1_000_000_000_000_000L))),
    LENGTH("um", 1e-6, "m", List.of(unit("um", 1), unit("mm", 1_000), unit("cm", 10_000), unit("m", 1_000_000))),
    AREA("um2", 1e-12, "mm2", List.of(unit("mm2", 1_000_000))),
    TIME("ms", 1e-3, "s", List.of(unit("ms", 1), unit("s", 1_000), unit("min", 60_000), unit("h", 3_600_000))),
    FREQUENCY("mHz", 1e-3, "Hz", List.of(unit("mHz", 1), unit("Hz", 1_000), unit("kHz", 1_000_000))),
    CAPACITANCE(
            "fF",
            1e-15,
            "F",
            List.of(unit("fF", 1), unit("pF", 1_000), unit("nF", 1_000_000), unit("uF", 1_000_000_000))),
    CAPACITANCE_PER_LENGTH(
            "fF/m", 1e-15, "pF/m", List.of(unit("fF/m", 1), unit("pF/m", 1_000), unit("nF/m", 1_000_000))),
    POWER("mW", 1e-3, "W", List.of(unit("mW", 1), unit("W", 1_000), unit("kW", 1_000_000), unit("VA", 1_000))),
    TEMPERATURE("mdegC", 1e-3, "degC", List.of(unit("degC", 1_000), unit("C", 1_000))),
    RATIO("ppm", 1e-6, "%", List.of(unit("ppm", 1), unit("%", 10_000))),
    PRICE("hundredths", 1e-2, "money", List.of());

    private final String baseUnit;
    private final double toSi;
    private final String customary;
    private final List<Unit> units;

    Dimension(String baseUnit, double toSi, String customary, List<Unit> units) {
        this.baseUnit = baseUnit;
        this.toSi = toSi;
        this.customary = customary;
        this.units = units;
    }

    /** A unit that may be written in a file. */
    public record Unit(String symbol, long baseUnits) {}

    private static Unit unit(String symbol, long baseUnits) {
        return new Unit(symbol, baseUnits);
    }

    public String baseUnit() {
        return baseUnit;
    }

    public double toSi() {
        return toSi;
    }

    /** The unit named in the message when a number stands without one. */
    public String customary() {
        return customary;
    }

    public List<Unit> units() {
        return units;
    }
}
