package leadwright.planner.circuit;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.ejml.data.Complex_F64;
import org.ejml.data.ZMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_ZDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/** A circuit's steady state. Phasors, r.m.s. Not for several threads at once. */
public final class Solved {
    private final Map<String, Integer> rows;
    private final Map<String, Integer> sources;
    private final LinearSolverDense<ZMatrixRMaj> solver;
    private final ZMatrixRMaj found;
    private final Map<String, ZMatrixRMaj> driven = new HashMap<>();

    Solved(
            Map<String, Integer> rows,
            Map<String, Integer> sources,
            LinearSolverDense<ZMatrixRMaj> solver,
            ZMatrixRMaj found) {
        this.rows = rows;
        this.sources = sources;
        this.solver = solver;
        this.found = found;
    }

    /** Voltage of one node above another, V. */
    public Complex_F64 voltage(String above, String below) {
        return difference(found, above, below);
    }

    /** Magnitude of the voltage between two nodes, V. */
    public double volts(String above, String below) {
        return voltage(above, below).getMagnitude();
    }

    /**
     * Current that a source of voltage gives out at its {@code from} end, A.
     *
     * @throws IllegalArgumentException where no source is called so
     */
    public Complex_F64 current(String source) {
        int row = row(source);
        // The unknown is what flows into the source at its upper end.
        return new Complex_F64(-found.data[2 * row], -found.data[2 * row + 1]);
    }

    private int row(String source) {
        Integer row = sources.get(source);
        if (row == null) {
            throw new IllegalArgumentException("no source called " + source);
        }
        return row;
    }

    /**
     * How the voltage between two nodes answers to a small admittance put between two others.
     *
     * <p>By the adjoint network, which here is the network itself, since every element is reciprocal (Tellegen's theorem; Director
     * and Rohrer 1969, from memory): the answer to an admittance y between a and b is {@code -(v(a) - v(b)) (u(a) - u(b))}, where u is
     * the state when one ampere is driven into the first two nodes and no source acts.
     */
    public Answers answers(String above, String below) {
        return answers(driven(above, below));
    }

    /** The same for the sum of the currents that sources of voltage give out: their volts are what is driven. */
    public Answers answers(List<String> sourcesOfCurrent) {
        ZMatrixRMaj drive = new ZMatrixRMaj(found.numRows, 1);
        for (String source : sourcesOfCurrent) {
            drive.data[2 * row(source)] -= 1;
        }
        ZMatrixRMaj adjoint = new ZMatrixRMaj(found.numRows, 1);
        solver.solve(drive, adjoint);
        return answers(adjoint);
    }

    private Answers answers(ZMatrixRMaj adjoint) {
        return (a, b) -> {
            Complex_F64 v = difference(found, a, b);
            Complex_F64 u = difference(adjoint, a, b);
            return v.times(u).times(new Complex_F64(-1, 0));
        };
    }

    /** Change of a voltage or current for each siemens put between two nodes, V/S or A/S, for small admittances. */
    @FunctionalInterface
    public interface Answers {
        Complex_F64 to(String a, String b);
    }

    /**
     * A conductance put between two nodes, or taken away.
     *
     * @param siemens negative to take away
     */
    public record Change(String a, String b, double siemens) {}

    /** The magnitude of {@link #voltageWith}, V; NaN where the changed circuit has no one solution. */
    public double voltsWith(List<Change> changes, String above, String below) {
        return voltageWith(changes, above, below).getMagnitude();
    }

    /**
     * Voltage between two nodes when some conductances are changed, V; by the formula of Woodbury, without solving the circuit anew.
     *
     * @return NaN real part where the changed circuit has no one solution
     */
    public Complex_F64 voltageWith(List<Change> changes, String above, String below) {
        int n = changes.size();
        if (n == 0) {
            return voltage(above, below);
        }
        ZMatrixRMaj inner = new ZMatrixRMaj(n, n);
        ZMatrixRMaj right = new ZMatrixRMaj(n, 1);
        for (int j = 0; j < n; j++) {
            Change column = changes.get(j);
            ZMatrixRMaj response = driven(column.a(), column.b());
            for (int i = 0; i < n; i++) {
                Complex_F64 transfer =
                        difference(response, changes.get(i).a(), changes.get(i).b());
                inner.set(i, j, transfer.real + (i == j ? 1 / column.siemens() : 0), transfer.imaginary);
            }
            Complex_F64 across = difference(found, column.a(), column.b());
            right.set(j, 0, across.real, across.imaginary);
        }
        ZMatrixRMaj currents = new ZMatrixRMaj(n, 1);
        LinearSolverDense<ZMatrixRMaj> small = LinearSolverFactory_ZDRM.lu(n);
        if (!small.setA(inner)) {
            return new Complex_F64(Double.NaN, 0);
        }
        small.solve(right, currents);
        ZMatrixRMaj adjoint = driven(above, below);
        Complex_F64 voltage = voltage(above, below);
        for (int j = 0; j < n; j++) {
            Complex_F64 transfer =
                    difference(adjoint, changes.get(j).a(), changes.get(j).b());
            Complex_F64 current = new Complex_F64(currents.data[2 * j], currents.data[2 * j + 1]);
            voltage = voltage.minus(transfer.times(current));
        }
        return voltage;
    }

    /** State when one ampere is driven into one node and out of another, and no source acts. */
    private ZMatrixRMaj driven(String into, String out) {
        return driven.computeIfAbsent(into + "\n" + out, each -> {
            ZMatrixRMaj drive = new ZMatrixRMaj(found.numRows, 1);
            drive(drive, into, 1);
            drive(drive, out, -1);
            ZMatrixRMaj state = new ZMatrixRMaj(found.numRows, 1);
            solver.solve(drive, state);
            return state;
        });
    }

    private void drive(ZMatrixRMaj vector, String node, double amperes) {
        Integer row = rows.get(node);
        if (row != null) {
            vector.data[2 * row] += amperes;
        }
    }

    private Complex_F64 difference(ZMatrixRMaj vector, String above, String below) {
        Complex_F64 high = at(vector, above);
        return high.minus(at(vector, below));
    }

    private Complex_F64 at(ZMatrixRMaj vector, String node) {
        if (node.equals(Circuit.EARTH)) {
            return new Complex_F64(0, 0);
        }
        Integer row = rows.get(node);
        if (row == null) {
            throw new IllegalArgumentException("no node called " + node);
        }
        return new Complex_F64(vector.data[2 * row], vector.data[2 * row + 1]);
    }
}
