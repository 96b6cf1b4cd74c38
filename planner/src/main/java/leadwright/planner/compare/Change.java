package leadwright.planner.compare;

import java.util.List;
import java.util.Optional;

/**
 * One difference between two plans.
 *
 * @param family what like changes have in common, for instance the quantity of readings and its clause
 * @param subject what it is about, in words; for a hookup its id in the plan that has it
 * @param before how it is in the first plan, empty where that has none of it
 * @param after how it is in the second plan, empty where that has none of it
 * @param inA ids in the first plan of the readings or hookups concerned; empty where it concerns none
 * @param inB the same in the second plan
 */
public record Change(
        Kind kind,
        Trend trend,
        String family,
        String subject,
        Optional<String> before,
        Optional<String> after,
        List<String> inA,
        List<String> inB) {
    public Change {
        inA = List.copyOf(inA);
        inB = List.copyOf(inB);
    }

    /** A change of something that is its own family and concerns no single reading or hookup. */
    static Change of(Kind kind, String subject, Optional<String> before, Optional<String> after) {
        return new Change(kind, trend(before, after), subject, subject, before, after, List.of(), List.of());
    }

    /** Came, went, or otherwise. */
    static Trend trend(Optional<String> before, Optional<String> after) {
        return before.isEmpty() ? Trend.CAME : after.isEmpty() ? Trend.WENT : Trend.OTHERWISE;
    }

    public Concern concern() {
        return kind.concern();
    }

    /** The same seen from the second plan. */
    public Change mirrored() {
        return new Change(kind, trend.opposite(), family, subject, after, before, inB, inA);
    }

    /** One plain sentence. */
    public String sentence() {
        return Wording.of(List.of(this));
    }
}
