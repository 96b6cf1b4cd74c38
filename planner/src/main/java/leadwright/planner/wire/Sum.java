package leadwright.planner.wire;

import java.util.Comparator;

/**
 * Options of some cells of a hookup taken together.
 *
 * @param use scarce pieces and jacks taken
 * @param capacitance by requirement with a hard limit, femtofarads
 * @param cost as of options
 * @param onPart micrometres of items in cells that mains is put on
 * @param micrometres of all items
 * @param option of the last cell; null for the earth lead and at the start
 * @param earth null where the last was a cell
 * @param before null at the start
 */
record Sum(
        int[] use,
        long[] capacitance,
        long cost,
        long onPart,
        long micrometres,
        Option option,
        EarthLead.Choice earth,
        Sum before) {

    static final Comparator<Sum> CHEAPEST =
            Comparator.comparingLong(Sum::cost).thenComparingLong(Sum::onPart).thenComparingLong(Sum::micrometres);

    static Sum none(int[] use, long[] capacitance) {
        return new Sum(use, capacitance, 0, 0, 0, null, null, null);
    }

    Sum and(EarthLead.Choice choice, int[] more) {
        return new Sum(
                more, capacitance, cost + choice.cost(), onPart, micrometres + choice.lead(), null, choice, this);
    }

    Sum and(Option next, boolean mains, int[] more, long[] capacity) {
        long length = next.micrometres();
        return new Sum(
                more,
                capacity,
                cost + next.cost(),
                onPart + (mains ? length : 0),
                micrometres + length,
                next,
                null,
                this);
    }
}
