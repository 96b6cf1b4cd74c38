package leadwright.planner.judge;

import java.util.Optional;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.Limit;

/**
 * The comparison of a value with a limit, in whole units. Simple acceptance puts the acceptance limit at the limit itself
 * and leaves up to one half of the risk at it; guarded acceptance draws it in by the guard band {@code w}, which is the
 * expanded uncertainty {@code U} with coverage factor 2 (JCGM 106:2012, 8.2 and 8.3; ILAC-G8:09/2019: wrong acceptance
 * below 2.5 %). The four words are ILAC-G8's pass, conditional pass, conditional fail, fail.
 */
public final class Decision {

    private Decision() {}

    /** Where guarded acceptance ends: the limit drawn in by the guard band. */
    public static Quantity acceptance(Limit limit, Quantity guardBand) {
        return moved(limit, limit.bound() == Limit.Bound.AT_MOST ? -guardBand.amount() : guardBand.amount());
    }

    /** Where guarded rejection begins: the limit moved out by the guard band. */
    public static Quantity rejection(Limit limit, Quantity guardBand) {
        return moved(limit, limit.bound() == Limit.Bound.AT_MOST ? guardBand.amount() : -guardBand.amount());
    }

    private static Quantity moved(Limit limit, long by) {
        return Quantity.of(
                limit.value().dimension(), Math.addExact(limit.value().amount(), by));
    }

    /**
     * Where a value stands.
     *
     * @param expanded the expanded uncertainty, empty where it is not known: then only the limit itself tells
     */
    public static Verdict of(Limit limit, Quantity value, Optional<Quantity> expanded) {
        boolean inside = within(limit, value, limit.value());
        if (expanded.isEmpty()) {
            return inside ? Verdict.PASS : Verdict.FAIL;
        }
        if (inside) {
            return within(limit, value, acceptance(limit, expanded.get()))
                    ? Verdict.PASS
                    : Verdict.PASS_INSIDE_UNCERTAINTY;
        }
        return within(limit, value, rejection(limit, expanded.get())) ? Verdict.FAIL_INSIDE_UNCERTAINTY : Verdict.FAIL;
    }

    private static boolean within(Limit limit, Quantity value, Quantity end) {
        return limit.bound() == Limit.Bound.AT_MOST ? value.atMost(end) : value.atLeast(end);
    }

    /** Whether a value stands inside the limit but by less than a tenth of it: the standard asks for a look at earlier ones. */
    public static boolean inLastTenth(Limit limit, Quantity value) {
        long nearLimit = Math.multiplyExact(limit.value().amount(), 9L);
        long tenfold = Math.multiplyExact(value.amount(), 10L);
        return limit.bound() == Limit.Bound.AT_MOST
                ? value.atMost(limit.value()) && tenfold > nearLimit
                : value.atLeast(limit.value())
                        && Math.multiplyExact(value.amount(), 9L)
                                < Math.multiplyExact(limit.value().amount(), 10L);
    }
}
