package leadwright.planner.rehearse;

import leadwright.catalog.kit.Accuracy;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.foresee.Amounts;
import leadwright.planner.plan.Obligation;

/** What a display shows of a value, which values a tester holds for the same, and which a person holds for different. */
final class Eye {
    /** From here on a resistance is no path; Ω. */
    private static final double OPEN = 1e9;

    /** Last digit of a display where the tester is coarser than that; A and Ω. Common practice, no source. */
    private static final double LAST_AMPERES = 100e-9;

    private static final double LAST_OHMS = 1e-3;

    /** Readings that differ by less of the larger are left for equal by people; common practice, no source. */
    private static final double NOTICED = 0.2;

    private final Plan plan;

    Eye(Plan plan) {
        this.plan = plan;
    }

    /** What the tester may be off by at a value; A or Ω. */
    double accuracy(Obligation what, double value) {
        Accuracy stated = stated(what);
        return stated.reading().inSi() * Math.abs(value) + stated.floor().inSi();
    }

    private Accuracy stated(Obligation what) {
        String function =
                what.quantity() == QuantityKind.INSULATION_RESISTANCE ? "insulation" : ohms(what) ? "earth" : "leakage";
        return Amounts.accuracy(plan.kit(), function);
    }

    private static boolean ohms(Obligation what) {
        return Amounts.dimension(what) == Dimension.RESISTANCE;
    }

    private static boolean open(Obligation what, double value) {
        return ohms(what) && value >= OPEN;
    }

    /** Three figures, and no finer than the display's last digit. */
    Display display(Obligation what, double value) {
        if (open(what, value)) {
            return new Display.Open();
        }
        Dimension dimension = Amounts.dimension(what);
        double finest =
                Math.pow(10, Math.floor(Math.log10(Math.max(stated(what).floor().inSi(), dimension.toSi()) / 2)));
        double last = Math.min(finest, ohms(what) ? LAST_OHMS : LAST_AMPERES);
        double digits = Math.rint(Math.max(0, value) / last) * last;
        Quantity rounded = Amounts.rounded(dimension, digits);
        return new Display.Amount(rounded);
    }

    /** Whether a value and what is displayed are the same within the tester's accuracy. */
    boolean same(Obligation what, double value, Display display) {
        if (display instanceof Display.Amount amount) {
            double read = amount.quantity().inSi();
            return !open(what, value) && Math.abs(value - read) <= accuracy(what, Math.max(value, read));
        }
        return open(what, value);
    }

    /** Whether a person sees that a value is not what is displayed: by twice the accuracy, and by a fifth. */
    boolean apart(Obligation what, double value, Display display) {
        if (display instanceof Display.Amount amount) {
            return apart(what, value, amount.quantity().inSi());
        }
        return apart(what, value, OPEN);
    }

    boolean apart(Obligation what, double one, double other) {
        double larger = Math.max(one, other);
        if (open(what, one) && open(what, other)) {
            return false;
        }
        double difference = Math.abs(one - other);
        return difference > 2 * accuracy(what, larger) && difference >= NOTICED * larger;
    }

    /** How far a value is from what is displayed, for the choice of the reading that tells most; 1 is most. */
    double distance(Obligation what, double value, Display display) {
        double read =
                display instanceof Display.Amount amount ? amount.quantity().inSi() : OPEN;
        double larger = Math.max(value, read);
        return larger <= accuracy(what, 0) ? 0 : Math.abs(value - read) / (larger + accuracy(what, 0));
    }
}
