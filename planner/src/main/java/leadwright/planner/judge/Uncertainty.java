package leadwright.planner.judge;

import leadwright.catalog.kit.Accuracy;
import leadwright.catalog.quantity.Quantity;

/**
 * Measurement uncertainty from what a tester's accuracy states. The statement, a share of the reading and a floor, is
 * taken for the half-width of a rectangular distribution, so that its standard uncertainty is the half-width over the root
 * of three (GUM, JCGM 100:2008, 4.3.7). Coverage factor 2.
 */
public final class Uncertainty {

    /** Coverage factor of every expanded uncertainty here. */
    public static final int COVERAGE = 2;

    private static final double MILLION = 1e6;

    private Uncertainty() {}

    /** Standard uncertainty of a value that lies anywhere within a half-width. */
    public static double ofHalfWidth(double halfWidth) {
        return halfWidth / StrictMath.sqrt(3);
    }

    /** Of a sum of things that know nothing of each other: root of the sum of squares (GUM 5.1.2). */
    public static double independent(double... standard) {
        double sum = 0;
        for (double each : standard) {
            sum += each * each;
        }
        return StrictMath.sqrt(sum);
    }

    /** Of a sum of things that err together, such as readings of one instrument: plain sum (GUM 5.2.2). */
    public static double together(double... standard) {
        double sum = 0;
        for (double each : standard) {
            sum += each;
        }
        return sum;
    }

    /** Half-width of the tester's statement at an amount, in the amount's base unit. */
    static double halfWidth(Accuracy accuracy, double amount) {
        return StrictMath.abs(amount) * accuracy.reading().amount() / MILLION
                + accuracy.floor().amount();
    }

    /** The expanded uncertainty as a quantity, rounded up so that a guard band is never too small. */
    static Quantity expanded(Quantity like, double standard) {
        return Quantity.of(like.dimension(), (long) StrictMath.ceil(COVERAGE * standard));
    }

    /**
     * Probability that a value conforms to an upper limit (JCGM 106:2012, 7.3): the normal distribution function of the
     * distance in standard uncertainties. For a lower limit give the distance the other way round.
     *
     * @param distance from the value to the limit, above zero where the value is inside
     * @param standard standard uncertainty, above zero
     */
    public static double conformance(double distance, double standard) {
        return normal(distance / standard);
    }

    /**
     * The normal distribution function, to 1e-7 and better; by the expansion of the complementary error function in
     * Abramowitz and Stegun, 7.1.5 (series) near zero and 7.1.14 (continued fraction) far from it.
     */
    public static double normal(double z) {
        double x = StrictMath.abs(z) / StrictMath.sqrt(2);
        double tail = x < 3 ? 1 - series(x) : fraction(x);
        return z > 0 ? 1 - tail / 2 : tail / 2;
    }

    private static double series(double x) {
        double term = x;
        double sum = x;
        for (int n = 1; n < 120; n++) {
            term *= -x * x / n;
            sum += term / (2 * n + 1);
        }
        return 2 / StrictMath.sqrt(StrictMath.PI) * sum;
    }

    private static double fraction(double x) {
        double below = 0;
        for (int n = 60; n > 0; n--) {
            below = n / 2.0 / (x + below);
        }
        return StrictMath.exp(-x * x) / StrictMath.sqrt(StrictMath.PI) / (x + below);
    }
}
