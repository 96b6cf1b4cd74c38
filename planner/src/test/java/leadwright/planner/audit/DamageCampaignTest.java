package leadwright.planner.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import leadwright.planner.Plan;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Ten thousand damaged plans and more, of every kind, at places drawn from seeds: the audit refuses each by the name of the
 * invariant that the damage was built to break, and in nine of ten names nothing else but what
 * breaks with it. With
 * {@code -Dleadwright.campaign=N} there are N times as many.
 */
class DamageCampaignTest {
    private static final int FACTOR = Integer.getInteger("leadwright.campaign", 1);
    private static final int OF_EACH_KIND = 118 * FACTOR;
    private static final int LEAST = 8;
    private static final int MANY = 50;
    /** Many plans have no place for a kind: no therapy output, no fan-out, one hookup. After so many draws they are left. */
    private static final int MISSES = 8 * FACTOR;

    private static final List<Kind> KINDS = Kind.all();

    private static final List<Result> RESULTS = results();

    /** What came of one kind: how many different damages, and what the audit said wrongly of them. */
    private record Result(Kind kind, int counted, List<String> wrong, List<String> beside) {}

    private static List<Result> results() {
        List<CampaignPlans.Good> plans = CampaignPlans.all();
        // One after another: another thread would wait for this class, which waits for its results.
        return IntStream.range(0, KINDS.size())
                .mapToObj(kind -> result(plans, kind))
                .toList();
    }

    private static Result result(List<CampaignPlans.Good> plans, int number) {
        Kind kind = KINDS.get(number);
        List<String> wrong = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        List<String> beside = new ArrayList<>();
        List<CampaignPlans.Good> open = new ArrayList<>(plans);
        Map<String, Integer> misses = new HashMap<>();
        int counted = 0;
        for (int draw = 0; counted < OF_EACH_KIND && !open.isEmpty(); draw++) {
            long seed = 1_000_000L * (number + 1) + draw;
            Dice dice = new Dice(seed);
            CampaignPlans.Good good = dice.pick(open).orElseThrow();
            int before = dice.drawn().size();
            Optional<Plan> damaged = kind.damage().apply(good.sample().plan(), dice);
            List<Integer> place = dice.drawn().subList(before, dice.drawn().size());
            if (damaged.isEmpty() || !seen.add(good + " " + place)) {
                if (misses.merge(good.name(), 1, Integer::sum) >= MISSES) {
                    open.remove(good);
                }
            } else {
                counted++;
                List<Breach> breaches = Audit.audit(
                        damaged.get(), good.sample().rules(), good.sample().connectors());
                String where = "seed " + seed + ", " + good + ": ";
                if (breaches.stream().noneMatch(breach -> breach.invariant() == kind.named())) {
                    wrong.add(where + "not named; found " + breaches);
                }
                breaches.stream()
                        .filter(breach -> breach.invariant() != kind.named()
                                && !kind.also().contains(breach.invariant()))
                        .findFirst()
                        .ifPresent(breach -> beside.add(where + breach));
            }
        }
        return new Result(kind, counted, wrong, beside);
    }

    @TestFactory
    Stream<DynamicTest> every_damage_of_a_kind_is_refused_by_its_name() {
        return RESULTS.stream()
                .map(result -> DynamicTest.dynamicTest(result.kind().toString(), () -> {
                    assertThat(result.wrong()).isEmpty();
                    assertThat(result.beside()).hasSizeLessThanOrEqualTo(result.counted() / 10);
                    assertThat(result.counted()).isGreaterThanOrEqualTo(LEAST);
                }));
    }

    @Test
    void there_are_ten_thousand_of_every_invariant() {
        assertThat(RESULTS.stream().mapToInt(Result::counted).sum()).isGreaterThanOrEqualTo(10_000 * FACTOR);
        assertThat(KINDS.stream()
                        .map(Kind::named)
                        .collect(Collectors.toCollection(() -> EnumSet.noneOf(Invariant.class))))
                .containsExactlyInAnyOrderElementsOf(EnumSet.allOf(Invariant.class));
        assertThat(RESULTS).filteredOn(result -> result.counted() >= MANY).hasSizeGreaterThan(60);
        assertThat(KINDS.stream().map(Kind::toString)).doesNotHaveDuplicates();
    }
}
