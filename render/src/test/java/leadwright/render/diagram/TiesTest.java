package leadwright.render.diagram;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import leadwright.planner.Plan;
import org.junit.jupiter.api.Test;

class TiesTest {
    private static final List<String> POLE = List.of("other pole, patient auxiliary current");

    private static Ties tie(String name, List<Integer> jacks, List<String> purposes) {
        return new Ties(name, 0, jacks, purposes);
    }

    @Test
    void those_for_the_same_purpose_are_said_together_and_never_parted_from_their_letter() {
        List<String> words = Ties.words(List.of(
                tie("A", List.of(2, 3), POLE),
                tie("B", List.of(1, 2), List.of("total patient leakage")),
                tie("C", List.of(1, 3), POLE)));

        assertThat(words)
                .containsExactly(
                        "A\u00a02,\u00a03 / C\u00a01,\u00a03: other pole, patient auxiliary current",
                        "B\u00a01,\u00a02: total patient leakage");
    }

    @Test
    void one_without_a_bracket_is_named_by_its_jacks_alone() {
        assertThat(tie("", List.of(4, 5, 6), POLE).words()).startsWith("4\u20136: ");
    }

    /** Brackets that reach over each other stand side by side; those that do not share a lane. */
    @Test
    void brackets_in_one_lane_never_touch() {
        Planned.all()
                .forEach((name, plan) -> plan.hookups().forEach(hookup -> {
                    List<Ties> ties = Ties.of(plan, hookup, TesterPainter.LANES);
                    for (Ties one : ties) {
                        for (Ties other : ties) {
                            if (one != other && one.lane() == other.lane()) {
                                List<Integer> a = one.jacks();
                                List<Integer> b = other.jacks();
                                assertThat(a.get(a.size() - 1) < b.get(0) || b.get(b.size() - 1) < a.get(0))
                                        .as("%s, %s: %s and %s", name, hookup.id(), one, other)
                                        .isTrue();
                            }
                        }
                        assertThat(one.bracketed()).isEqualTo(one.lane() < TesterPainter.LANES);
                    }
                }));
    }

    /** An internally powered device has its wrapped case tied to earth, by one jack alone. */
    @Test
    void one_jack_that_is_tied_to_earth_is_named() {
        Plan plan = Planned.plan("wickling-rhythm-card", "k1-marrowgate-bench", "iec-62353-2014");
        assertThat(Ties.words(Ties.of(plan, plan.hookups().get(0), TesterPainter.LANES)))
                .contains("4: earthed, applied part leakage");
    }
}
