package leadwright.planner.audit;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.table.Connectors;
import leadwright.catalog.table.Mating;

/** Whether the ends along a chain mate, whichever way round each two-ended item is used. */
record ChainMating(Connectors connectors) {

    /**
     * Follows a chain from the device to the tester.
     *
     * @return what does not mate, or empty
     */
    Optional<String> fault(String terminal, List<KitItem> items, String socket) {
        Set<String> open = Set.of(terminal);
        boolean first = true;
        for (KitItem item : items) {
            Set<String> onward = new HashSet<>();
            for (Pass pass : passes(item)) {
                if (open.stream().anyMatch(end -> connectors.mates(end, pass.in()) != Mating.NO)) {
                    onward.add(pass.out());
                }
            }
            // A pin in a recess mates nothing: an item that says so goes on it.
            if (first && item.also().contains(terminal)) {
                onward.addAll(item.ends());
            }
            if (onward.isEmpty()) {
                return Optional.of(open + " does not mate " + item.id());
            }
            open = onward;
            first = false;
        }
        Set<String> last = open;
        boolean fits = last.stream().anyMatch(end -> connectors.mates(end, socket) != Mating.NO);
        return fits ? Optional.empty() : Optional.of(last + " does not mate " + socket);
    }

    private record Pass(String in, String out) {}

    private static List<Pass> passes(KitItem item) {
        List<Pass> passes = new ArrayList<>();
        String first = item.ends().get(0);
        String second = item.ends().get(1);
        // A fan-out is entered by a branch and left by its trunk: ends are trunk, branch.
        passes.add(new Pass(second, first));
        if (item.kind() != ItemKind.FAN_OUT) {
            passes.add(new Pass(first, second));
        }
        for (String also : item.also()) {
            passes.add(new Pass(also, first));
            passes.add(new Pass(also, second));
        }
        return passes;
    }
}
