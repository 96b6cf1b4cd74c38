package leadwright.planner.foresee;

import java.util.Arrays;
import java.util.function.Predicate;
import org.ejml.data.Complex_F64;

/**
 * Between what a reading may lie when each value of its circuit lies in its own span.
 *
 * <p>Needs: a circuit with spans. Gives: least, nominal and greatest reading. Method: each value is put to that end of its span which
 * moves the reading the right way, by the derivatives of the adjoint network, and again from there until nothing changes. Where
 * the reading may pass through zero the least is zero. Cost: a few solutions of the circuit. Proof: none; what is found is reached by a
 * choice of values, and a test draws values within the spans that must not lie outside.
 */
public final class Bands {
    private static final int ROUNDS = 6;

    private Bands() {}

    /** In the reading's SI unit. */
    record Band(double low, double nominal, double high) {}

    /** Spans as they stand. */
    static Band of(Model model) {
        return of(model, each -> true, 1);
    }

    /** With assumed values free from a tenth of what they are assumed to be at least to ten times what they are at most. */
    static Band firm(Model model) {
        return of(model, each -> true, 10);
    }

    /** The band when only some values are free; the others stay nominal. */
    static Band of(Model model, Predicate<Parameter> free) {
        return of(model, free, 1);
    }

    private static Band of(Model model, Predicate<Parameter> free, double wider) {
        double[] start = model.nominal();
        Model.State nominal = model.state(start);
        double high = extreme(model, start, nominal, free, wider, true);
        double low = extreme(model, start, nominal, free, wider, false);
        return new Band(low, nominal.magnitude(), high);
    }

    private static double extreme(
            Model model,
            double[] start,
            Model.State nominal,
            Predicate<Parameter> free,
            double wider,
            boolean greatest) {
        double[] at = start.clone();
        Model.State state = nominal;
        double best = nominal.magnitude();
        for (int round = 0; round < ROUNDS; round++) {
            double[] before = at.clone();
            // From zero every way leads up: the direction of the strongest slope is taken for all.
            Complex_F64 direction = state.phasor().getMagnitude() > 0 ? state.phasor() : strongest(state);
            for (int p = 0; p < at.length; p++) {
                Parameter each = model.parameters().get(p);
                double slope = along(direction, state.slopes()[p]);
                if (slope != 0 && free.test(each)) {
                    double factor = each.basis() == Basis.ASSUMED ? wider : 1;
                    at[p] = slope > 0 == greatest ? each.high() * factor : each.low() / factor;
                }
            }
            if (Arrays.equals(at, before)) {
                break;
            }
            state = model.state(at);
            if (!greatest && along(nominal.phasor(), state.phasor()) <= 0) {
                return 0;
            }
            best = greatest ? Math.max(best, state.magnitude()) : Math.min(best, state.magnitude());
        }
        return best;
    }

    private static Complex_F64 strongest(Model.State state) {
        return Arrays.stream(state.slopes())
                .max((a, b) -> Double.compare(a.getMagnitude(), b.getMagnitude()))
                .orElse(new Complex_F64(1, 0));
    }

    private static double along(Complex_F64 direction, Complex_F64 other) {
        return direction.real * other.real + direction.imaginary * other.imaginary;
    }
}
