package leadwright.planner.wire;

import java.util.List;

/**
 * A way from a terminal to an open socket through items in a row; empty where the terminal itself mates.
 *
 * @param use pieces taken, by piece number
 * @param length micrometres
 * @param femtofarads sum over its items
 */
record Route(List<Step> steps, int[] use, long length, long femtofarads) {

    record Step(Part part, int inlet) {}

    int items() {
        return steps.size();
    }

    /** Length of all its items, whether a chain gains by it or not; micrometres. */
    long lead() {
        long sum = 0;
        for (Step step : steps) {
            sum += Bench.length(step.part().item());
        }
        return sum;
    }

    /** Probes where a clip would do: the last thing that ranks routes. */
    int probes() {
        return (int) steps.stream()
                .filter(step -> step.part().item().kind() == leadwright.catalog.kit.ItemKind.PROBE)
                .count();
    }
}
