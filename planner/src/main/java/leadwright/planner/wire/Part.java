package leadwright.planner.wire;

import java.util.List;
import leadwright.catalog.kit.KitItem;

/**
 * A kit item in one way of using it: which end looks towards the tester, and what it takes on the other side.
 *
 * @param piece number of the item's kind in the kit, in natural order of ids
 * @param out the end towards the tester
 * @param inlets ends that take chains: one for a plain two-ended item, the branches of a fan-out, the end and the rear
 *     socket of an item with a stackable plug
 * @param femtofarads of the whole item; 0 where it has no length
 * @param capacitanceKnown whether the kit states it for an item that has a length
 */
record Part(int piece, KitItem item, String out, List<Inlet> inlets, long femtofarads, boolean capacitanceKnown) {

    /**
     * One end that takes a chain.
     *
     * @param length micrometres that a chain gains through it
     * @param fill must not stay free in this duty
     * @param rear the socket in the back of a stackable plug
     */
    record Inlet(String end, List<String> also, long length, boolean fill, boolean rear) {}

    /** Whether it may gather two chains or more. */
    boolean gathers() {
        return inlets.size() > 1;
    }

    /** Whether it may stand in a chain with only this inlet in use. */
    boolean converts(int inlet) {
        if (inlets.get(inlet).rear()) {
            return false;
        }
        for (int i = 0; i < inlets.size(); i++) {
            if (i != inlet && inlets.get(i).fill()) {
                return false;
            }
        }
        // Equal branches: the first stands for all.
        return inlet == 0 || !inlets.get(inlet).equals(inlets.get(0));
    }
}
