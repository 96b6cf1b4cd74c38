package leadwright.planner.foresee;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.ejml.data.Complex_F64;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Nothing that values within their spans can give lies outside a band; nothing in it is out of their reach. */
class BandsTest {
    private static final int CIRCUITS = 200;
    private static final int SMALL = 12;
    /** Of hundreds of volts about, eleven digits are known; this is left of them in a slope by steps of a hundredth, V. */
    private static final double ROUNDING = 5e-7;

    /** Below this a current is nothing, A. */
    private static final double NOTHING = 1e-12;

    private static List<HookupCircuits.Case> cases;

    @BeforeAll
    static void draw() {
        cases = HookupCircuits.drawn(CIRCUITS);
    }

    private static void inside(
            List<String> outside, HookupCircuits.Case each, Bands.Band band, double read, String how) {
        double slack = 1e-6 * Math.abs(read) + NOTHING;
        if (!(read >= band.low() - slack && read <= band.high() + slack)) {
            outside.add(each + ", " + how + ": " + read + " outside " + band);
        }
    }

    private static void allInside(List<HookupCircuits.Case> some, int firstSeed, int draws, boolean wider) {
        List<String> outside = new ArrayList<>();
        for (HookupCircuits.Case each : some) {
            Model model = new Model(each.setup());
            Bands.Band band = wider ? Bands.firm(model) : Bands.of(model);
            for (int seed = firstSeed; seed < firstSeed + draws; seed++) {
                inside(outside, each, band, model.read(drawn(model, seed, wider ? 10 : 1)), "seed " + seed);
            }
        }
        assertThat(outside).isEmpty();
    }

    @Test
    void values_within_their_spans_drawn_by_seeds_1_to_60() {
        allInside(cases, 1, 60, false);
    }

    @Test
    void values_of_ten_times_the_spans_drawn_by_seeds_101_to_130() {
        allInside(cases, 101, 30, true);
    }

    /** Every value at an end of its span, in every way, where there are few of them. */
    @Test
    void all_corners_of_small_circuits() {
        List<String> outside = new ArrayList<>();
        int small = 0;
        for (HookupCircuits.Case each : cases) {
            Model model = new Model(each.setup());
            int count = model.parameters().size();
            if (count > SMALL) {
                continue;
            }
            small++;
            Bands.Band band = Bands.of(model);
            double least = Double.MAX_VALUE;
            double most = 0;
            for (int corner = 0; corner < 1 << count; corner++) {
                double[] values = new double[count];
                for (int p = 0; p < count; p++) {
                    Parameter parameter = model.parameters().get(p);
                    values[p] = (corner >> p & 1) == 0 ? parameter.low() : parameter.high();
                }
                double read = model.read(values);
                least = Math.min(least, read);
                most = Math.max(most, read);
                inside(outside, each, band, read, "corner " + corner);
            }
            // What is greatest is reached, not only allowed for.
            if (most > NOTHING) {
                assertThat(band.high()).as(each + " high").isLessThanOrEqualTo(most * 1.001);
            }
        }
        assertThat(outside).isEmpty();
        assertThat(small).isGreaterThanOrEqualTo(8);
    }

    /** With nothing free, or with spans of no width, a band is its nominal value. */
    @Test
    void nothing_free_leaves_the_nominal_value() {
        for (HookupCircuits.Case each : cases) {
            Bands.Band band = Bands.of(new Model(each.setup()), parameter -> false);
            double tolerance = 1e-9 * band.nominal();
            assertThat(band.high()).isCloseTo(band.nominal(), within(tolerance));
            assertThat(band.low()).isCloseTo(band.nominal(), within(tolerance));
        }
    }

    /** The slopes that the bands follow, against small steps. */
    @Test
    void slopes_agree_with_differences() {
        for (HookupCircuits.Case each : cases.subList(0, 60)) {
            Model model = new Model(each.setup());
            double[] at = model.nominal();
            Model.State state = model.state(at);
            for (int p = 0; p < at.length; p++) {
                double step = 1e-2;
                Complex_F64 more = model.state(moved(at, p, 1 + step)).phasor();
                Complex_F64 less = model.state(moved(at, p, 1 - step)).phasor();
                Complex_F64 slope = more.minus(less).divide(new Complex_F64(2 * step, 0));
                assertThat(slope.minus(state.slopes()[p]).getMagnitude())
                        .as(each + " " + model.parameters().get(p).id())
                        .isLessThanOrEqualTo(1e-3 * state.slopes()[p].getMagnitude() + ROUNDING);
            }
        }
    }

    private static double[] moved(double[] at, int p, double factor) {
        double[] moved = at.clone();
        moved[p] *= factor;
        return moved;
    }

    /** A third of the draws at the ends of the spans alone, a third within, a third mixed; within by equal ratios. */
    private static double[] drawn(Model model, int seed, double wider) {
        Random random = new Random(seed * 0x9E3779B97F4A7C15L);
        double[] values = new double[model.parameters().size()];
        for (int p = 0; p < values.length; p++) {
            Parameter each = model.parameters().get(p);
            double factor = each.basis() == Basis.ASSUMED ? wider : 1;
            double low = each.low() / factor;
            double high = each.high() * factor;
            boolean end = seed % 3 == 0 || seed % 3 == 1 && random.nextBoolean();
            double share = end ? random.nextInt(2) : random.nextDouble();
            values[p] = low * Math.pow(high / low, share);
        }
        return values;
    }
}
