package leadwright.catalog.table;

/** Resistance of a wire by its dimensions, material and temperature. Plain formulae, in one consistent set of units. */
public final class Wire {
    private Wire() {}

    /**
     * Resistance of a wire, resistivity times length over area.
     *
     * @param resistivity Ω m
     * @param length m
     * @param area m²
     * @return Ω
     */
    public static double resistance(double resistivity, double length, double area) {
        return resistivity * length / area;
    }

    /** Area of a round wire of this diameter, in the diameter's unit squared. */
    public static double area(double diameter) {
        return Math.PI * diameter * diameter / 4;
    }

    /**
     * What a resistance is multiplied by when its temperature goes from one value to another.
     *
     * @param coefficient 1/K, valid at {@code reference}
     * @param reference °C
     * @param from °C
     * @param to °C
     */
    public static double warming(double coefficient, double reference, double from, double to) {
        return (1 + coefficient * (to - reference)) / (1 + coefficient * (from - reference));
    }
}
