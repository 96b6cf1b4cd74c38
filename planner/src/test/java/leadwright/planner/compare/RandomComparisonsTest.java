package leadwright.planner.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.table.RuleSets;
import leadwright.planner.Outcome;
import leadwright.planner.Planner;
import leadwright.planner.RandomCases;
import leadwright.planner.Request;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Occasion;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Plans of random devices on two benches, and plans with one thing changed in them. */
class RandomComparisonsTest {

    /** A device planned for two benches. */
    record TwoPlans(long seed, Side a, Side b) {
        @Override
        public String toString() {
            return "seed " + seed;
        }
    }

    /** Planned once for all tests. */
    private static final List<TwoPlans> CASES = planned();

    static Stream<TwoPlans> twoBenches() {
        return CASES.stream();
    }

    private static List<TwoPlans> planned() {
        return LongStream.range(71_000, 71_040)
                .boxed()
                .flatMap(seed -> planned(seed).stream())
                .toList();
    }

    private static Optional<TwoPlans> planned(long seed) {
        RandomCases.Case thin = RandomCases.any(seed);
        Kit ample = RandomCases.withAmpleKit(seed).kit();
        boolean small = thin.device().patientConnections().size() <= 2;
        String rules = seed % 4 == 0 && small ? "iec-60601-1-ed3" : "iec-62353-2014";
        Optional<Side> a = plan(thin, thin.kit(), "iec-62353-2014", thin.house());
        return a.flatMap(
                first -> plan(thin, ample, rules, House.defaults()).map(second -> new TwoPlans(seed, first, second)));
    }

    private static Optional<Side> plan(RandomCases.Case each, Kit kit, String rules, House house) {
        Outcome outcome = Planner.plan(new Request(
                each.device(),
                kit,
                RuleSets.builtIn().find(rules).orElseThrow(),
                house,
                Occasion.RECURRENT,
                Optional.empty()));
        return outcome instanceof Outcome.Planned planned ? Optional.of(Side.of(planned.plan())) : Optional.empty();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("twoBenches")
    void aPlanAndItselfDifferInNothing(TwoPlans plans) {
        assertThat(Comparison.of(plans.a(), plans.a()).changes()).isEmpty();
        assertThat(Comparison.of(plans.b(), plans.b()).changes()).isEmpty();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("twoBenches")
    void theOtherWayRoundIsTheMirrorImage(TwoPlans plans) {
        List<Change> forth = Comparison.of(plans.a(), plans.b()).changes();
        List<Change> back = Comparison.of(plans.b(), plans.a()).changes();
        assertThat(back)
                .containsExactlyInAnyOrderElementsOf(
                        forth.stream().map(Change::mirrored).toList());
        assertThat(forth).doesNotHaveDuplicates();
        assertThat(forth).extracting(Change::kind).isSorted();
    }

    /** Against another way to tell: the keys of readings, which no plan changes. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("twoBenches")
    void readingsThatCameOrWentAreThoseWhoseKeyTheOtherPlanLacks(TwoPlans plans) {
        List<Change> changes = Comparison.of(plans.a(), plans.b()).changes();
        assertThat(ids(changes, Trend.WENT, Change::inA)).isEqualTo(lacking(plans.a(), plans.b()));
        assertThat(ids(changes, Trend.CAME, Change::inB)).isEqualTo(lacking(plans.b(), plans.a()));
    }

    private static Set<String> ids(
            List<Change> changes, Trend trend, java.util.function.Function<Change, List<String>> side) {
        return changes.stream()
                .filter(each -> each.kind() == Kind.READING && each.trend() == trend)
                .flatMap(each -> side.apply(each).stream())
                .collect(Collectors.toSet());
    }

    private static Set<String> lacking(Side of, Side in) {
        Set<String> keys =
                in.readings().stream().map(each -> each.obligation().key()).collect(Collectors.toSet());
        return of.readings().stream()
                .filter(each -> !keys.contains(each.obligation().key()))
                .map(Reading::id)
                .collect(Collectors.toSet());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("twoBenches")
    void anEditedLimitIsReportedAndNothingElse(TwoPlans plans) {
        Random random = new Random(plans.seed());
        List<Reading> judged = plans.b().readings().stream()
                .filter(each -> each.obligation().limit().isPresent())
                .toList();
        if (judged.isEmpty()) {
            return;
        }
        Reading edited = judged.get(random.nextInt(judged.size()));
        Limit limit = edited.obligation().limit().orElseThrow();
        boolean doubled = random.nextBoolean();
        long amount = limit.value().amount();
        Limit other = new Limit(
                limit.id(),
                limit.bound(),
                Quantity.of(limit.value().dimension(), doubled ? amount * 2 : amount / 2),
                limit.clause(),
                limit.mark(),
                limit.sources(),
                limit.confirmed());
        List<Reading> readings = plans.b().readings().stream()
                .map(each -> each == edited ? limited(each, other) : each)
                .toList();
        Side after = with(plans.b(), plans.b().hookups(), readings, plans.b().steps());
        Trend trend = doubled == (limit.bound() == Limit.Bound.AT_MOST) ? Trend.RELAXED : Trend.TIGHTENED;
        assertThat(Comparison.of(plans.b(), after).changes()).singleElement().satisfies(change -> {
            assertThat(change.kind()).isEqualTo(Kind.LIMIT);
            assertThat(change.trend()).isEqualTo(trend);
            assertThat(change.inB()).containsExactly(edited.id());
        });
    }

    private static Reading limited(Reading reading, Limit limit) {
        Obligation what = reading.obligation();
        return new Reading(
                reading.id(),
                new Obligation(
                        what.key(),
                        what.quantity(),
                        what.clause(),
                        what.of(),
                        what.demand(),
                        what.place(),
                        what.earthSubject(),
                        what.state(),
                        what.mode(),
                        what.sourcePolarity(),
                        what.method(),
                        what.component(),
                        what.network(),
                        Optional.of(limit),
                        what.note()),
                reading.hookup());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("twoBenches")
    void aReadingTakenOutIsReportedWithItsHazardsAndNothingElse(TwoPlans plans) {
        List<Reading> readings = new ArrayList<>(plans.b().readings());
        if (readings.isEmpty()) {
            return;
        }
        Reading out = readings.remove(new Random(plans.seed()).nextInt(readings.size()));
        List<Step> steps = plans.b().steps().stream()
                .filter(step -> !step.reading().equals(Optional.of(out.id())))
                .toList();
        Side after = with(plans.b(), plans.b().hookups(), readings, steps);
        Comparison comparison = Comparison.of(plans.b(), after);
        assertThat(comparison.about(Concern.TESTS)).singleElement().satisfies(change -> {
            assertThat(change.kind()).isEqualTo(Kind.READING);
            assertThat(change.trend()).isEqualTo(Trend.WENT);
            assertThat(change.inA()).containsExactly(out.id());
        });
        assertThat(comparison.changes())
                .extracting(Change::kind)
                .isSubsetOf(Kind.READING, Kind.CAUTION, Kind.MAINS_ON_PART, Kind.FLOAT_JOINED);
        assertThat(comparison.changes().stream().anyMatch(each -> each.kind() == Kind.MAINS_ON_PART))
                .isEqualTo(out.obligation().sourcePolarity().isPresent());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("twoBenches")
    void aWireMovedIsReportedAndNothingElse(TwoPlans plans) {
        Random random = new Random(plans.seed());
        List<Hookup> wired = plans.b().hookups().stream()
                .filter(each -> !each.chains().isEmpty())
                .toList();
        if (wired.isEmpty()) {
            return;
        }
        Hookup hookup = wired.get(random.nextInt(wired.size()));
        Chain chain = hookup.chains().get(random.nextInt(hookup.chains().size()));
        int free = 1 + hookup.chains().stream().mapToInt(Chain::jack).max().orElse(0);
        Hookup moved = moved(hookup, chain, free);
        List<Hookup> hookups = plans.b().hookups().stream()
                .map(each -> each == hookup ? moved : each)
                .toList();
        Comparison comparison = Comparison.of(
                plans.b(),
                with(plans.b(), hookups, plans.b().readings(), plans.b().steps()));
        assertThat(comparison.about(Concern.WIRING)).singleElement().satisfies(change -> {
            assertThat(change.kind()).isEqualTo(Kind.JACK);
            assertThat(change.subject()).isEqualTo(chain.connection());
            assertThat(change.before()).contains("jack " + chain.jack());
            assertThat(change.after()).contains("jack " + free);
        });
        assertThat(comparison.changes()).extracting(Change::kind).isSubsetOf(Kind.JACK, Kind.FLOAT_JOINED);
    }

    /** One chain on another jack, and its connection in a bundle of its own there. */
    private static Hookup moved(Hookup hookup, Chain chain, int jack) {
        List<Chain> chains = hookup.chains().stream()
                .map(each -> each == chain ? new Chain(each.connection(), each.items(), jack, each.contacts()) : each)
                .toList();
        List<Bundle> bundles = new ArrayList<>();
        for (Bundle each : hookup.bundles()) {
            List<String> left = new ArrayList<>(each.connections());
            left.remove(chain.connection());
            if (!left.isEmpty()) {
                bundles.add(new Bundle(each.id(), left, each.jacks(), each.links()));
            } else if (!each.links().isEmpty()) {
                // Nothing is left to join: the link stays where it was.
                bundles.add(each);
            }
        }
        bundles.add(new Bundle(hookup.id() + ".moved", List.of(chain.connection()), List.of(jack), List.of()));
        return new Hookup(hookup.id(), bundles, chains, hookup.earth());
    }

    private static Side with(Side side, List<Hookup> hookups, List<Reading> readings, List<Step> steps) {
        return new Side(
                side.fingerprint(),
                side.partial(),
                side.training(),
                side.device(),
                side.bench(),
                side.rules(),
                side.occasion(),
                side.on(),
                side.house(),
                hookups,
                readings,
                steps,
                side.notApplicable(),
                side.shortfalls(),
                side.warnings(),
                side.time(),
                side.hookupsProof(),
                side.timeProof());
    }

    /** The cases reach what they are for: enough of them, with several hookups, and with every concern. */
    @Test
    void casesAreWorthIt() {
        Set<Concern> concerns = new HashSet<>();
        CASES.forEach(
                each -> Comparison.of(each.a(), each.b()).changes().forEach(change -> concerns.add(change.concern())));
        assertThat(CASES).hasSizeGreaterThan(25);
        assertThat(concerns).contains(Concern.values());
        assertThat(CASES)
                .anyMatch(each ->
                        each.a().hookups().size() > 1 && each.b().hookups().size() > 1);
    }
}
