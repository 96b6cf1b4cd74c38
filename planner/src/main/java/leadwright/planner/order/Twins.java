package leadwright.planner.order;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import leadwright.planner.plan.MainsState.Fault;

/**
 * Demands that could change names with one another: whatever is done with the one could be done with the other.
 *
 * <p>A twin is a short list of demands with all units that ask for nothing else. Two twins are of one family when exchanging
 * them, unit for unit and demand for demand, turns the problem into itself: same states, hookups, places, precedence. All
 * exchanges in a family together make every permutation of it, so that of partial orders which differ by one no more than a
 * single one need be looked at. Every exchange is tried out on the whole problem before it is believed.
 */
final class Twins {
    /** Units and demands at the same position stand for one another. */
    record Twin(int[] units, int[] demands) {}

    private final Problem problem;
    private final List<List<Twin>> families = new ArrayList<>();
    private final List<BitSet> sole = new ArrayList<>();

    Twins(Problem problem) {
        this.problem = problem;
        for (int d = 0; d < problem.demands().size(); d++) {
            sole.add(new BitSet());
        }
        for (Unit unit : problem.units()) {
            if (unit.demands().cardinality() == 1) {
                sole.get(unit.demands().nextSetBit(0)).set(unit.index());
            }
        }
        find();
    }

    List<List<Twin>> families() {
        return families;
    }

    private void find() {
        BitSet used = new BitSet();
        for (int d = 0; d < sole.size(); d++) {
            if (used.get(d) || !free(d)) {
                continue;
            }
            List<Twin> family = new ArrayList<>();
            for (int other = d + 1; other < sole.size(); other++) {
                if (used.get(other) || !free(other)) {
                    continue;
                }
                Optional<Exchange> found = new Exchange().complete(d, other);
                if (found.isPresent() && found.get().joins(family, used)) {
                    if (family.isEmpty()) {
                        family.add(found.get().twin(true));
                        mark(used, family.get(0));
                    }
                    family.add(found.get().twin(false));
                    mark(used, family.get(family.size() - 1));
                }
            }
            if (!family.isEmpty()) {
                families.add(List.copyOf(family));
            }
        }
    }

    private boolean free(int demand) {
        return sole.get(demand).stream().anyMatch(u -> !problem.units().get(u).bound());
    }

    private static void mark(BitSet used, Twin twin) {
        Arrays.stream(twin.demands()).forEach(used::set);
    }

    /** What a unit must have in common with the one that it changes places with. */
    private static List<Object> likeness(Unit unit) {
        boolean touch = unit.readings().get(0).isTouch() && unit.stand().state().fault() == Fault.NONE;
        return List.of(
                unit.stand(),
                unit.phase(),
                unit.hookups(),
                touch,
                unit.places().cardinality(),
                unit.readings().size());
    }

    /** One exchange, grown until the precedence between units is kept. */
    private final class Exchange {
        private final Map<Integer, Integer> units = new TreeMap<>();
        private final Map<Integer, Integer> demands = new TreeMap<>();
        private final List<Integer> firstUnits = new ArrayList<>();
        private final List<Integer> firstDemands = new ArrayList<>();

        Optional<Exchange> complete(int one, int other) {
            if (!swap(one, other)) {
                return Optional.empty();
            }
            for (int i = 0; i < firstUnits.size(); i++) {
                if (!follow(firstUnits.get(i))) {
                    return Optional.empty();
                }
            }
            return keeps() ? Optional.of(this) : Optional.empty();
        }

        private boolean swap(int one, int other) {
            int[] left = sole.get(one).stream().toArray();
            int[] right = sole.get(other).stream().toArray();
            if (left.length != right.length || demands.containsKey(one) || demands.containsKey(other)) {
                return false;
            }
            demands.put(one, other);
            demands.put(other, one);
            firstDemands.add(one);
            Set<Integer> taken = new HashSet<>();
            for (int u : left) {
                Optional<Integer> match = Arrays.stream(right)
                        .boxed()
                        .filter(v -> !taken.contains(v) && likeness(unit(u)).equals(likeness(unit(v))))
                        .findFirst();
                if (match.isEmpty()) {
                    return false;
                }
                taken.add(match.get());
                units.put(u, match.get());
                units.put(match.get(), u);
                firstUnits.add(u);
            }
            return true;
        }

        /** What only the one waits for must change places with what only the other waits for. */
        private boolean follow(int u) {
            BitSet left = (BitSet) unit(u).before().clone();
            BitSet right = (BitSet) unit(units.get(u)).before().clone();
            BitSet both = (BitSet) left.clone();
            both.and(right);
            left.andNot(both);
            right.andNot(both);
            for (int v = left.nextSetBit(0); v >= 0; v = left.nextSetBit(v + 1)) {
                if (units.containsKey(v)) {
                    continue;
                }
                int like = v;
                Optional<Integer> match = right.stream()
                        .boxed()
                        .filter(w -> !units.containsKey(w)
                                && likeness(unit(w)).equals(likeness(unit(like)))
                                && unit(w).demands().cardinality() == 1)
                        .findFirst();
                if (match.isEmpty()
                        || unit(v).demands().cardinality() != 1
                        || !swap(
                                unit(v).demands().nextSetBit(0),
                                unit(match.get()).demands().nextSetBit(0))) {
                    return false;
                }
            }
            return true;
        }

        /** Whether the whole problem is turned into itself. */
        private boolean keeps() {
            for (Unit unit : problem.units()) {
                Unit image = unit(units.getOrDefault(unit.index(), unit.index()));
                if (problem.due()[unit.index()] != problem.due()[image.index()]
                        || !moved(unit.demands(), demands).equals(image.demands())
                        || !moved(unit.before(), units).equals(image.before())
                        || unit != image && !ownPlaces(unit)) {
                    return false;
                }
            }
            return true;
        }

        /** Whether no other unit that one visit could take with it is touched at the same place. */
        private boolean ownPlaces(Unit unit) {
            return problem.units().stream()
                    .noneMatch(other -> other != unit
                            && other.phase() == unit.phase()
                            && other.stand().equals(unit.stand())
                            && other.places().intersects(unit.places()));
        }

        private static BitSet moved(BitSet set, Map<Integer, Integer> by) {
            BitSet moved = new BitSet();
            set.stream().forEach(each -> moved.set(by.getOrDefault(each, each)));
            return moved;
        }

        /** Whether it exchanges the family's first twin with one that shares nothing with the others. */
        boolean joins(List<Twin> family, BitSet used) {
            boolean same = family.isEmpty()
                    || Arrays.equals(family.get(0).demands(), twin(true).demands())
                            && Arrays.equals(family.get(0).units(), twin(true).units());
            return same
                    && firstDemands.stream()
                            .noneMatch(d -> used.get(demands.get(d)) || family.isEmpty() && used.get(d));
        }

        Twin twin(boolean first) {
            return new Twin(
                    firstUnits.stream().mapToInt(u -> first ? u : units.get(u)).toArray(),
                    firstDemands.stream()
                            .mapToInt(d -> first ? d : demands.get(d))
                            .toArray());
        }
    }

    private Unit unit(int index) {
        return problem.units().get(index);
    }
}
