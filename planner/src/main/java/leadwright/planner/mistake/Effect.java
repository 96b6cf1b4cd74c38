package leadwright.planner.mistake;

import java.util.List;
import leadwright.planner.foresee.Variation;

/** What a slip does to the circuits of the readings it touches. */
public sealed interface Effect {
    /** Nothing at all. */
    record None() implements Effect {}

    /** Pieces of the wiring parted and joined. */
    record Wires(List<Edit> edits) implements Effect {
        public Wires {
            edits = List.copyOf(edits);
        }
    }

    /** The arrangement of device, tester and supply. */
    record Arrangement(Variation variation) implements Effect {}

    /** An earth reading: what is added to it and by what it is then shunted; Ω. */
    record EarthPath(Earth how) implements Effect {}

    /** Every leakage reading is multiplied. */
    record Scaled(double factor) implements Effect {}

    /** Ways in which an earth reading goes wrong. */
    enum Earth {
        /** No path at all. */
        OPEN,
        /** Another part's path, as good as the right one. */
        ELSEWHERE,
        /** A second path of little resistance beside it. */
        SHUNTED,
        /** The cord's conductor is nulled away. */
        CORD_NULLED,
        /** One contact more. */
        LONGER,
        /** Leads warmed by the current. */
        WARMED,
        /** Nulled with the tips apart: as much as the tester nulls is taken off. */
        NULLED_OPEN,
        /** The cord's conductor is bad: a fault. */
        CORD_WORN,
        /** The joint of this part is bad: a fault. */
        JOINT_WORN
    }

    /** One change of the wiring. */
    sealed interface Edit {
        /** The resistance of this name is taken out. */
        record Part(String resistance) implements Edit {}

        /** Two nodes are joined through so many Ω. */
        record Join(String a, String b, double ohms) implements Edit {}
    }
}
