package leadwright.planner.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import leadwright.catalog.kit.Accuracy;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.rules.Mark;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Published examples of decision rules and uncertainty, each with its place. Where the answer is from memory and only the
 * arithmetic was checked, the line says so.
 */
class PublishedExamplesTest {

    // ---- JCGM 106:2012, conformance probability

    /** JCGM 106:2012, table 1 of 7.3: z for a wanted probability; values calculated. */
    @ParameterizedTest(name = "{0}: z {1}")
    @CsvSource({"0.80, 0.84", "0.90, 1.28", "0.95, 1.64", "0.99, 2.33", "0.999, 3.09"})
    void zOfOneSidedConformance(double probability, double z) {
        assertThat(Uncertainty.conformance(z, 1)).isCloseTo(probability, within(0.0015));
    }

    /** JCGM 106:2012, breakdown of a Zener diode: -5.47 V, u 0.05 V, at most -5.40 V; 0.92 (from memory, arithmetic checked). */
    @Test
    void zenerDiode() {
        assertThat(Uncertainty.conformance(-5.40 - -5.47, 0.05)).isCloseTo(0.92, within(0.005));
    }

    /** JCGM 106:2012, viscosity of an oil: 13.6, u 1.8, between 12.5 and 16.3; 0.66 (from memory, arithmetic checked). */
    @Test
    void oilBetweenTwoLimits() {
        double between = Uncertainty.conformance(16.3 - 13.6, 1.8) - Uncertainty.conformance(12.5 - 13.6, 1.8);
        assertThat(between).isCloseTo(0.66, within(0.005));
    }

    /**
     * JCGM 106:2012, speed limit of 100 km/h, u 2 % of the reading: at 99.9 % one acts above 107 km/h (from memory,
     * arithmetic checked: 106.6). Guarded rejection: the reading whose probability to be above the limit is 99.9 %.
     */
    @Test
    void speedLimit() {
        double acts = 100;
        while (Uncertainty.conformance(100 - acts, 0.02 * acts) > 0.001) {
            acts += 0.01;
        }
        assertThat(acts).isCloseTo(106.6, within(0.05));
        assertThat(Math.ceil(acts)).isEqualTo(107);
    }

    /**
     * JCGM 106:2012, 9.5, precision resistors: N(1500, 0.12) ohm, tolerance 0.2 ohm, u 0.04 ohm, accepted within 0.18 ohm:
     * global risks 1 % (consumer's) and 7 % (producer's), as remembered; calculated 0.00988 and 0.0690. The other rows are
     * calculated.
     */
    @ParameterizedTest(name = "accepted within {0} ohm")
    @CsvSource({
        "0.18, 0.00988, 0.0690",
        "0.20, 0.0189, 0.0372",
        "0.19, 0.0140, 0.0515",
        "0.17, 0.0067, 0.0901",
        "0.16, 0.0043, 0.1147",
        "0.14, 0.0016, 0.1744"
    })
    void precisionResistors(double half, double consumer, double producer) {
        DoubleUnaryOperator accepted =
                true_ -> Uncertainty.conformance(half - true_, 0.04) - Uncertainty.conformance(-half - true_, 0.04);
        DoubleUnaryOperator density = x -> Math.exp(-x * x / (2 * 0.0144)) / Math.sqrt(2 * Math.PI * 0.0144);
        double inside = integral(x -> density.applyAsDouble(x) * (1 - accepted.applyAsDouble(x)), -0.2, 0.2);
        double outside = 2 * integral(x -> density.applyAsDouble(x) * accepted.applyAsDouble(x), 0.2, 1.2);
        assertThat(outside).isCloseTo(consumer, within(0.00006));
        assertThat(inside).isCloseTo(producer, within(0.00006));
    }

    /**
     * JCGM 106:2012, 9.5.4, ball bearings: error motion of gamma density (4, 4 per um), at most 2 um, u 0.25 um. Out of
     * tolerance without inspection 4.2 %; consumer's risk 0.8 % with the acceptance limit at the limit, 0.1 % at 1.67 um.
     */
    @Test
    void ballBearings() {
        DoubleUnaryOperator density = x -> Math.pow(4, 4) * x * x * x * Math.exp(-4 * x) / 6;
        assertThat(integral(density, 2, 12)).isCloseTo(0.042, within(0.0005));
        DoubleUnaryOperator atLimit = x -> density.applyAsDouble(x) * Uncertainty.conformance(2 - x, 0.25);
        DoubleUnaryOperator guarded = x -> density.applyAsDouble(x) * Uncertainty.conformance(1.67183 - x, 0.25);
        assertThat(integral(atLimit, 2, 12)).isCloseTo(0.008, within(0.0005));
        assertThat(integral(guarded, 2, 12)).isCloseTo(0.001, within(0.00001));
    }

    /** Simpson's rule in 4000 parts. */
    private static double integral(DoubleUnaryOperator f, double from, double to) {
        int parts = 4000;
        double step = (to - from) / parts;
        double sum = f.applyAsDouble(from) + f.applyAsDouble(to);
        for (int i = 1; i < parts; i++) {
            sum += (i % 2 == 0 ? 2 : 4) * f.applyAsDouble(from + i * step);
        }
        return sum * step / 3;
    }

    // ---- ILAC-G8:09/2019

    /** ILAC-G8: a guard band of U (k = 2) leaves a risk of wrong acceptance below 2.5 %; 2.28 % calculated. */
    @Test
    void guardBandOfTheExpandedUncertainty() {
        double risk = 1 - Uncertainty.conformance(Uncertainty.COVERAGE, 1);
        assertThat(risk).isLessThan(0.025).isCloseTo(0.0228, within(0.0001));
    }

    /** ILAC-G8, multipliers r of U for a risk, w = r U: half the one-sided z; calculated. */
    @ParameterizedTest(name = "risk {0}: r {1}")
    @CsvSource({"0.05, 0.82", "0.025, 0.98", "0.01, 1.17", "0.001, 1.55"})
    void multipliersOfTheGuardBand(double risk, double r) {
        // The printed r has two digits.
        double most = 1 - Uncertainty.conformance((r - 0.01) * Uncertainty.COVERAGE, 1);
        double least = 1 - Uncertainty.conformance((r + 0.01) * Uncertainty.COVERAGE, 1);
        assertThat(risk).isBetween(least, most);
    }

    /** ILAC-G8, the statements that are not yes or no: pass, conditional pass, conditional fail, fail, with their edges. */
    @Test
    void fourStatementsAndTheirEdges() {
        Limit most = limit(Limit.Bound.AT_MOST, 100);
        Limit least = limit(Limit.Bound.AT_LEAST, 100);
        Optional<Quantity> band = Optional.of(Quantity.microAmperes(10));
        List<Verdict> rising = List.of(90L, 91L, 100L, 101L, 110L, 111L).stream()
                .map(value -> Decision.of(most, Quantity.microAmperes(value), band))
                .toList();
        assertThat(rising)
                .containsExactly(
                        Verdict.PASS,
                        Verdict.PASS_INSIDE_UNCERTAINTY,
                        Verdict.PASS_INSIDE_UNCERTAINTY,
                        Verdict.FAIL_INSIDE_UNCERTAINTY,
                        Verdict.FAIL_INSIDE_UNCERTAINTY,
                        Verdict.FAIL);
        List<Verdict> falling = List.of(110L, 109L, 100L, 99L, 90L, 89L).stream()
                .map(value -> Decision.of(least, Quantity.microAmperes(value), band))
                .toList();
        assertThat(falling).isEqualTo(rising);
    }

    private static Limit limit(Limit.Bound bound, long microAmperes) {
        return new Limit("l", bound, Quantity.microAmperes(microAmperes), "c", Mark.B, List.of(), true);
    }

    /**
     * The project's own sum with the 15 % that IEC 61557-16 allows at most: 10 uA, half-width 1.5 uA, u 0.87 uA, guard band
     * 1.73 uA, accepted up to 8.27 uA.
     */
    @Test
    void tenMicroamperesAtFifteenPerCent() {
        Accuracy allowed = new Accuracy(Quantity.of(Dimension.RATIO, 150_000), Quantity.of(Dimension.CURRENT, 0));
        double u = Uncertainty.ofHalfWidth(Uncertainty.halfWidth(allowed, 10_000));
        assertThat(u / 1000).isCloseTo(0.87, within(0.005));
        Quantity band = Uncertainty.expanded(Quantity.microAmperes(10), u);
        assertThat(band.amount() / 1000.0).isCloseTo(1.73, within(0.005));
        assertThat(Decision.acceptance(limit(Limit.Bound.AT_MOST, 10), band).amount() / 1000.0)
                .isCloseTo(8.27, within(0.005));
    }

    // ---- GUM, JCGM 100:2008

    /** GUM 5.1.5: u 12 uV and 8.7 uV make 15 uV (14.82 uV calculated). */
    @Test
    void twoIndependentParts() {
        assertThat(Uncertainty.independent(12, 8.7)).isCloseTo(14.82, within(0.005));
    }

    /** GUM 4.3.7, second example: a voltmeter stated to 14e-6 of 0.928571 V and 2e-6 of 1 V: 15 uV, u 8.7 uV. */
    @Test
    void aStatementOfAccuracyIsAHalfWidth() {
        double half = 14e-6 * 0.928571 + 2e-6;
        assertThat(half * 1e6).isCloseTo(15, within(0.005));
        assertThat(Uncertainty.ofHalfWidth(half) * 1e6).isCloseTo(8.66, within(0.02));
    }

    /** GUM H.1, end gauge: 5.8, 3.9 and 6.7 nm make 9.7 nm; all parts make 32 nm. */
    @Test
    void endGauge() {
        assertThat(Uncertainty.independent(5.8, 3.9, 6.7)).isCloseTo(9.68, within(0.005));
        assertThat(Uncertainty.independent(25, 16.6, 6.7, 5.8, 3.9, 2.9)).isCloseTo(31.66, within(0.01));
    }

    /** GUM 5.2.2: ten resistors of 100 mohm each, compared with one standard: 1 ohm, and not the root of squares, 0.32 ohm. */
    @Test
    void tenResistorsOfOneStandard() {
        double[] ten = new double[10];
        java.util.Arrays.fill(ten, 0.1);
        assertThat(Uncertainty.together(ten)).isCloseTo(1, within(1e-12));
        assertThat(Uncertainty.independent(ten)).isCloseTo(0.316, within(0.001));
    }

    /** The leads' reading and the device's, by one tester, add up: see 5.2.2. */
    @Test
    void nullingHereAddsTheLeadsOwnUncertainty() {
        Judged r05 = Sets.reading(Sets.judged(Sets.plan(), "leads-in-the-value.yaml", Sets.HOUSE), "R05");
        // At 300 mohm and 62 mohm of leads: 2 % of 362 and 10, 2 % of 62 and 10, and 1 of drift: 29.48 mohm.
        assertThat(r05.guardBand().orElseThrow().amount() / 1000.0).isCloseTo(2 * 29.48 / Math.sqrt(3), within(0.002));
        assertThat(r05.leadsOff().orElseThrow().text()).isEqualTo("62 mohm");
        assertThat(r05.counted().orElseThrow().text()).isEqualTo("278 mohm");
    }

    /** Far from the middle the distribution keeps its digits. */
    @Test
    void theDistributionFarOut() {
        assertThat(Uncertainty.normal(-6)).isCloseTo(9.8659e-10, within(1e-14));
        assertThat(Uncertainty.normal(-4.2)).isCloseTo(1.3346e-5, within(1e-9));
        assertThat(Uncertainty.normal(-4.25)).isCloseTo(1.0689e-5, within(1e-9));
        assertThat(Uncertainty.normal(0)).isEqualTo(0.5);
    }
}
