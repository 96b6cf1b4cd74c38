package leadwright.planner.foresee;

import java.util.Optional;

/**
 * What is known of the day.
 *
 * @param celsius temperature of the leads, °C
 * @param volts mains voltage as read; the outlet's rated one where not given
 */
public record Situation(double celsius, Optional<Double> volts) {
    /** The tables' 20 °C, rated voltage. */
    public static final Situation ORDINARY = new Situation(20, Optional.empty());

    /** @throws IllegalArgumentException for a temperature or a voltage that no bench has */
    public Situation {
        if (!(celsius >= -20 && celsius <= 60)) {
            throw new IllegalArgumentException("temperature " + celsius + " is outside -20 to 60 degrees Celsius");
        }
        volts.ifPresent(each -> {
            if (!(each >= 50 && each <= 500)) {
                throw new IllegalArgumentException("supply of " + each + " V is outside 50 to 500 V");
            }
        });
    }

    /** One line, the same for equal situations. */
    public String text() {
        return "leads at " + plain(celsius) + " °C, mains "
                + volts.map(each -> plain(each) + " V").orElse("as rated");
    }

    private static String plain(double value) {
        return java.math.BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }
}
