package leadwright.catalog.table;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantities;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.quantity.QuantityException;
import leadwright.catalog.rules.Mark;

/**
 * Resistance of copper conductors: IEC 60228 class 5 by cross-section, AWG by number, and what temperature does to
 * either.
 */
public final class Conductors {
    private static final Pattern AWG = Pattern.compile("(?:AWG\\s*(\\d+)|(\\d+)\\s*AWG)");

    private final List<Conductor> byArea;
    private final SortedMap<Integer, Conductor> byAwg;
    private final SortedMap<BigDecimal, BigDecimal> factorsTo20;
    private final SortedMap<String, BigDecimal> constants;

    private Conductors(TableFile file) {
        List<Conductor> areas = new ArrayList<>();
        file.rows("class-5").forEach(row -> areas.add(byArea(row, Conductor.Basis.CLASS_5)));
        file.rows("small").forEach(row -> areas.add(byArea(row, Conductor.Basis.SMALL)));
        byArea = List.copyOf(areas);
        byAwg = new TreeMap<>();
        file.rows("awg").forEach(this::addAwg);
        constants = new TreeMap<>();
        for (Row row : file.rows("constants")) {
            constants.put(row.needed("id"), row.number("value"));
            row.origin();
            row.finish();
        }
        factorsTo20 = new TreeMap<>();
        for (Row row : file.rows("factors")) {
            factorsTo20.put(row.number("celsius"), row.number("to-20"));
            row.origin();
            row.finish();
        }
    }

    private static final class BuiltIn {
        private static final Conductors TABLE = new Conductors(TableFile.load("conductors.yaml", "conductors/1"));
    }

    /** The catalog's own table. */
    public static Conductors builtIn() {
        return BuiltIn.TABLE;
    }

    private static Conductor byArea(Row row, Conductor.Basis basis) {
        BigDecimal mm2 = row.number("mm2");
        Conductor conductor = new Conductor(
                mm2.toPlainString() + " mm2",
                area(mm2),
                perMetre(row.number("plain")),
                row.optionalNumber("tinned").map(Conductors::perMetre),
                basis,
                row.origin());
        row.finish();
        return conductor;
    }

    private void addAwg(Row row) {
        int number = row.number("awg").intValueExact();
        row.number("diameter");
        Conductor conductor = new Conductor(
                "AWG " + number,
                area(row.number("mm2")),
                perMetre(row.number("ohm-per-km")),
                Optional.empty(),
                Conductor.Basis.AWG,
                row.origin());
        row.finish();
        byAwg.put(number, conductor);
    }

    private static Quantity area(BigDecimal mm2) {
        return new Quantity(Dimension.AREA, mm2.movePointRight(6).longValueExact());
    }

    /** One ohm per kilometre is a thousand microohms per metre. */
    private static Quantity perMetre(BigDecimal ohmPerKm) {
        return new Quantity(Dimension.RESISTANCE, ohmPerKm.movePointRight(3).longValueExact());
    }

    /**
     * The conductor that a kit item states.
     *
     * @param written a cross-section such as {@code 1.5 mm2}, or {@code AWG 18} or {@code 18 AWG}
     * @return empty for an AWG number that the table does not have
     * @throws QuantityException when the text is neither
     */
    public Optional<Conductor> find(String written) {
        Matcher matcher = AWG.matcher(written.trim());
        if (matcher.matches()) {
            String number = matcher.group(1) != null ? matcher.group(1) : matcher.group(2);
            return Optional.ofNullable(byAwg.get(Integer.parseInt(number)));
        }
        return Optional.of(ofArea(Quantities.parse(written, Dimension.AREA)));
    }

    /** The conductor of this cross-section: the table's row, or the computed value where it has none. */
    public Conductor ofArea(Quantity area) {
        if (area.dimension() != Dimension.AREA || area.amount() <= 0) {
            throw new QuantityException("'" + area.text() + "' is not a cross-section");
        }
        return byArea.stream()
                .filter(conductor -> conductor.area().equals(area))
                .findFirst()
                .orElseGet(() -> computed(area));
    }

    private Conductor computed(Quantity area) {
        BigDecimal mm2 = BigDecimal.valueOf(area.amount(), 6);
        BigDecimal microOhm = constant("resistivity")
                .multiply(constant("class-5-most"))
                .movePointRight(3)
                .divide(mm2, 0, RoundingMode.CEILING);
        return new Conductor(
                mm2.stripTrailingZeros().toPlainString() + " mm2",
                area,
                new Quantity(Dimension.RESISTANCE, microOhm.longValueExact()),
                Optional.empty(),
                Conductor.Basis.COMPUTED,
                new Origin(Mark.D, List.of("R7", "W2"), false));
    }

    /** Rows by cross-section, in the order of the file. */
    public List<Conductor> byArea() {
        return byArea;
    }

    /**
     * A constant of the table.
     *
     * @param id {@code resistivity} (Ω mm²/km at 20 °C), {@code inferred-zero} (°C below zero),
     *     {@code coefficient-20}, {@code coefficient-60228} (1/K), {@code class-5-most}
     */
    public BigDecimal constant(String id) {
        BigDecimal value = constants.get(id);
        if (value == null) {
            throw new IllegalArgumentException("no constant '" + id + "'");
        }
        return value;
    }

    /** The standard's printed factors, by temperature in °C: reading times factor is the value at 20 °C. */
    public SortedMap<BigDecimal, BigDecimal> factorsTo20() {
        return Collections.unmodifiableSortedMap(factorsTo20);
    }

    /**
     * How much more a copper conductor resists at one temperature than at another, (234.5 + to) / (234.5 + from).
     *
     * @param from °C
     * @param to °C
     */
    public double warming(double from, double to) {
        return Wire.warming(1 / constant("inferred-zero").doubleValue(), 0, from, to);
    }

    /** IEC 60228's factor that brings a reading at this temperature (°C) to 20 °C, 1 / (1 + 0.004 (t − 20)). */
    public double factorTo20(double celsius) {
        return Wire.warming(constant("coefficient-60228").doubleValue(), 20, celsius, 20);
    }
}
