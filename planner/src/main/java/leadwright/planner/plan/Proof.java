package leadwright.planner.plan;

/**
 * What is proven about a figure.
 *
 * @param answer the plan's figure
 * @param lowerBound no plan can be below it; equal to the answer exactly when {@code optimal}
 * @param argument the bound in words and numbers, and the search that closed a gap
 */
public record Proof(long answer, long lowerBound, String argument) {
    public boolean optimal() {
        return answer == lowerBound;
    }
}
