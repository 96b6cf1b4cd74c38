package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Phase 7d: one text for all sets of requirements that an exchange of twins makes of one another.
 *
 * <p>Needs: twins of all requirements. Gives: the text of any set of them. Method: a class is orderly when each requirement
 * that tells its members apart tells one from the others, and tells apart no other class; for its members the kinds of
 * requirement that each still has are listed, and the lists sorted. What belongs to no orderly class is named. Cost: linear.
 * Proof: twins in an orderly class may be put in any order, each with its own list.
 */
final class Canon {
    private final Map<Requirement, Place> places = new java.util.HashMap<>();

    private record Place(int kindClass, int member, int kind) {}

    Canon(Twins twins, List<Requirement> all) {
        List<List<Integer>> classes = twins.classes();
        for (int c = 0; c < classes.size(); c++) {
            List<Integer> members = classes.get(c);
            if (members.size() > 1 && orderly(twins, members, all)) {
                for (Requirement each : all) {
                    int told = Twins.uniform(each, members) ? -1 : twins.singledOut(each, members);
                    if (told >= 0) {
                        int kind = told == members.get(0)
                                ? each.index()
                                : twins.twin(each, members.get(0), told).index();
                        places.put(each, new Place(c, told, kind));
                    }
                }
            }
        }
    }

    private static boolean orderly(Twins twins, List<Integer> members, List<Requirement> all) {
        return all.stream()
                .filter(each -> !Twins.uniform(each, members))
                .allMatch(each -> twins.singledOut(each, members) >= 0
                        && twins.classes().stream()
                                .filter(other -> other != members)
                                .allMatch(other -> Twins.uniform(each, other)));
    }

    /**
     * A number that is equal for requirements that an exchange of twins makes of one another without changing the draft; -1
     * where that is not known.
     */
    long like(Requirement requirement, Draft draft) {
        Place place = places.get(requirement);
        return place == null ? -1 : place.kind() * 1_000L + draft.cellOf(place.member()) + 1;
    }

    String of(List<Requirement> set) {
        List<Integer> named = new ArrayList<>();
        SortedMap<Integer, SortedMap<Integer, List<Integer>>> lists = new TreeMap<>();
        for (Requirement each : set) {
            Place place = places.get(each);
            if (place == null) {
                named.add(each.index());
            } else {
                lists.computeIfAbsent(place.kindClass(), key -> new TreeMap<>())
                        .computeIfAbsent(place.member(), key -> new ArrayList<>())
                        .add(place.kind());
            }
        }
        named.sort(null);
        StringBuilder text = new StringBuilder(named.toString());
        lists.forEach((kindClass, byMember) -> text.append(kindClass)
                .append(byMember.values().stream()
                        .peek(list -> list.sort(null))
                        .map(List::toString)
                        .sorted()
                        .toList()));
        return text.toString();
    }
}
