package leadwright.planner.mistake;

import java.util.Set;
import leadwright.catalog.device.Words;

/**
 * Kinds of proof steps: acts that would show a slip which the readings do not show. Seconds are common practice, no source.
 */
public enum ProofKind {
    /** Ends counted against the list and tugged. */
    COUNT_AND_TUG(Per.HOOKUP, 5, 2, Set.of(SlipKind.WIRE_OFF, SlipKind.WRONG_BUNDLE, SlipKind.TRUNK_OFF)),
    /** Each trunk and single lead followed to its jack, the number read out. */
    FOLLOW_TO_JACK(Per.HOOKUP, 5, 4, Set.of(SlipKind.BUNDLES_SWAPPED, SlipKind.TRUNK_OFF)),
    /** Foils pressed, baths and fluid contacts looked into. */
    PRESS_AND_LOOK(Per.HOOKUP, 5, 5, Set.of(SlipKind.POOR_CONTACT, SlipKind.FOIL_ON_METAL)),
    /** Each end followed from the patient end over fan-outs to its jack: counting, tugging and following in one. */
    READ_BACK_BY_TWO(
            Per.HOOKUP,
            20,
            8,
            Set.of(
                    SlipKind.WIRE_OFF,
                    SlipKind.WRONG_BUNDLE,
                    SlipKind.TRUNK_OFF,
                    SlipKind.BUNDLES_SWAPPED,
                    SlipKind.POOR_CONTACT,
                    SlipKind.FOIL_ON_METAL)),
    /** The clip's place compared with the reading's, on bare metal of the housing. */
    LOOK_AT_CLIP(Per.CLIPPING, 3, 0, Set.of(SlipKind.CLIP_ELSEWHERE, SlipKind.CLIP_ON_PAINT)),
    /** Before the first earth reading and again before power: nothing but the hookup touches the device or shares its outlet. */
    NOTHING_ELSE_TOUCHES(Per.PLAN, 10, 0, Set.of(SlipKind.SECOND_WAY_TO_EARTH, SlipKind.SECOND_DEVICE)),
    /** The device on as the plan asks, and its mains lamp lit or current drawn and not zero. */
    DEVICE_RUNS(Per.PLAN, 5, 0, Set.of(SlipKind.SWITCH_OFF, SlipKind.STANDBY, SlipKind.ON_BATTERY)),
    /** With the supply open the mains lamp out, or no current drawn. */
    SUPPLY_REALLY_OPENS(Per.PLAN, 5, 0, Set.of(SlipKind.SUPPLY_NOT_OPENED)),
    /** Before the first reading of direct current: the tester shows that it reads that. */
    COMPONENT_SHOWN(Per.PLAN, 5, 0, Set.of(SlipKind.AC_FOR_DC)),
    /** The tester's own statement of what it does with unused jacks, at its display or in its instructions. */
    IDLE_JACKS_LOOKED_UP(Per.PLAN, 15, 0, Set.of(SlipKind.IDLE_JACKS_EARTHED)),
    /** The tick for the state at the head of each group of readings, which the bench sheet has in any case. */
    STATE_TICK(
            Per.SHEET,
            0,
            0,
            Set.of(
                    SlipKind.POLARITY_NOT_TURNED,
                    SlipKind.SUPPLY_NOT_OPENED,
                    SlipKind.SUPPLY_LEFT_OPEN,
                    SlipKind.EARTH_NOT_OPENED,
                    SlipKind.EARTH_LEFT_OPEN));

    /** How often it is done. */
    public enum Per {
        /**
         * When a hookup has been built. Where it is come to again, what is re-plugged is tugged as it is joined, within the joint's own
         * seconds.
         */
        HOOKUP,
        /** Each time that the earth clip has been put on a part. */
        CLIPPING,
        /** Once in a plan; twice where it is for earth readings and for leakage. */
        PLAN,
        /** It is on the bench sheet in any case. */
        SHEET
    }

    private final Per per;
    private final int seconds;
    private final int each;
    private final Set<SlipKind> exposes;

    ProofKind(Per per, int seconds, int each, Set<SlipKind> exposes) {
        this.per = per;
        this.seconds = seconds;
        this.each = each;
        this.exposes = exposes;
    }

    public Per per() {
        return per;
    }

    /** @param things ends, jacks or contact aids that it goes over */
    int seconds(int things) {
        return seconds + each * things;
    }

    public boolean exposes(SlipKind slip) {
        return exposes.contains(slip);
    }

    /** As written in a plan. */
    public String word() {
        return Words.of(this);
    }
}
