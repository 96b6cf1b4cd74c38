package leadwright.planner.plan;

import java.util.List;

/**
 * The smallest additions to the kit with which every reading can be wired that more items can help.
 *
 * @param alternatives each does on its own, and without any one piece of it some reading is stopped; the best first
 * @param proof of the number of pieces of the first
 */
public record Remedy(List<Proposal> alternatives, Proof proof) {
    public Remedy {
        alternatives = List.copyOf(alternatives);
    }
}
