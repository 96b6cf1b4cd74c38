package leadwright.planner.wire;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import java.util.TreeSet;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import leadwright.catalog.house.FloatJoined;
import leadwright.catalog.house.House;
import leadwright.catalog.table.Connectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Against every way to plug a small case together. */
class WiringBruteForceTest {

    /** Seeds whose cases are too large to try everything; all others up to 505 are tried. */
    private static final Set<Long> TOO_LARGE = Set.of(161L, 264L, 333L, 373L, 470L);

    static Stream<SmallCase> cases() {
        return LongStream.rangeClosed(1, 505)
                .filter(seed -> !TOO_LARGE.contains(seed))
                .mapToObj(SmallCase::draw);
    }

    static Stream<SmallCase> rows() {
        return LongStream.rangeClosed(1, 120).mapToObj(SmallCase::drawRow);
    }

    /*
     *   p1.c1 --snap--\
     *   p1.c2 --snap---fan--[1]        few wires, few jacks, few items,
     *   p2.c1 --wrap--------[2]        any ties or runs, jacks open or earthed
     *                       [3]
     */
    @ParameterizedTest(name = "{0}")
    @MethodSource("cases")
    void as_few_hookups_as_by_trying_everything(SmallCase small) {
        compare(small, House.defaults());
    }

    /** The same cases for a house that is stricter. */
    @ParameterizedTest(name = "{0}, nothing floats joined")
    @MethodSource("cases")
    void as_few_where_nothing_may_float_joined(SmallCase small) {
        compare(small, Rig.nothingFloatsJoined());
    }

    /*
     *   c1 --snap--two--[1]            neighbours only; a lead from a free branch
     *   c2 --snap--[2]  |              may bring c1 to the other end of the row
     *   c3 --snap--[3]  |
     *              [4]--lead
     */
    @ParameterizedTest(name = "{0}")
    @MethodSource("rows")
    void as_few_in_a_row_whose_bundles_may_stand_on_several_jacks(SmallCase small) {
        compare(small, House.defaults());
    }

    @ParameterizedTest(name = "{0}, nothing floats joined")
    @MethodSource("rows")
    void as_few_in_a_row_where_nothing_may_float_joined(SmallCase small) {
        compare(small, Rig.nothingFloatsJoined());
    }

    static Stream<SmallCase> stacks() {
        return LongStream.rangeClosed(1, 120).mapToObj(SmallCase::drawStack);
    }

    /*
     *   c1 --snap--stack--[1]          the lead stands in jacks 1 and 4 itself, and c1 in the
     *              |      [2]          back of its plug: not planned, so a number that would
     *              |      [3]          need it ruled out is not called proven
     *              \------[4]
     */
    @ParameterizedTest(name = "{0}")
    @MethodSource("stacks")
    void never_proven_wrongly_where_a_lead_may_stand_in_two_jacks(SmallCase small) {
        Wiring wiring = Rig.wire(small.device(), small.kit(), small.obligations());
        new HookupCheck(small.device(), small.kit(), Connectors.builtIn()).check(wiring, small.obligations());
        int fewest = new BruteForce(small, false).fewest(new TreeSet<>());
        assertThat(wiring.proof().lowerBound()).isLessThanOrEqualTo(fewest);
        assertThat(wiring.proof().answer()).isGreaterThanOrEqualTo(fewest);
    }

    @Test
    void some_stacks_of_seeds_1_to_120_are_not_proven() {
        assertThat(stacks().map(small -> Rig.wire(small.device(), small.kit(), small.obligations()))
                        .filter(wiring -> !wiring.proof().optimal())
                        .count())
                .isBetween(1L, 60L);
    }

    @Test
    void some_rows_of_seeds_1_to_120_are_served_by_links_only() {
        long linked = rows().map(small -> Rig.wire(small.device(), small.kit(), small.obligations()))
                .filter(wiring -> wiring.hookups().stream()
                        .flatMap(hookup -> hookup.bundles().stream())
                        .anyMatch(bundle -> !bundle.links().isEmpty()))
                .count();
        assertThat(linked).isPositive();
    }

    static void compare(SmallCase small, House house) {
        boolean floatApart = house.floatJoined() == FloatJoined.NEVER;
        Wiring wiring = Rig.wire(small.device(), small.kit(), house, small.obligations());
        new HookupCheck(small.device(), small.kit(), Connectors.builtIn()).check(wiring, small.obligations());
        if (floatApart) {
            small.obligations()
                    .forEach(each -> wiring.hookups().stream()
                            .filter(hookup -> wiring.takenIn().get(each.key()).contains(hookup.id()))
                            .flatMap(hookup -> hookup.bundles().stream())
                            .filter(bundle -> bundle.connections().size() > 1)
                            .forEach(bundle -> assertThat(bundle.connections())
                                    .as(each.key() + " in " + bundle.id())
                                    .anyMatch(each.demand().all()::contains)));
        }

        Set<Integer> unfit = new TreeSet<>();
        int fewest = new BruteForce(small, floatApart).fewest(unfit);

        assertThat(wiring.uncovered())
                .as("uncovered")
                .containsExactlyInAnyOrderElementsOf(
                        unfit.stream().map(i -> "d" + i).toList());
        assertThat(wiring.hookups()).hasSize(Math.max(1, fewest));
        assertThat(wiring.proof().optimal()).as(wiring.proof().argument()).isTrue();
    }
}
