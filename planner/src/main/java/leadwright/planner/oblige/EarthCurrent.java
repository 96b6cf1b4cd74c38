package leadwright.planner.oblige;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Comparator;
import java.util.Optional;
import leadwright.catalog.device.Supply;
import leadwright.catalog.kit.EarthTest;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.EarthTestRow;

/** The current of the earth readings: the smallest of the tester's that the rule set allows on this device. */
final class EarthCurrent {
    private EarthCurrent() {}

    /** The least current that the rule set asks for; empty where it asks for none in particular. */
    static Optional<Quantity> needed(Asking asking) {
        Supply supply = asking.device().supply();
        return asking.rules().earthTest().stream()
                .map(row -> least(row, supply.current()))
                .max(Comparator.naturalOrder());
    }

    private static Quantity least(EarthTestRow row, Optional<Quantity> rated) {
        if (row.factorOfRated().isEmpty() || rated.isEmpty()) {
            return row.atLeast();
        }
        long amount = BigDecimal.valueOf(rated.get().amount())
                .multiply(row.factorOfRated().get())
                .setScale(0, RoundingMode.CEILING)
                .longValueExact();
        Quantity multiple = Quantity.of(Dimension.CURRENT, amount);
        return multiple.atLeast(row.atLeast()) ? multiple : row.atLeast();
    }

    /** What is set on the tester; empty where it has no earth test or none of its currents is enough. */
    static Optional<Quantity> set(Asking asking) {
        Optional<Quantity> needed = needed(asking);
        return asking.tester().earthTest().map(EarthTest::currents).stream()
                .flatMap(currents -> currents.stream())
                .filter(current -> needed.map(current::atLeast).orElse(true))
                .min(Comparator.naturalOrder());
    }
}
