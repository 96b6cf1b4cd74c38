package leadwright.planner.circuit;

/** A two-terminal element between two named nodes. Values are in SI units. */
public sealed interface Element {
    /** Unique in its circuit. */
    String name();

    String from();

    String to();

    /** Ω, F, V or A. */
    double value();

    /** A resistance; Ω, above zero. */
    record Resistance(String name, String from, String to, double ohms) implements Element {
        public Resistance {
            positive(name, ohms);
        }

        @Override
        public double value() {
            return ohms;
        }
    }

    /** A capacitance; F, above zero. */
    record Capacitance(String name, String from, String to, double farads) implements Element {
        public Capacitance {
            positive(name, farads);
        }

        @Override
        public double value() {
            return farads;
        }
    }

    /**
     * An ideal source of voltage.
     *
     * @param volts what {@code from} is above {@code to}, r.m.s.
     * @param degrees phase
     */
    record Voltage(String name, String from, String to, double volts, double degrees) implements Element {
        @Override
        public double value() {
            return volts;
        }
    }

    /**
     * An ideal source of current.
     *
     * @param amperes what flows inside the source from {@code from} to {@code to}, r.m.s.
     */
    record Current(String name, String from, String to, double amperes) implements Element {
        @Override
        public double value() {
            return amperes;
        }
    }

    private static void positive(String name, double value) {
        if (!(value > 0) || Double.isInfinite(value)) {
            throw new IllegalArgumentException(name + " has the value " + value);
        }
    }
}
