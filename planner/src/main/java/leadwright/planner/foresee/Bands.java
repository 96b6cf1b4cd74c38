package leadwright.planner.foresee;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.ejml.data.Complex_F64;

/**
 * Between what a reading may lie when each value of its circuit lies in its own span.
 *
 * <p>Needs: a circuit with spans. Gives: least, nominal and greatest reading. Method: the reading is the size of a phasor. How far the
 * phasor can reach in a direction is found by putting each value to that end of its span which moves it that way, by the
 * derivatives of the adjoint network, and again from there until nothing changes; a value that would go to and fro is put
 * between. So it is done for eight directions around. The greatest reading is the greatest found; the least is how far all
 * of it stays off zero in the best direction, which errs towards less; where it does not, zero. Cost: four to some dozens of
 * solutions of the circuit. Proof: none, since a reach may be a local one; a test draws values within the spans that must not lie outside.
 */
public final class Bands {
    private static final int ROUNDS = 8;
    private static final int DIRECTIONS = 8;
    private static final int REFINED = 3;

    private final Model model;
    private final Predicate<Parameter> free;
    private final double wider;
    private final double[] start;
    private final Model.State nominal;
    private final Map<List<Double>, Model.State> solved = new LinkedHashMap<>();

    private Bands(Model model, Predicate<Parameter> free, double wider) {
        this.model = model;
        this.free = free;
        this.wider = wider;
        this.start = model.nominal();
        this.nominal = state(start);
    }

    /** In the reading's SI unit. */
    public record Band(double low, double nominal, double high) {}

    /** What a circuit reads with each value in its own span, by the circuit alone: the mains voltage and the tester are not in it. */
    public static Band of(Setup setup) {
        return of(new Model(setup));
    }

    /** Spans as they stand. */
    static Band of(Model model) {
        return of(model, each -> true);
    }

    /** With assumed values free from a tenth of what they are assumed to be at least to ten times what they are at most. */
    static Band firm(Model model) {
        return new Bands(model, each -> true, 10).band();
    }

    /** The band when only some values are free; the others stay nominal. */
    static Band of(Model model, Predicate<Parameter> free) {
        return new Bands(model, free, 1).band();
    }

    private Band band() {
        // At zero, rounding makes the direction: that of the strongest slope is as good.
        Complex_F64 strongest = strongest(nominal);
        Complex_F64 ahead = unit(nominal.size() > 1e-9 * strongest.getMagnitude() ? nominal.phasor() : strongest);
        List<Complex_F64> directions = new ArrayList<>();
        for (int d = 0; d < DIRECTIONS; d++) {
            double angle = 2 * Math.PI * d / DIRECTIONS;
            directions.add(ahead.times(new Complex_F64(Math.cos(angle), Math.sin(angle))));
        }
        directions.forEach(each -> reach(each, start));
        for (int more = 0; more < REFINED; more++) {
            int before = solved.size();
            reach(unit(farthest(ahead).phasor()), farthest(ahead).values());
            Complex_F64 best = best(directions);
            Complex_F64 back = best.times(new Complex_F64(-1, 0));
            reach(back, farthestAlong(back).values());
            directions.add(unit(farthestAlong(back).phasor()));
            if (solved.size() == before) {
                break;
            }
        }
        double low = Math.max(0, off(best(directions)));
        double one = model.reading(low);
        double other = model.reading(farthest(ahead).size());
        return new Band(Math.min(one, other), model.reading(nominal.size()), Math.max(one, other));
    }

    /** How far all that was found stays off zero in a direction; below zero where it does not. */
    private double off(Complex_F64 direction) {
        return solved.values().stream()
                .mapToDouble(each -> along(direction, each.phasor()))
                .min()
                .orElseThrow();
    }

    private Complex_F64 best(List<Complex_F64> directions) {
        return directions.stream().max(Comparator.comparingDouble(this::off)).orElseThrow();
    }

    private Model.State farthest(Complex_F64 atZero) {
        return solved.values().stream()
                .max(Comparator.comparingDouble(Model.State::size))
                .filter(each -> each.size() > 0)
                .orElseGet(() -> farthestAlong(atZero));
    }

    private Model.State farthestAlong(Complex_F64 direction) {
        return solved.values().stream()
                .max(Comparator.comparingDouble(each -> along(direction, each.phasor())))
                .orElseThrow();
    }

    /** Follows the slopes in a direction. */
    private void reach(Complex_F64 direction, double[] from) {
        double[] at = from.clone();
        double[] before = from.clone();
        boolean[] up = new boolean[at.length];
        Model.State state = state(at);
        for (int round = 0; round < ROUNDS; round++) {
            double[] next = at.clone();
            for (int p = 0; p < at.length; p++) {
                Parameter each = model.parameters().get(p);
                double slope = along(direction, state.slopes()[p]);
                if (slope != 0 && free.test(each)) {
                    boolean back = round > 0 && slope > 0 != up[p];
                    next[p] = back ? Math.sqrt(at[p] * before[p]) : end(each, slope > 0);
                    up[p] = slope > 0;
                }
            }
            if (Arrays.equals(at, next)) {
                break;
            }
            before = at;
            at = next;
            state = state(at);
        }
    }

    private double end(Parameter each, boolean up) {
        double factor = each.basis() == Basis.ASSUMED ? wider : 1;
        return up ? each.high() * factor : each.low() / factor;
    }

    private Model.State state(double[] values) {
        return solved.computeIfAbsent(Arrays.stream(values).boxed().toList(), each -> model.state(values));
    }

    private static Complex_F64 strongest(Model.State state) {
        return Arrays.stream(state.slopes())
                .max(Comparator.comparingDouble(Complex_F64::getMagnitude))
                .orElse(new Complex_F64(1, 0));
    }

    private static Complex_F64 unit(Complex_F64 phasor) {
        double size = phasor.getMagnitude();
        return size > 0 ? new Complex_F64(phasor.real / size, phasor.imaginary / size) : new Complex_F64(1, 0);
    }

    private static double along(Complex_F64 direction, Complex_F64 other) {
        return direction.real * other.real + direction.imaginary * other.imaginary;
    }
}
