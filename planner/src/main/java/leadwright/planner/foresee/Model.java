package leadwright.planner.foresee;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import leadwright.planner.circuit.Equations;
import leadwright.planner.circuit.Solved;
import org.ejml.data.Complex_F64;

/** A reading's circuit made ready to be solved many times with other values of its parameters. */
public final class Model {
    private final Setup setup;
    private final Equations equations;
    private final List<Parameter> parameters = new ArrayList<>();
    private final double[] elements;
    private final List<int[]> termParameter = new ArrayList<>();
    private final List<double[]> termTimes = new ArrayList<>();
    private final int firstBranch;

    Model(Setup setup) {
        this.setup = setup;
        Template template = setup.template();
        this.equations = new Equations(template.circuit(Parameter::nominal), setup.hertz());
        this.firstBranch = template.fixed().size();
        this.elements = new double[firstBranch + template.branches().size()];
        for (int i = 0; i < firstBranch; i++) {
            elements[i] = template.fixed().get(i).value();
        }
        Map<Parameter, Integer> index = new HashMap<>();
        for (Template.Branch branch : template.branches()) {
            int terms = branch.terms().size();
            int[] which = new int[terms];
            double[] times = new double[terms];
            for (int t = 0; t < terms; t++) {
                Parameter parameter = branch.terms().get(t).parameter();
                which[t] = index.computeIfAbsent(parameter, each -> {
                    parameters.add(each);
                    return parameters.size() - 1;
                });
                times[t] = branch.terms().get(t).times();
            }
            termParameter.add(which);
            termTimes.add(times);
        }
    }

    List<Parameter> parameters() {
        return parameters;
    }

    double[] nominal() {
        return parameters.stream().mapToDouble(Parameter::nominal).toArray();
    }

    Solved solve(double[] values) {
        for (int b = 0; b < termParameter.size(); b++) {
            elements[firstBranch + b] = branch(b, values);
        }
        return equations.solve(elements);
    }

    double read(double[] values) {
        return setup.meter().read(solve(values));
    }

    private double branch(int b, double[] values) {
        int[] which = termParameter.get(b);
        double[] times = termTimes.get(b);
        double sum = 0;
        for (int t = 0; t < which.length; t++) {
            sum += times[t] * values[which[t]];
        }
        return sum;
    }

    /** What the reading is the size of, with its slope against the logarithm of each parameter. */
    record State(double[] values, Complex_F64 phasor, Complex_F64[] slopes) {
        double size() {
            return phasor.getMagnitude();
        }
    }

    /**
     * Which share of the nominal reading rests on some of the parameters: the sum of what one per cent more in each of them adds, in
     * per cent.
     */
    double share(Predicate<Parameter> which) {
        State state = state(nominal());
        double square = state.size() * state.size();
        double share = 0;
        for (int p = 0; p < parameters.size(); p++) {
            if (square > 0 && which.test(parameters.get(p))) {
                Complex_F64 slope = state.slopes()[p];
                share += Math.abs(state.phasor().real * slope.real + state.phasor().imaginary * slope.imaginary)
                        / square;
            }
        }
        return share;
    }

    /** The reading by the size of a state's phasor. */
    double reading(double size) {
        return setup.meter().reading(size);
    }

    State state(double[] values) {
        Solved solved = solve(values);
        return new State(
                values.clone(),
                setup.meter().phasor(solved),
                slopes(setup.meter().answers(solved), values));
    }

    /** By the adjoint network. */
    private Complex_F64[] slopes(Solved.Answers answers, double[] values) {
        double omega = 2 * Math.PI * setup.hertz();
        Complex_F64[] slopes = zeros();
        List<Template.Branch> branches = setup.template().branches();
        for (int b = 0; b < branches.size(); b++) {
            Complex_F64 answer =
                    answers.to(branches.get(b).from(), branches.get(b).to());
            double whole = branch(b, values);
            boolean resistance = branches.get(b).kind() == Template.Kind.RESISTANCE;
            int[] which = termParameter.get(b);
            for (int t = 0; t < which.length; t++) {
                double step = termTimes.get(b)[t] * values[which[t]];
                Complex_F64 slope = slopes[which[t]];
                if (resistance) {
                    slope.real -= answer.real * step / (whole * whole);
                    slope.imaginary -= answer.imaginary * step / (whole * whole);
                } else {
                    slope.real -= answer.imaginary * omega * step;
                    slope.imaginary += answer.real * omega * step;
                }
            }
        }
        return slopes;
    }

    private Complex_F64[] zeros() {
        Complex_F64[] zeros = new Complex_F64[parameters.size()];
        for (int i = 0; i < zeros.length; i++) {
            zeros[i] = new Complex_F64(0, 0);
        }
        return zeros;
    }
}
