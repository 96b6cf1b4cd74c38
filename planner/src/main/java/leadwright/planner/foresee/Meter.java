package leadwright.planner.foresee;

import java.util.List;
import java.util.Optional;
import leadwright.planner.circuit.Netlist;
import leadwright.planner.circuit.Network;
import leadwright.planner.circuit.Solved;
import org.ejml.data.Complex_F64;

/** How a reading is taken of a solved circuit; the value is in A, Ω or V. */
public sealed interface Meter {
    double read(Solved solved);

    /** The node pair whose voltage is the reading but for a factor, where it is one. */
    default Optional<Pair> pair() {
        return Optional.empty();
    }

    /** What of the circuit a simulator prints. */
    default Netlist.Printed printed() {
        Pair pair = pair().orElseThrow();
        return new Netlist.Printed.Volts(pair.above(), pair.below(), pair.factor());
    }

    /** The reading by what a simulator printed. */
    default double ofPrinted(double printed) {
        return printed;
    }

    /** @param factor reading for a volt between the two */
    record Pair(String above, String below, double factor) {}

    /** Across a measuring network. */
    record Across(String out, String back, double ohms) implements Meter {
        static Across network(Network network, String prefix, String back) {
            return new Across(Network.out(prefix), back, network.divisor());
        }

        @Override
        public double read(Solved solved) {
            return solved.volts(out, back) / ohms;
        }

        @Override
        public Optional<Pair> pair() {
            return Optional.of(new Pair(out, back, 1 / ohms));
        }
    }

    /** What the supply conductors together bring and do not take back, times the network's weight at this frequency. */
    record Difference(List<String> sources, double weight) implements Meter {
        public Difference {
            sources = List.copyOf(sources);
        }

        @Override
        public double read(Solved solved) {
            Complex_F64 sum = new Complex_F64(0, 0);
            for (String source : sources) {
                sum = sum.plus(solved.current(source));
            }
            return sum.getMagnitude() * weight;
        }

        @Override
        public Netlist.Printed printed() {
            return new Netlist.Printed.Amperes(sources, weight);
        }
    }

    /** Voltage of a source through its current. */
    record Insulation(String source, double volts) implements Meter {
        @Override
        public double read(Solved solved) {
            return volts / solved.current(source).getMagnitude();
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
        public double read(Solved solved) {
            return solved.volts(above, below) / amperes;
        }

        @Override
        public Optional<Pair> pair() {
            return Optional.of(new Pair(above, below, 1 / amperes));
        }
    }
}
