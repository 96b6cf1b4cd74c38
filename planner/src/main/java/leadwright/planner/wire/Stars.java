package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToLongFunction;

/**
 * Phase 7j: candidates that each read one connection against or beside others of the same set.
 *
 * <p>Needs: a draft, candidates with weights. Gives: the most that such candidates add with so many free jacks, and the
 * candidates that are no such. Method: sets that are disjoint are blocks; from each block as many candidates as the free jacks
 * take, by dynamic programming. Cost: blocks × jacks². Proof: the first of a block adds as many cells as the one that adds
 * fewest, each further one a cell for its connection, which stood together with those of the others of the block; the last
 * maybe none. What disjoint blocks add adds up, but
 * for a cell of the draft that they cover whole: of it one part fewer is left. On a tester that ties neighbours and links no
 * jacks a block less one of its connections is a run only when that one stands at an end of it, so two of a block come at most.
 */
final class Stars {
    private final Draft draft;
    private final ToLongFunction<Requirement> weight;
    private final boolean ends;
    private final List<Block> blocks = new ArrayList<>();
    private final List<Requirement> others = new ArrayList<>();

    private record Place(BitSet set, int cell) {}

    private record Block(Place place, List<Requirement> members) {
        BitSet set() {
            return place.set();
        }
    }

    /** @param ends whether two of a block come at most */
    Stars(Draft draft, List<Requirement> candidates, ToLongFunction<Requirement> weight, boolean ends) {
        this.draft = draft;
        this.weight = weight;
        this.ends = ends;
        Map<Place, Block> byPlace = new LinkedHashMap<>();
        for (Requirement each : candidates) {
            if (reads(each)) {
                int cell = draft.cellOf(each.with(Requirement.MEASURED).nextSetBit(0));
                byPlace.computeIfAbsent(new Place(each.all(), cell), place -> new Block(place, new ArrayList<>()))
                        .members()
                        .add(each);
            } else {
                others.add(each);
            }
        }
        List<Block> largestFirst = new ArrayList<>(byPlace.values());
        largestFirst.sort(
                Comparator.comparingInt((Block block) -> -block.members().size()));
        BitSet covered = new BitSet();
        for (Block block : largestFirst) {
            if (block.members().size() > 1 && !block.set().intersects(covered)) {
                covered.or(block.set());
                blocks.add(block);
            } else {
                others.addAll(block.members());
            }
        }
    }

    /** Whether it parts one connection, not yet parted, from one set of all the others that it names. */
    private boolean reads(Requirement each) {
        BitSet measured = each.with(Requirement.MEASURED);
        if (measured.cardinality() != 1
                || each.all().cardinality() < 3
                || each.with(Requirement.AGAINST).cardinality() != each.all().cardinality() - 1) {
            return false;
        }
        int cell = draft.cellOf(measured.nextSetBit(0));
        return cell < 0 || draft.connectionsOf(cell).cardinality() > 1;
    }

    /** Candidates that belong to no block. */
    List<Requirement> others() {
        return others;
    }

    /** Most that the candidates of the blocks add. */
    long most(int free) {
        int room = free + covered();
        long[] best = new long[room + 1];
        for (Block block : blocks) {
            List<Requirement> members = new ArrayList<>(block.members());
            members.sort(Comparator.comparingLong((Requirement each) -> -weight.applyAsLong(each)));
            int first = members.stream()
                            .mapToInt(each -> draft.cellsWith(each, Integer.MAX_VALUE - 1))
                            .min()
                            .orElse(0)
                    - draft.cells();
            BitSet together = (BitSet) block.set().clone();
            if (block.place().cell() >= 0) {
                together.and(draft.connectionsOf(block.place().cell()));
            }
            int most = ends ? Math.min(2, members.size()) : members.size();
            for (int jacks = room; jacks >= 0; jacks--) {
                long sum = 0;
                for (int count = 1; count <= most; count++) {
                    sum += weight.applyAsLong(members.get(count - 1));
                    int last = count >= together.cardinality() - 1 ? 1 : 0;
                    int cells = Math.max(0, first + count - 1 - last);
                    if (cells <= jacks) {
                        best[jacks] = Math.max(best[jacks], best[jacks - cells] + sum);
                    }
                }
            }
        }
        return best[room];
    }

    /** Cells of the draft that the blocks cover whole. */
    private int covered() {
        BitSet all = new BitSet();
        blocks.forEach(block -> all.or(block.set()));
        int covered = 0;
        for (int cell = 0; cell < draft.cells(); cell++) {
            BitSet left = draft.connectionsOf(cell);
            left.andNot(all);
            covered += left.isEmpty() ? 1 : 0;
        }
        return covered;
    }
}
