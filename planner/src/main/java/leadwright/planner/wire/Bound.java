package leadwright.planner.wire;

import java.util.List;

/**
 * A lower bound.
 *
 * @param argument in words and numbers
 * @param weights by requirement number
 * @param heaviest most weight that one hookup holds
 */
record Bound(int hookups, String argument, long[] weights, long heaviest) {
    Bound raised(int to, String why) {
        return new Bound(to, why, weights, heaviest);
    }

    /** The same number, with equal weights. */
    Bound plain(List<Requirement> core) {
        long[] equal = new long[weights.length];
        core.forEach(each -> equal[each.index()] = 1);
        return new Bound(hookups, argument, equal, core.size());
    }

    long weight(Requirement each) {
        return weights[each.index()];
    }
}
