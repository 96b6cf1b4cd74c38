package leadwright.planner.circuit;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import org.ejml.data.ZMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_ZDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;
import org.jgrapht.alg.util.UnionFind;

/**
 * The modified nodal equations of a circuit at one frequency: one row for each node, one for each source of voltage. The matrix is
 * symmetric. Made once for an arrangement, solved for any values of its elements.
 *
 * <p>Nodes that nothing joins to earth at this frequency have no potential of their own; one of each such island is held at
 * zero, which carries no current.
 */
public final class Equations {
    private static final int NONE = -1;

    private final List<Element> elements;
    private final double omega;
    private final Map<String, Integer> rows = new HashMap<>();
    private final Map<String, Integer> sources = new HashMap<>();
    private final int[] from;
    private final int[] to;
    private final int size;
    private final int[] held;

    /**
     * @param hertz frequency of all sources; 0 for d.c., where a capacitance carries nothing
     * @throws IllegalArgumentException where sources of voltage form a loop, so that they contradict each other or leave a current
     *     open, or where a current has no way back
     */
    public Equations(Circuit circuit, double hertz) {
        elements = circuit.elements();
        omega = 2 * Math.PI * hertz;
        List<String> nodes = circuit.nodes();
        nodes.forEach(node -> rows.put(node, rows.size()));
        int count = rows.size();
        from = new int[elements.size()];
        to = new int[elements.size()];
        for (int i = 0; i < elements.size(); i++) {
            Element each = elements.get(i);
            from[i] = rows.getOrDefault(each.from(), NONE);
            to[i] = rows.getOrDefault(each.to(), NONE);
            if (each instanceof Element.Voltage) {
                sources.put(each.name(), count++);
            }
        }
        size = count;
        loops();
        UnionFind<String> joined = joined(nodes, elements, omega);
        ways(joined);
        held = islands(nodes, joined).stream().mapToInt(rows::get).toArray();
    }

    /** The circuit's own values. */
    double[] values() {
        return elements.stream().mapToDouble(Element::value).toArray();
    }

    /**
     * Solves for these values.
     *
     * @param values Ω, F, V or A, in the order of the elements; phases stay
     * @throws IllegalArgumentException where sources contradict each other
     */
    public Solved solve(double[] values) {
        ZMatrixRMaj matrix = new ZMatrixRMaj(size, size);
        ZMatrixRMaj right = new ZMatrixRMaj(size, 1);
        for (int i = 0; i < elements.size(); i++) {
            enter(elements.get(i), i, values[i], matrix, right);
        }
        for (int row : held) {
            add(matrix, row, row, 1, 0);
        }
        LinearSolverDense<ZMatrixRMaj> solver = LinearSolverFactory_ZDRM.lu(size);
        ZMatrixRMaj found = new ZMatrixRMaj(size, 1);
        if (!solver.setA(matrix)) {
            throw new IllegalArgumentException("sources that contradict each other");
        }
        solver.solve(right, found);
        for (double part : found.data) {
            if (!Double.isFinite(part)) {
                throw new IllegalArgumentException("sources that contradict each other");
            }
        }
        return new Solved(rows, sources, solver, found);
    }

    private void enter(Element element, int i, double value, ZMatrixRMaj matrix, ZMatrixRMaj right) {
        if (element instanceof Element.Resistance) {
            admit(matrix, i, 1 / value, 0);
        } else if (element instanceof Element.Capacitance) {
            admit(matrix, i, 0, omega * value);
        } else if (element instanceof Element.Voltage voltage) {
            int row = sources.get(voltage.name());
            couple(matrix, row, from[i], 1);
            couple(matrix, row, to[i], -1);
            double angle = Math.toRadians(voltage.degrees());
            right.set(row, 0, value * Math.cos(angle), value * Math.sin(angle));
        } else {
            inject(right, from[i], -value);
            inject(right, to[i], value);
        }
    }

    private void admit(ZMatrixRMaj matrix, int i, double real, double imaginary) {
        add(matrix, from[i], from[i], real, imaginary);
        add(matrix, to[i], to[i], real, imaginary);
        add(matrix, from[i], to[i], -real, -imaginary);
        add(matrix, to[i], from[i], -real, -imaginary);
    }

    private static void couple(ZMatrixRMaj matrix, int source, int node, double sign) {
        add(matrix, source, node, sign, 0);
        add(matrix, node, source, sign, 0);
    }

    /** Earth has no row. */
    private static void add(ZMatrixRMaj matrix, int row, int column, double real, double imaginary) {
        if (row == NONE || column == NONE) {
            return;
        }
        int at = 2 * (row * matrix.numCols + column);
        matrix.data[at] += real;
        matrix.data[at + 1] += imaginary;
    }

    private static void inject(ZMatrixRMaj right, int node, double amperes) {
        if (node != NONE) {
            right.data[2 * node] += amperes;
        }
    }

    /** Rounding may hide from the elimination that such a matrix is singular. */
    private void loops() {
        UnionFind<String> joined = new UnionFind<>(rows.keySet());
        joined.addElement(Circuit.EARTH);
        for (Element each : elements) {
            if (each instanceof Element.Voltage) {
                if (joined.inSameSet(each.from(), each.to())) {
                    throw new IllegalArgumentException(
                            "sources that contradict each other: " + each.name() + " closes a loop");
                }
                joined.union(each.from(), each.to());
            }
        }
    }

    /** One node of each island that nothing joins to earth at this frequency, in order of first mention. */
    static List<String> islands(Circuit circuit, double hertz) {
        List<String> nodes = circuit.nodes();
        return islands(nodes, joined(nodes, circuit.elements(), hertz));
    }

    private static List<String> islands(List<String> nodes, UnionFind<String> joined) {
        return nodes.stream()
                .filter(node -> {
                    boolean island = !joined.inSameSet(node, Circuit.EARTH);
                    joined.union(node, Circuit.EARTH);
                    return island;
                })
                .toList();
    }

    private void ways(UnionFind<String> joined) {
        for (Element each : elements) {
            if (each instanceof Element.Current && !joined.inSameSet(each.from(), each.to())) {
                throw new IllegalArgumentException("the current of " + each.name() + " has no way back");
            }
        }
    }

    private static UnionFind<String> joined(List<String> nodes, List<Element> elements, double omega) {
        UnionFind<String> joined = new UnionFind<>(new LinkedHashSet<>(nodes));
        joined.addElement(Circuit.EARTH);
        for (Element each : elements) {
            boolean carries = each instanceof Element.Resistance
                    || each instanceof Element.Voltage
                    || each instanceof Element.Capacitance && omega > 0;
            if (carries) {
                joined.union(each.from(), each.to());
            }
        }
        return joined;
    }
}
