package leadwright.planner.foresee;

import java.util.Optional;
import leadwright.catalog.kit.Accuracy;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.planner.plan.Obligation;

/** Amounts and accuracies of readings. */
public final class Amounts {
    private Amounts() {}

    /** In what a reading is given. */
    public static Dimension dimension(Obligation what) {
        return switch (what.quantity()) {
            case EARTH_RESISTANCE, BONDING_RESISTANCE, INSULATION_RESISTANCE -> Dimension.RESISTANCE;
            case SUPPLY_VOLTAGE, BONDING_VOLTAGE -> Dimension.VOLTAGE;
            default -> Dimension.CURRENT;
        };
    }

    /** Three figures. */
    public static Quantity rounded(Dimension dimension, double si) {
        return rounded(dimension, si, 0);
    }

    /** @param direction below zero to round down, above zero to round up, zero to the nearest */
    static Quantity rounded(Dimension dimension, double si, int direction) {
        double base = si / dimension.toSi();
        if (Math.abs(base) < 1) {
            return new Quantity(dimension, direction > 0 && base > 0 ? 1 : 0);
        }
        double step = Math.pow(10, Math.max(0, Math.floor(Math.log10(Math.abs(base))) - 2));
        double figures = base / step;
        double rounded = direction < 0 ? Math.floor(figures) : direction > 0 ? Math.ceil(figures) : Math.rint(figures);
        return new Quantity(dimension, Math.round(rounded * step));
    }

    /**
     * The accuracy that a kit states for a function; where it states none, what is common for the class of testers: 15 % of a
     * leakage current, 30 % of a resistance (IEC 61557-16, from memory).
     *
     * @param function {@code leakage}, {@code earth}
     */
    public static Accuracy accuracy(Kit kit, String function) {
        return Optional.ofNullable(kit.tester().accuracy().get(function))
                .orElse(
                        function.equals("leakage")
                                ? new Accuracy(new Quantity(Dimension.RATIO, 150_000), Quantity.microAmperes(5))
                                : new Accuracy(new Quantity(Dimension.RATIO, 300_000), Quantity.milliOhms(20)));
    }
}
