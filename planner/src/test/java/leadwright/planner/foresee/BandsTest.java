package leadwright.planner.foresee;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.ejml.data.Complex_F64;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Nothing that values within their spans can give lies outside a band; nothing in it is out of their reach. */
class BandsTest {
    private static final int CIRCUITS = 200;
    private static final int DRAWS = 60;
    /** Below this a current is nothing, A. */
    private static final double NOTHING = 1e-12;

    private static List<HookupCircuits.Case> cases;

    @BeforeAll
    static void draw() {
        cases = HookupCircuits.drawn(CIRCUITS);
    }

    private static void inside(List<String> outside, HookupCircuits.Case each, Bands.Band band, double read, String how) {
        double slack = 1e-6 * Math.abs(read) + NOTHING;
        if (!(read >= band.low() - slack && read <= band.high() + slack)) {
            outside.add(each + ", " + how + ": " + read + " outside " + band);
        }
    }

    @Test
    void values_within_their_spans_drawn_by_seeds_1_to_60() {
        List<String> outside = new ArrayList<>();
        for (HookupCircuits.Case each : cases) {
            Model model = new Model(each.setup());
            Bands.Band band = Bands.of(model);
            for (int seed = 1; seed <= DRAWS; seed++) {
                inside(outside, each, band, model.read(drawn(model, seed)), "seed " + seed);
            }
        }
        System.out.println(outside.size()+" outside"); outside.stream().limit(40).forEach(System.out::println);
        assertThat(outside).isEmpty();
    }

    /** A third of the draws at the ends of the spans alone, a third within, a third mixed; within by equal ratios. */
    private static double[] drawn(Model model, int seed) {
        Random random = new Random(seed * 0x9E3779B97F4A7C15L);
        double[] values = new double[model.parameters().size()];
        for (int p = 0; p < values.length; p++) {
            Parameter each = model.parameters().get(p);
            boolean end = seed % 3 == 0 || seed % 3 == 1 && random.nextBoolean();
            double share = end ? random.nextInt(2) : random.nextDouble();
            values[p] = each.low() * Math.pow(each.high() / each.low(), share);
        }
        return values;
    }
}
