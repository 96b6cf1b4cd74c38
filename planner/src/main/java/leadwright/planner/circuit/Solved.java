package leadwright.planner.circuit;

import java.util.Map;
import org.ejml.data.Complex_F64;
import org.ejml.data.ZMatrixRMaj;
import org.ejml.interfaces.linsol.LinearSolverDense;

/** A circuit's steady state. Phasors, r.m.s. */
public final class Solved {
    private final Map<String, Integer> rows;
    private final Map<String, Integer> sources;
    private final LinearSolverDense<ZMatrixRMaj> solver;
    private final ZMatrixRMaj found;

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
        Integer row = sources.get(source);
        if (row == null) {
            throw new IllegalArgumentException("no source called " + source);
        }
        // The unknown is what flows into the source at its upper end.
        return new Complex_F64(-found.data[2 * row], -found.data[2 * row + 1]);
    }

    /**
     * How the voltage between two nodes answers to a small admittance put between two others.
     *
     * <p>By the adjoint network, which here is the network itself, since every element is reciprocal (Tellegen's theorem; Director
     * and Rohrer 1969, from memory): the answer to an admittance y between a and b is {@code -(v(a) - v(b)) (u(a) - u(b))}, where u is
     * the state when one ampere is driven into the first two nodes and no source acts.
     */
    public Answers answers(String above, String below) {
        ZMatrixRMaj drive = new ZMatrixRMaj(found.numRows, 1);
        drive(drive, above, 1);
        drive(drive, below, -1);
        ZMatrixRMaj adjoint = new ZMatrixRMaj(found.numRows, 1);
        solver.solve(drive, adjoint);
        return (a, b) -> {
            Complex_F64 v = difference(found, a, b);
            Complex_F64 u = difference(adjoint, a, b);
            return v.times(u).times(new Complex_F64(-1, 0));
        };
    }

    /** Change of a voltage for each siemens put between two nodes, V/S, for small admittances. */
    @FunctionalInterface
    public interface Answers {
        Complex_F64 to(String a, String b);
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
