package leadwright.planner.wire;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import leadwright.catalog.table.Connectors;
import leadwright.planner.plan.Hookup;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Against every wiring with as few hookups: none ranks before the planner's. */
class RankingBruteForceTest {
    private static int tried;
    private static int seconds;
    private static int contacts;
    private static int crossings;
    private static int several;
    private static int proven;

    /** Seeds whose cases have too many rows to try in a moment; all others up to 345 are tried. */
    private static final Set<Long> TOO_LARGE = Set.of(1L, 6L, 74L, 97L);

    static Stream<SmallCase> cases() {
        return LongStream.rangeClosed(1, 345)
                .filter(seed -> !TOO_LARGE.contains(seed))
                .mapToObj(SmallCase::drawRanked);
    }

    /*
     *   c1 --snap--\                 which wires share a fan-out, which jack each has, what
     *   c2 --snap---fan--[1]         stays in when another hookup follows: all of it is tried
     *   c3 --snap--------[2]
     */
    @ParameterizedTest(name = "{0}")
    @MethodSource("cases")
    void none_ranks_before_it(SmallCase small) {
        Wiring wiring = Rig.wire(small.device(), small.kit(), small.obligations());
        new HookupCheck(small.device(), small.kit(), Connectors.builtIn()).check(wiring, small.obligations());
        RankBrute brute = new RankBrute(small);
        if (brute.all().isEmpty()) {
            assertThat(wiring.uncovered()).hasSize(small.demands().size());
            return;
        }
        assertThat(wiring.hookups()).hasSize(brute.fewest());
        RankBrute.Answer answer = brute.first();
        long[] rank = brute.rank(wholes(brute, wiring, small));
        String as = small + ": " + Arrays.toString(rank) + " against " + Arrays.toString(answer.best());
        assertThat(Arrays.compare(rank, answer.best())).as(as).isGreaterThanOrEqualTo(0);
        boolean first = wiring.proof().argument().contains("ranks first");
        if (first) {
            assertThat(rank).as(as).isEqualTo(answer.best());
        }
        tried++;
        proven += first ? 1 : 0;
        several += wiring.hookups().size() > 1 ? 1 : 0;
        seconds += answer.seconds() > 1 ? 1 : 0;
        contacts += answer.contacts() > 1 ? 1 : 0;
        crossings += answer.crossings() > 1 ? 1 : 0;
    }

    private static List<RankBrute.Whole> wholes(RankBrute brute, Wiring wiring, SmallCase small) {
        List<RankBrute.Whole> wholes = new ArrayList<>();
        for (Hookup hookup : wiring.hookups()) {
            int serves = 0;
            for (int d = 0; d < small.demands().size(); d++) {
                serves |= wiring.takenIn().get("d" + d).contains(hookup.id()) ? 1 << d : 0;
            }
            wholes.add(new RankBrute.Whole(brute.wires(hookup), serves));
        }
        return wholes;
    }

    /** Where all wirings rank alike nothing is shown. */
    @AfterAll
    static void in_many_cases_there_was_a_choice() {
        if (tried < 300) {
            return;
        }
        assertThat(several).as("several hookups").isGreaterThan(100);
        assertThat(seconds).as("differ in seconds").isGreaterThan(150);
        assertThat(contacts).as("differ in contacts").isGreaterThan(100);
        assertThat(crossings).as("differ in crossings").isGreaterThan(150);
        assertThat(proven).as("proven first").isGreaterThan(tried * 8 / 10);
    }

    @Test
    void the_same_case_gives_the_same_wiring() {
        for (long seed = 1; seed <= 20; seed++) {
            SmallCase small = SmallCase.drawRanked(seed);
            assertThat(Rig.wire(small.device(), small.kit(), small.obligations())
                            .hookups())
                    .isEqualTo(Rig.wire(small.device(), small.kit(), small.obligations())
                            .hookups());
        }
    }
}
