package leadwright.planner.judge;

import java.util.Optional;
import leadwright.catalog.house.DecisionRule;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.readings.Shown;
import leadwright.catalog.rules.Limit;

/** What a value says beside a limit, and beside the value of the last record. */
final class Bounds {

    private Bounds() {}

    /** The value that counts; for one beyond the tester's range its end, where that is the unfavourable side. */
    static Optional<Quantity> counted(Shown shown, Limit limit) {
        if (shown instanceof Shown.Value value) {
            return Optional.of(value.amount());
        }
        boolean ceiling = limit.bound() == Limit.Bound.AT_MOST;
        if (shown instanceof Shown.Below below && ceiling) {
            return Optional.of(below.amount());
        }
        return shown instanceof Shown.Above above && !ceiling ? Optional.of(above.amount()) : Optional.empty();
    }

    /** Whether a value beyond the tester's range is certainly beyond the limit. */
    static boolean beyond(Shown shown, Limit limit) {
        boolean ceiling = limit.bound() == Limit.Bound.AT_MOST;
        if (shown instanceof Shown.Above above) {
            return ceiling && above.amount().atLeast(limit.value());
        }
        if (shown instanceof Shown.Below below) {
            return !ceiling && below.amount().atMost(limit.value());
        }
        return shown instanceof Shown.NoPath && ceiling;
    }

    /** How far inside the limit a value is, in base units; less than zero beyond it. */
    static double inside(Limit limit, Quantity value) {
        long distance = limit.value().amount() - value.amount();
        return limit.bound() == Limit.Bound.AT_MOST ? distance : -distance;
    }

    static String words(Verdict verdict, Limit limit, Optional<Quantity> guardBand, DecisionRule rule) {
        String band = guardBand.map(Quantity::text).orElse("");
        return switch (verdict) {
            case PASS ->
                guardBand
                        .map(known -> "inside the limit by more than the uncertainty, " + known.text())
                        .orElse("inside the limit; the uncertainty is not known");
            case PASS_INSIDE_UNCERTAINTY ->
                rule == DecisionRule.SIMPLE
                        ? "inside the limit, by less than the uncertainty of " + band
                        : "inside the limit, but in the guard band of " + band + ": not accepted; accepted is "
                                + limit.bound().word().replace('-', ' ') + " "
                                + Decision.acceptance(limit, guardBand.orElseThrow())
                                        .text();
            case FAIL_INSIDE_UNCERTAINTY -> "beyond the limit, by no more than the uncertainty of " + band;
            default -> "beyond the limit";
        };
    }

    /**
     * Why a value is far from the last one, empty where it is not. Far is a change that the uncertainties of both values
     * cannot explain, added up since it may be the same tester, and that is more than a tenth of the limit, since a smaller
     * one says little of safety. A fall counts as well as a rise: most mistakes of wiring read low.
     */
    static Optional<String> far(
            Judged.Before before, Quantity now, Optional<Quantity> uncertainty, Optional<Limit> limit) {
        if (before.value().dimension() != now.dimension()) {
            return Optional.empty();
        }
        long change = Math.abs(now.amount() - before.value().amount());
        long explained = uncertainty.map(Quantity::amount).orElse(0L)
                + before.uncertainty().map(Quantity::amount).orElse(0L);
        long tenth =
                limit.map(each -> each.value().amount()).orElse(before.value().amount()) / 10;
        if (change <= explained || change <= tenth) {
            return Optional.empty();
        }
        boolean rise = now.compareTo(before.value()) > 0;
        return Optional.of("far from the last value, " + before.value().text() + " on " + before.date() + ": "
                + (rise ? "up by " : "down by ")
                + Quantity.of(now.dimension(), change).text()
                + ", more than both uncertainties and a tenth of the "
                + (limit.isPresent() ? "limit" : "last value")
                + (rise ? "" : "; a fall can be a connection that was not made"));
    }
}
