package leadwright.planner.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Hand-made differences: each is reported, and nothing else. */
class ComparisonTest {

    static Stream<Edits.Edit> edits() {
        return Edits.all();
    }

    private static List<String> sentences(Comparison comparison) {
        return comparison.lines().stream().map(Line::sentence).toList();
    }

    @Test
    void aPlanAndItselfDifferInNothing() {
        Comparison comparison = Comparison.of(SmallPlan.side(), SmallPlan.side());
        assertThat(comparison.changes()).isEmpty();
        assertThat(comparison.sameAtTheBench()).isTrue();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("edits")
    void isReportedAndNothingElse(Edits.Edit edit) {
        Comparison comparison = Comparison.of(SmallPlan.side(), edit.side());
        assertThat(comparison.changes()).extracting(Change::kind).contains(edit.kind());
        assertThat(sentences(comparison)).containsExactlyElementsOf(edit.sentences());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("edits")
    void theOtherWayRoundIsTheMirrorImage(Edits.Edit edit) {
        Comparison forth = Comparison.of(SmallPlan.side(), edit.side());
        Comparison back = Comparison.of(edit.side(), SmallPlan.side());
        assertThat(back.changes())
                .containsExactlyInAnyOrderElementsOf(
                        forth.changes().stream().map(Change::mirrored).toList());
        assertThat(sentences(back)).doesNotContainAnyElementsOf(sentences(forth));
    }

    @Test
    void everyKindHasItsEdit() {
        Set<Kind> seen = EnumSet.noneOf(Kind.class);
        edits().forEach(edit ->
                Comparison.of(SmallPlan.side(), edit.side()).changes().forEach(each -> seen.add(each.kind())));
        assertThat(seen).containsExactlyElementsOf(EnumSet.allOf(Kind.class));
    }

    /** All edits that can be made together: the kinds follow in the order in which a person cares. */
    @Test
    void hazardsComeFirstAndTimeLast() {
        String text = SmallPlan.text();
        for (Kind kind :
                List.of(Kind.TOTAL, Kind.START_UPS, Kind.CHAIN, Kind.CLAUSE, Kind.LIMIT, Kind.ON_FAIL, Kind.KIT)) {
            text = edits().filter(edit -> edit.kind() == kind)
                    .findFirst()
                    .orElseThrow()
                    .change()
                    .apply(text);
        }
        Comparison comparison = Comparison.of(SmallPlan.side(), SmallPlan.side(text));
        assertThat(comparison.changes()).extracting(Change::concern).isSorted().contains(Concern.values());
    }
}
