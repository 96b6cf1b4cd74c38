package leadwright.render.edition;

import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;

/** What a person must know about readings: said once where it holds for all of a kind. */
final class Notes {

    private Notes() {}

    /**
     * Notes of every one of several readings; a single reading has none in common, and what is said of a check is one thought
     * that is not taken apart.
     */
    static Set<String> common(List<Reading> readings) {
        Set<String> common = new LinkedHashSet<>();
        boolean checks = readings.get(0).obligation().phase() == Obligation.Phase.CHECK;
        if (readings.size() > 1 && !checks) {
            of(readings.get(0)).forEach(common::add);
            readings.forEach(reading -> common.retainAll(of(reading).toList()));
        }
        return common;
    }

    /** Notes of a reading that are not said already. */
    static List<String> own(Reading reading, Set<String> common) {
        return of(reading).filter(note -> !common.contains(note)).toList();
    }

    private static Stream<String> of(Reading reading) {
        return reading.obligation().note().stream().flatMap(note -> Arrays.stream(note.split("; ")));
    }
}
