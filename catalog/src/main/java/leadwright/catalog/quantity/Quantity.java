package leadwright.catalog.quantity;

/**
 * A physical amount held in whole numbers of a unit well below any tester's resolution, so that amounts are compared
 * exactly and never rounded towards a pass. Decimals exist only at the border, see {@link Quantities}.
 *
 * @param dimension what is measured; fixes the unit of {@code amount}
 * @param amount whole number of {@link Dimension#baseUnit()}
 */
public record Quantity(Dimension dimension, long amount) implements Comparable<Quantity> {

    public static Quantity of(Dimension dimension, long amount) {
        return new Quantity(dimension, amount);
    }

    public static Quantity seconds(long seconds) {
        return new Quantity(Dimension.TIME, Math.multiplyExact(seconds, 1000L));
    }

    public static Quantity microAmperes(long microAmperes) {
        return new Quantity(Dimension.CURRENT, Math.multiplyExact(microAmperes, 1000L));
    }

    public static Quantity milliOhms(long milliOhms) {
        return new Quantity(Dimension.RESISTANCE, Math.multiplyExact(milliOhms, 1000L));
    }

    public static Quantity volts(long volts) {
        return new Quantity(Dimension.VOLTAGE, Math.multiplyExact(volts, 1_000_000L));
    }

    public static Quantity millimetres(long millimetres) {
        return new Quantity(Dimension.LENGTH, Math.multiplyExact(millimetres, 1000L));
    }

    /** @throws IllegalArgumentException when the dimensions differ: such amounts have no order */
    @Override
    public int compareTo(Quantity other) {
        if (dimension != other.dimension) {
            throw new IllegalArgumentException("cannot compare " + text() + " with " + other.text());
        }
        return Long.compare(amount, other.amount);
    }

    public boolean atMost(Quantity other) {
        return compareTo(other) <= 0;
    }

    public boolean atLeast(Quantity other) {
        return compareTo(other) >= 0;
    }

    public Quantity plus(Quantity other) {
        if (dimension != other.dimension) {
            throw new IllegalArgumentException("cannot add " + text() + " and " + other.text());
        }
        return new Quantity(dimension, Math.addExact(amount, other.amount));
    }

    public Quantity times(long factor) {
        return new Quantity(dimension, Math.multiplyExact(amount, factor));
    }

    /** The amount in the dimension's base unit as a decimal, for physics and display only, never for a comparison. */
    public double inSi() {
        return amount * dimension.toSi();
    }

    /** Exact ASCII text with the customary unit, as in the input files: {@code 50 uA}, {@code 300 mohm}, {@code 1.5 mm2}. */
    public String text() {
        return Quantities.text(this);
    }

    @Override
    public String toString() {
        return text();
    }
}
