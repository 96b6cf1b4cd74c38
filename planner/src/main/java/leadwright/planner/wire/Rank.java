package leadwright.planner.wire;

import java.util.Comparator;

/**
 * What ranks wirings of equally many hookups, the weightiest first.
 *
 * @param seconds of plugging: the first hookup set up, then from one to the next in the best order of hookups
 * @param contacts sum over all chains and hookups
 * @param pieces items to fetch: of each kind as many as the hookup that takes most of it
 * @param micrometres length of the items that mains is put on a part through: for each such demand in the hookup where
 *     it is least
 * @param crossings pairs of wires whose jacks stand in the other order than their connections on the panel
 */
record Rank(long seconds, long contacts, long pieces, long micrometres, long crossings) implements Comparable<Rank> {
    private static final Comparator<Rank> ORDER = Comparator.comparingLong(Rank::seconds)
            .thenComparingLong(Rank::contacts)
            .thenComparingLong(Rank::pieces)
            .thenComparingLong(Rank::micrometres)
            .thenComparingLong(Rank::crossings);

    @Override
    public int compareTo(Rank other) {
        return ORDER.compare(this, other);
    }

    Rank withSeconds(long other) {
        return new Rank(other, contacts, pieces, micrometres, crossings);
    }
}
