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
import leadwright.catalog.text.Fields;

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

    private Conductors(
            List<Conductor> byArea,
            SortedMap<Integer, Conductor> byAwg,
            SortedMap<BigDecimal, BigDecimal> factorsTo20,
            SortedMap<String, BigDecimal> constants) {
        this.byArea = List.copyOf(byArea);
        this.byAwg = byAwg;
        this.factorsTo20 = Collections.unmodifiableSortedMap(factorsTo20);
        this.constants = constants;
    }

    private static final class BuiltIn {
        private static final Conductors TABLE = load();
    }

    /** The catalog's own table. */
    public static Conductors builtIn() {
        return BuiltIn.TABLE;
    }

    private static Conductors load() {
        return TableFile.read("conductors.yaml", "conductors/1", top -> {
            List<Conductor> areas = new ArrayList<>();
            top.rows("class-5").forEach(row -> areas.add(byArea(row, Conductor.Basis.CLASS_5)));
            top.rows("small").forEach(row -> areas.add(byArea(row, Conductor.Basis.SMALL)));
            SortedMap<Integer, Conductor> byAwg = new TreeMap<>();
            top.rows("awg").forEach(row -> byAwg.put(row.whole("awg", 0, 40), byAwg(row)));
            SortedMap<BigDecimal, BigDecimal> factors = new TreeMap<>();
            top.rows("factors").forEach(row -> factors.put(row.decimal("celsius"), confirmed(row, "to-20")));
            SortedMap<String, BigDecimal> constants =
                    Rows.byKey(top, "constants", "id", row -> confirmed(row, "value"));
            return () -> new Conductors(areas, byAwg, factors, constants);
        });
    }

    /** A number of a row whose origin is checked, and shown by the file alone. */
    private static BigDecimal confirmed(Fields row, String key) {
        Origin.of(row);
        return row.decimal(key);
    }

    private static Conductor byArea(Fields row, Conductor.Basis basis) {
        BigDecimal mm2 = row.decimal("mm2");
        return new Conductor(
                mm2.toPlainString() + " mm2",
                area(mm2),
                perMetre(row.decimal("plain")),
                row.optionalDecimal("tinned").map(Conductors::perMetre),
                basis,
                Origin.of(row));
    }

    private static Conductor byAwg(Fields row) {
        row.decimal("diameter");
        return new Conductor(
                "AWG " + row.whole("awg", 0, 40),
                area(row.decimal("mm2")),
                perMetre(row.decimal("ohm-per-km")),
                Optional.empty(),
                Conductor.Basis.AWG,
                Origin.of(row));
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
        return factorsTo20;
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
