package leadwright.planner.foresee;

/**
 * A value that a circuit rests on, with the span in which it may lie. Two with one id are the same value.
 *
 * @param id {@code line-earth}, {@code part-earth/ecg} …
 * @param nominal Ω, F, or a plain factor
 * @param low least that it may be, in the same unit
 * @param high most that it may be
 */
public record Parameter(String id, double nominal, double low, double high, Basis basis) {
    public Parameter {
        if (!(low <= nominal && nominal <= high && low > 0)) {
            throw new IllegalArgumentException(id + " lies outside its own span");
        }
    }

    /** A value within a share of itself, both ways. */
    static Parameter within(String id, double nominal, double share, Basis basis) {
        return new Parameter(id, nominal, nominal * (1 - share), nominal * (1 + share), basis);
    }
}
