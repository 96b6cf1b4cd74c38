package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The order in which requirements are handed out, and for each the one that its twin connection's was handed out as.
 *
 * <p>Requirements of one connection follow one another, and connections of a class of twins do: then, of all ways that
 * differ by an exchange of twins, only the one need be tried in which the connections' lists of hookups do not decrease.
 */
final class Sequence {
    private final List<Requirement> order = new ArrayList<>();
    private final List<Integer> before = new ArrayList<>();
    private final List<Integer> first = new ArrayList<>();

    Sequence(Twins twins, List<Requirement> core) {
        List<List<Integer>> classes =
                twins.classes().stream().filter(members -> members.size() > 1).toList();
        List<Requirement> left = new ArrayList<>(core);
        List<List<Requirement>> blocks = new ArrayList<>();
        for (List<Integer> members : classes) {
            if (ordered(twins, classes, members, core)) {
                blocks.add(left.stream()
                        .filter(each -> twins.singledOut(each, members) == members.get(0))
                        .toList());
                left.removeIf(each -> !Twins.uniform(each, members));
            } else {
                blocks.add(List.of());
            }
        }
        left.sort(Comparator.comparingInt((Requirement each) -> -each.all().cardinality())
                .thenComparingInt(Requirement::index));
        left.forEach(each -> add(each, -1, order.size()));
        for (int c = 0; c < classes.size(); c++) {
            addBlock(twins, classes.get(c), blocks.get(c));
        }
    }

    /** Every requirement that is not alike to all members singles one out, and tells no other class's members apart. */
    private static boolean ordered(
            Twins twins, List<List<Integer>> classes, List<Integer> members, List<Requirement> core) {
        return core.stream()
                .filter(each -> !Twins.uniform(each, members))
                .allMatch(each -> twins.singledOut(each, members) >= 0
                        && classes.stream()
                                .filter(other -> other != members)
                                .allMatch(other -> Twins.uniform(each, other)));
    }

    private void addBlock(Twins twins, List<Integer> members, List<Requirement> block) {
        for (int m = 0; m < members.size() && !block.isEmpty(); m++) {
            int start = order.size();
            for (Requirement each : block) {
                add(twins.twin(each, members.get(0), members.get(m)), m == 0 ? -1 : order.size() - block.size(), start);
            }
        }
    }

    private void add(Requirement each, int twin, int start) {
        order.add(each);
        before.add(twin);
        first.add(start);
    }

    List<Requirement> order() {
        return order;
    }

    /** The least hookup that the requirement at this place need be tried in, given what the places before it have. */
    int least(int place, int[] hookup) {
        int twin = before.get(place);
        if (twin < 0) {
            return 0;
        }
        int distance = place - twin;
        for (int earlier = first.get(place); earlier < place; earlier++) {
            if (hookup[earlier] != hookup[earlier - distance]) {
                return 0;
            }
        }
        return hookup[twin];
    }
}
