package leadwright.planner.wire;

/**
 * What the readings of a hookup ask of its items.
 *
 * @param microvolts voltage that every item must be rated for; 0 where no source is put on a chain
 * @param mains mains is put on an applied part through the chains
 * @param insulation the insulation voltage is put on them
 */
record Duty(long microvolts, boolean mains, boolean insulation) {

    static final Duty ORDINARY = new Duty(0, false, false);

    Duty and(Duty other) {
        return within(other)
                ? other
                : new Duty(
                        Math.max(microvolts, other.microvolts), mains || other.mains, insulation || other.insulation);
    }

    /** Whether whatever serves {@code other} serves this too. */
    boolean within(Duty other) {
        return microvolts <= other.microvolts && (!mains || other.mains) && (!insulation || other.insulation);
    }
}
