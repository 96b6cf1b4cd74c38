package leadwright.planner.order;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;

/**
 * One form for all partial orders that differ only in which twin is which: the twins of a family are put in line by what is
 * done with them and by whether they may be selected. Where there are no twins, everything is its own form.
 */
final class Lineup {
    /** A signature has one bit for each unit and demand of a twin. */
    private static final int MOST_BITS = 60;

    private final List<List<Twins.Twin>> families;

    Lineup(List<List<Twins.Twin>> families) {
        this.families = families.stream()
                .filter(family -> family.get(0).units().length + family.get(0).demands().length <= MOST_BITS)
                .toList();
    }

    boolean isEmpty() {
        return families.isEmpty();
    }

    /** Changes both sets to the form that stands for them. */
    void form(BitSet done, BitSet tie) {
        for (List<Twins.Twin> family : families) {
            long[] signatures = new long[family.size()];
            for (int i = 0; i < signatures.length; i++) {
                signatures[i] = signature(family.get(i), done, tie);
            }
            Arrays.sort(signatures);
            for (int i = 0; i < signatures.length; i++) {
                write(family.get(i), signatures[i], done, tie);
            }
        }
    }

    private static long signature(Twins.Twin twin, BitSet done, BitSet tie) {
        long signature = 0;
        for (int unit : twin.units()) {
            signature = signature << 1 | (done.get(unit) ? 1 : 0);
        }
        for (int demand : twin.demands()) {
            signature = signature << 1 | (tie.get(demand) ? 1 : 0);
        }
        return signature;
    }

    private static void write(Twins.Twin twin, long signature, BitSet done, BitSet tie) {
        int bit = twin.units().length + twin.demands().length;
        for (int unit : twin.units()) {
            done.set(unit, (signature >> --bit & 1) == 1);
        }
        for (int demand : twin.demands()) {
            tie.set(demand, (signature >> --bit & 1) == 1);
        }
    }

    /** The binary logarithm of how many ways there are of choosing among these units before anything is done. */
    double freedom(BitSet units) {
        double bits = 0;
        BitSet rest = (BitSet) units.clone();
        for (List<Twins.Twin> family : families) {
            int[] positions = positions(family.get(0), units, family);
            if (positions.length > 0) {
                double masks = Math.pow(2, positions.length);
                for (int i = 1; i <= family.size(); i++) {
                    bits += Math.log((masks - 1 + i) / i) / Math.log(2);
                }
                clear(rest, family, positions);
            }
        }
        return bits + rest.cardinality();
    }

    /**
     * Ways of choosing among these units, one of all that differ by an exchange of twins which are alike so far. The last one
     * chooses them all.
     */
    List<BitSet> choices(BitSet units, BitSet done, BitSet tie) {
        List<BitSet> all = new ArrayList<>();
        all.add(new BitSet());
        BitSet rest = (BitSet) units.clone();
        for (List<Twins.Twin> family : families) {
            boolean[] seen = new boolean[family.size()];
            for (int i = 0; i < seen.length; i++) {
                List<Twins.Twin> alike = new ArrayList<>();
                long signature = signature(family.get(i), done, tie);
                for (int j = i; j < seen.length; j++) {
                    if (!seen[j] && signature(family.get(j), done, tie) == signature) {
                        seen[j] = true;
                        alike.add(family.get(j));
                    }
                }
                int[] positions = alike.size() > 1 ? positions(family.get(i), units, alike) : new int[0];
                if (positions.length > 0) {
                    all = multiply(all, alike, positions, 0, (1 << positions.length) - 1);
                    clear(rest, alike, positions);
                }
            }
        }
        for (int u = rest.nextSetBit(0); u >= 0; u = rest.nextSetBit(u + 1)) {
            int size = all.size();
            for (int i = 0; i < size; i++) {
                BitSet more = (BitSet) all.get(i).clone();
                more.set(u);
                all.add(more);
            }
        }
        return all;
    }

    private static void clear(BitSet units, List<Twins.Twin> twins, int[] positions) {
        for (Twins.Twin twin : twins) {
            for (int p : positions) {
                units.clear(twin.units()[p]);
            }
        }
    }

    /** Positions at which all of these twins have a unit to choose. */
    private static int[] positions(Twins.Twin sample, BitSet units, List<Twins.Twin> alike) {
        int[] positions = new int[sample.units().length];
        int count = 0;
        for (int p = 0; p < positions.length; p++) {
            boolean all = units.get(sample.units()[p]);
            for (int i = 0; i < alike.size() && all; i++) {
                all = units.get(alike.get(i).units()[p]);
            }
            if (all) {
                positions[count++] = p;
            }
        }
        return Arrays.copyOf(positions, count);
    }

    /** Each twin from the one numbered {@code from} chooses no larger a mask of positions than the one before it. */
    private static List<BitSet> multiply(
            List<BitSet> given, List<Twins.Twin> alike, int[] positions, int from, int largest) {
        if (from == alike.size()) {
            return given;
        }
        List<BitSet> all = new ArrayList<>();
        for (int mask = 0; mask <= largest; mask++) {
            List<BitSet> with = new ArrayList<>();
            for (BitSet each : given) {
                BitSet more = (BitSet) each.clone();
                for (int p = 0; p < positions.length; p++) {
                    if ((mask >> p & 1) == 1) {
                        more.set(alike.get(from).units()[positions[p]]);
                    }
                }
                with.add(more);
            }
            all.addAll(multiply(with, alike, positions, from + 1, mask));
        }
        return all;
    }
}
