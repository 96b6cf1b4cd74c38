package leadwright.planner.wire;

import java.math.BigDecimal;
import java.math.RoundingMode;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.Limit;

/**
 * What the kit's own capacitance adds to a reading with mains on an applied part: {@code I = 2 pi f V C}. Whole numbers
 * throughout, rounded against the kit.
 */
final class Capacitance {
    /** 2 pi, rounded up. */
    private static final BigDecimal TWO_PI = new BigDecimal("6.2831854");
    /** Where the device states no frequency: the higher of the usual two, in millihertz. */
    private static final long UNSTATED_FREQUENCY = 60_000;

    private static final long PPM = 1_000_000;

    private Capacitance() {}

    /** Most femtofarads that keep the current within the house's share of the limit. */
    static long most(Device device, Duty duty, Limit limit, House house) {
        BigDecimal nanoamperes = BigDecimal.valueOf(limit.value().amount())
                .multiply(BigDecimal.valueOf(house.capacitanceShare().amount()))
                .divide(BigDecimal.valueOf(PPM));
        return nanoamperes
                .movePointRight(15)
                .divide(currentPerCapacitance(device, duty), 0, RoundingMode.FLOOR)
                .longValueExact();
    }

    /** Current through so many femtofarads, in nanoamperes, rounded up. */
    static long nanoamperes(Device device, Duty duty, long femtofarads) {
        return currentPerCapacitance(device, duty)
                .multiply(BigDecimal.valueOf(femtofarads))
                .movePointLeft(15)
                .setScale(0, RoundingMode.CEILING)
                .longValueExact();
    }

    /** Nanoamperes per farad: millihertz times microvolts are 1e-9 V/s. */
    private static BigDecimal currentPerCapacitance(Device device, Duty duty) {
        long millihertz = device.supply().frequency().map(Quantity::amount).orElse(UNSTATED_FREQUENCY);
        return TWO_PI.multiply(BigDecimal.valueOf(millihertz)).multiply(BigDecimal.valueOf(duty.microvolts()));
    }

    /** Whole capacitance of an item, in femtofarads, rounded up; 0 where it states no length or no capacitance. */
    static long of(KitItem item) {
        if (item.length().isEmpty() || item.capacitance().isEmpty()) {
            return 0;
        }
        return BigDecimal.valueOf(item.length().get().amount())
                .multiply(BigDecimal.valueOf(item.capacitance().get().amount()))
                .movePointLeft(6)
                .setScale(0, RoundingMode.CEILING)
                .longValueExact();
    }

    /** An item without length adds nothing worth counting; one with a length and no stated capacitance is unknown. */
    static boolean known(KitItem item) {
        return item.length().isEmpty() || item.capacitance().isPresent();
    }
}
