package leadwright.planner.foresee;

import java.util.List;
import java.util.Optional;
import leadwright.planner.circuit.Netlist;
import leadwright.planner.circuit.Network;
import leadwright.planner.circuit.Solved;
import org.ejml.data.Complex_F64;

/** How a reading is taken of a solved circuit; the value is in A, Ω or V. */
public sealed interface Meter {
    /** The voltage or the sum of currents whose size makes the reading. */
    Complex_F64 phasor(Solved solved);

    /** How that answers to a small admittance between two nodes. */
    Solved.Answers answers(Solved solved);

    /** The reading by that size. */
    double reading(double size);

    default double read(Solved solved) {
        return reading(phasor(solved).getMagnitude());
    }

    /** The node pair whose voltage is the reading but for a factor, where it is one. */
    default Optional<Pair> pair() {
        return Optional.empty();
    }

    /** What of the circuit a simulator prints. */
    Netlist.Printed printed();

    /** The reading by what a simulator printed. */
    default double ofPrinted(double printed) {
        return printed;
    }

    /** @param factor reading for a volt between the two */
    record Pair(String above, String below, double factor) {
        private Netlist.Printed printed() {
            return new Netlist.Printed.Volts(above, below, factor);
        }
    }

    /** Across a measuring network. */
    record Across(String out, String back, double ohms) implements Meter {
        static Across network(Network network, String prefix, String back) {
            return new Across(Network.out(prefix), back, network.divisor());
        }

        @Override
        public Complex_F64 phasor(Solved solved) {
            return solved.voltage(out, back);
        }

        @Override
        public Solved.Answers answers(Solved solved) {
            return solved.answers(out, back);
        }

        @Override
        public double reading(double size) {
            return size / ohms;
        }

        @Override
        public Optional<Pair> pair() {
            return Optional.of(new Pair(out, back, 1 / ohms));
        }

        @Override
        public Netlist.Printed printed() {
            return new Pair(out, back, 1 / ohms).printed();
        }
    }

    /** What the supply conductors together bring and do not take back, times the network's weight at this frequency. */
    record Difference(List<String> sources, double weight) implements Meter {
        public Difference {
            sources = List.copyOf(sources);
        }

        @Override
        public Complex_F64 phasor(Solved solved) {
            Complex_F64 sum = new Complex_F64(0, 0);
            for (String source : sources) {
                sum = sum.plus(solved.current(source));
            }
            return sum;
        }

        @Override
        public Solved.Answers answers(Solved solved) {
            return solved.answers(sources);
        }

        @Override
        public double reading(double size) {
            return size * weight;
        }

        @Override
        public Netlist.Printed printed() {
            return new Netlist.Printed.Amperes(sources, weight);
        }
    }

    /** Voltage of a source through its current. */
    record Insulation(String source, double volts) implements Meter {
        @Override
        public Complex_F64 phasor(Solved solved) {
            return solved.current(source);
        }

        @Override
        public Solved.Answers answers(Solved solved) {
            return solved.answers(List.of(source));
        }

        @Override
        public double reading(double size) {
            return volts / size;
        }

        @Override
        public Netlist.Printed printed() {
            return new Netlist.Printed.Amperes(List.of(source), 1);
        }

        @Override
        public double ofPrinted(double printed) {
            return volts / printed;
        }
    }

    /** Voltage between two nodes for the current that is driven through them, less what was nulled. */
    record Drop(String above, String below, double amperes) implements Meter {
        @Override
        public Complex_F64 phasor(Solved solved) {
            return solved.voltage(above, below);
        }

        @Override
        public Solved.Answers answers(Solved solved) {
            return solved.answers(above, below);
        }

        @Override
        public double reading(double size) {
            return size / amperes;
        }

        @Override
        public Optional<Pair> pair() {
            return Optional.of(new Pair(above, below, 1 / amperes));
        }

        @Override
        public Netlist.Printed printed() {
            return new Pair(above, below, 1 / amperes).printed();
        }
    }
}
