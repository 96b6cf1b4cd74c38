package leadwright.render.sheet;

import java.util.Optional;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.foresee.Basis;
import leadwright.planner.foresee.Foreseen;
import leadwright.planner.plan.Obligation;

/** Amounts as documents print them. */
final class Amounts {

    private Amounts() {}

    /** {@code 50 µA}, {@code 300 mΩ}: the exact text of the amount with the unit's proper letters. */
    static String text(Quantity quantity) {
        return letters(quantity.text()).replace(' ', '\u00a0');
    }

    static String letters(String written) {
        return written.replace("uA", "µA")
                .replace("uV", "µV")
                .replace("uohm", "µΩ")
                .replace("ohm", "Ω")
                .replace("mm2", "mm²")
                .replace("degC", "°C");
    }

    /** A sentence in which amounts are written in ASCII, with their units' proper letters; other words stay. */
    static String inProse(String sentence) {
        return sentence.replaceAll("(\\d) uA\\b", "$1\u00a0µA").replaceAll("(\\d) ([mMkG]?)ohm\\b", "$1\u00a0$2Ω");
    }

    /** {@code ≤ 50 µA} or {@code ≥ 2 MΩ}. */
    static String bound(Limit limit) {
        String sign = limit.bound() == Limit.Bound.AT_MOST ? "≤" : "≥";
        return sign + "\u00a0" + text(limit.value());
    }

    /** {@code ~ 160 µA}, with a star where assumed values have a say in it; empty where only a bound is foreseen. */
    static Optional<String> foreseen(Foreseen foreseen) {
        String star = foreseen.basis() == Basis.ASSUMED ? "*" : "";
        return foreseen.value().map(value -> "~\u00a0" + (value.amount() == 0 ? "0" : text(twoFigures(value))) + star);
    }

    /** More figures would promise more than a foreseen value holds. */
    private static Quantity twoFigures(Quantity value) {
        long step = 1;
        while (value.amount() / step >= 100) {
            step *= 10;
        }
        return new Quantity(value.dimension(), (value.amount() + step / 2) / step * step);
    }

    /** The unit printed in the box of a reading: the limit's own, so that no factor of a thousand is left to the hand. */
    static String unit(Obligation obligation) {
        return obligation
                .limit()
                .map(limit -> limit.value().text())
                .map(text -> letters(text.substring(text.indexOf(' ') + 1)))
                .orElseGet(() -> unitOf(obligation.quantity()));
    }

    private static String unitOf(QuantityKind quantity) {
        return switch (quantity) {
            case EARTH_RESISTANCE, BONDING_RESISTANCE -> "mΩ";
            case INSULATION_RESISTANCE -> "MΩ";
            case BONDING_VOLTAGE -> "mV";
            case SUPPLY_VOLTAGE -> "V";
            case SUPPLY_CURRENT -> "A";
            case PROOF -> "";
            default -> "µA";
        };
    }

    /** Whether a value of this kind can need a correction: a current that scales with the mains voltage. */
    static boolean correctable(Obligation obligation) {
        return obligation.limit().stream().allMatch(limit -> limit.value().dimension() == Dimension.CURRENT)
                && !unit(obligation).endsWith("Ω")
                && !unit(obligation).endsWith("V")
                && obligation.quantity() != QuantityKind.TESTER_CHECK
                && obligation.quantity() != QuantityKind.SUPPLY_CURRENT
                && obligation.quantity() != QuantityKind.PROOF;
    }
}
