package leadwright.planner.plan;

import java.util.Collection;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * What a reading asks of the wiring: connections measured as one, the other pole, and those tied to earth. The three sets
 * are disjoint; what is in none of them floats, or need not be connected. Elements are full connection names in natural
 * order, see {@link NaturalOrder}.
 */
public record Demand(SortedSet<String> measured, SortedSet<String> against, SortedSet<String> earthed) {

    public static final Demand NOTHING = Demand.of(java.util.List.of());

    public Demand {
        measured = sorted(measured);
        against = sorted(against);
        earthed = sorted(earthed);
        for (String each : measured) {
            if (against.contains(each) || earthed.contains(each)) {
                throw new IllegalArgumentException(each + " is in two sets of one demand");
            }
        }
        for (String each : against) {
            if (earthed.contains(each)) {
                throw new IllegalArgumentException(each + " is in two sets of one demand");
            }
        }
        if (measured.isEmpty() && !(against.isEmpty() && earthed.isEmpty())) {
            throw new IllegalArgumentException("a demand with nothing measured");
        }
    }

    public static Demand of(Collection<String> measured) {
        return new Demand(sorted(measured), sorted(java.util.List.of()), sorted(java.util.List.of()));
    }

    public static Demand of(Collection<String> measured, Collection<String> against, Collection<String> earthed) {
        return new Demand(sorted(measured), sorted(against), sorted(earthed));
    }

    /** Whether it asks anything of the wiring. */
    public boolean isNothing() {
        return measured.isEmpty();
    }

    /** All connections that must be present. */
    public SortedSet<String> all() {
        // The largest set is copied as it is sorted; the others are put into it.
        SortedSet<String> largest = measured.size() >= against.size() ? measured : against;
        largest = largest.size() >= earthed.size() ? largest : earthed;
        SortedSet<String> all = new TreeSet<>(largest);
        for (SortedSet<String> each : java.util.List.of(measured, against, earthed)) {
            if (each != largest) {
                all.addAll(each);
            }
        }
        return all;
    }

    /** One line that names the demand, the same for equal demands. */
    public String key() {
        return join(measured) + "|" + join(against) + "|" + join(earthed);
    }

    private static String join(SortedSet<String> set) {
        return set.stream().collect(Collectors.joining(","));
    }

    private static SortedSet<String> sorted(Collection<String> names) {
        SortedSet<String> set = new TreeSet<>(NaturalOrder.IDS);
        set.addAll(names);
        return java.util.Collections.unmodifiableSortedSet(set);
    }
}
