package leadwright.planner.audit;

/**
 * One broken invariant.
 *
 * @param where hookup, step or reading concerned
 * @param what what is wrong, for a person
 */
public record Breach(Invariant invariant, String where, String what) {
    @Override
    public String toString() {
        return invariant.word() + " (" + where + "): " + what;
    }
}
