package leadwright.planner.order;

import static leadwright.planner.plan.MainsState.NORMAL;
import static leadwright.planner.plan.MainsState.NORMAL_SUPPLY_OPEN;
import static leadwright.planner.plan.MainsState.REVERSED;
import static leadwright.planner.plan.MainsState.REVERSED_SUPPLY_OPEN;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import leadwright.catalog.device.Battery;
import leadwright.catalog.house.Times;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The planning guide's facts about the order of steps, each named after its line there (docs/planning.md, Order). */
class OrderFactsTest {
    private static final List<MainsState> FOUR = List.of(NORMAL, NORMAL_SUPPLY_OPEN, REVERSED, REVERSED_SUPPLY_OPEN);
    private static final List<QuantityKind> KINDS = List.of(
            QuantityKind.PATIENT_LEAKAGE,
            QuantityKind.PATIENT_AUXILIARY,
            QuantityKind.EQUIPMENT_LEAKAGE,
            QuantityKind.LEAD_TO_LEAD);

    private static Bench oneHookup(int kinds) {
        Bench bench = new Bench().part("ecg", "snap-socket", "R", "L").hookup("A", false, "ecg.R", "ecg.L");
        for (QuantityKind kind : KINDS.subList(0, kinds)) {
            for (MainsState state : FOUR) {
                bench.read(kind, state, "on", "A", "ecg.R");
            }
        }
        return bench;
    }

    private static List<MainsState> statesReadIn(Ordering ordering) {
        return ordering.steps().stream()
                .filter(step -> step.does() == Step.Act.READ)
                .map(Step::state)
                .distinct()
                .toList();
    }

    // jack 1 -- ecg.R    states wanted: normal, normal/supply-open, reversed, reversed/supply-open
    // jack 2 -- ecg.L    no battery, tolerates power cuts
    @ParameterizedTest(name = "{0} kinds of reading: two start-ups")
    @ValueSource(ints = {1, 2, 3, 4})
    void oneHookupThatNeedsBothPolaritiesAndSupplyOpenNeedsTwoStartUps(int kinds) {
        Ordering ordering = oneHookup(kinds).order();
        assertThat(ordering.time().startUps()).isEqualTo(2);
        assertThat(statesReadIn(ordering)).containsExactlyElementsOf(FOUR);
        assertThat(ordering.proof().optimal()).isTrue();
    }

    // the same, taken kind by kind: m kinds need 2m start-ups of 75 s each
    @ParameterizedTest(name = "kind by kind, {0} kinds need {0} times two start-ups")
    @ValueSource(ints = {1, 2, 3, 4})
    void takenKindByKindMKindsNeedTwoMStartUps(int kinds) {
        Bench bench = oneHookup(kinds);
        int with = bench.order().time().plainOrder();
        bench.startUp = 76;
        int longer = bench.order().time().plainOrder();
        assertThat(longer - with).as("start-ups in the plain order").isEqualTo(2 * kinds);
    }

    // jack 1 -- ecg.R    with a battery that backs up: on throughout
    @Test
    void withABatteryThatBacksUpThereIsOneStartUp() {
        Bench bench = oneHookup(3);
        bench.battery = Battery.BACKS_UP;
        assertThat(bench.order().time().startUps()).isEqualTo(1);
    }

    private static Bench hookups(int count, boolean underPower) {
        Bench bench = new Bench().part("eeg", "tp15-socket", "1", "2", "3", "4");
        for (int h = 1; h <= count; h++) {
            bench.hookup("X" + h, false, "eeg." + h);
            bench.read(QuantityKind.PATIENT_LEAKAGE, NORMAL, "on", "X" + h, "eeg." + h);
            bench.read(QuantityKind.PATIENT_LEAKAGE, REVERSED, "on", "X" + h, "eeg." + h);
        }
        bench.underPower = underPower;
        return bench;
    }

    // X1: jack 1 -- eeg.1   X2: jack 1 -- eeg.2   X3: jack 1 -- eeg.3    each in normal and reversed
    @ParameterizedTest(name = "{0} hookups")
    @ValueSource(ints = {1, 2, 3, 4})
    void repluggingOnlyInOffHookupsNeedAtLeastTwoStartUpsEach(int count) {
        Ordering ordering = hookups(count, false).order();
        assertThat(ordering.time().startUps()).isEqualTo(2 * count);
        assertThat(ordering.proof().optimal()).isTrue();
    }

    // the same with re-plugging under power: a start-up (2 s) and a turn of polarity cost less than re-plugging (8 s)
    @ParameterizedTest(name = "{0} hookups: one start-up more")
    @ValueSource(ints = {1, 2, 3, 4})
    void repluggingAllowedUnderPowerNeedsOneStartUpMoreThanHookups(int count) {
        Bench bench = hookups(count, true);
        bench.startUp = 2;
        assertThat(bench.order().time().startUps()).isEqualTo(count + 1);
    }

    // the same, re-plugging costing nothing: all hookups in normal, all in reversed
    @ParameterizedTest(name = "{0} hookups: two start-ups")
    @ValueSource(ints = {1, 2, 3, 4})
    void repluggingAllowedUnderPowerAndFreeNeedsTwoStartUps(int count) {
        Bench bench = hookups(count, true);
        bench.times = free(Times.defaults(), false);
        assertThat(bench.order().time().startUps()).isEqualTo(2);
    }

    private static Times free(Times times, boolean switching) {
        Times.JoinPart nothing = new Times.JoinPart(Quantity.seconds(0), Quantity.seconds(0));
        Map<String, Times.JoinPart> contacts = new java.util.HashMap<>(times.contacts());
        Map<String, Quantity> actions = new java.util.HashMap<>(times.actions());
        if (switching) {
            List.of("outlet", "open-conductor", "polarity").forEach(word -> actions.put(word, Quantity.seconds(0)));
        } else {
            contacts.replaceAll((kind, both) -> nothing);
        }
        return new Times(contacts, actions);
    }

    private static long stays(Ordering ordering) {
        return ordering.steps().stream()
                .filter(step -> step.does() == Step.Act.READ)
                .flatMap(step -> step.hookup().stream())
                .reduce(
                        new java.util.ArrayList<String>(),
                        (list, next) -> {
                            if (list.isEmpty() || !list.get(list.size() - 1).equals(next)) {
                                list.add(next);
                            }
                            return list;
                        },
                        (one, other) -> one)
                .size();
    }

    // X1, X2, X3 in normal, reversed and both with supply open; start-up, shut-down and switching take no time
    @Test
    void withFreeStartingAndSwitchingTheOptimumNeverSplitsAHookup() {
        Bench bench = hookups(3, false);
        for (int h = 1; h <= 3; h++) {
            bench.read(QuantityKind.PATIENT_LEAKAGE, NORMAL_SUPPLY_OPEN, "on", "X" + h, "eeg." + h);
            bench.read(QuantityKind.PATIENT_LEAKAGE, REVERSED_SUPPLY_OPEN, "on", "X" + h, "eeg." + h);
        }
        bench.startUp = 0;
        bench.times = free(Times.defaults(), true);
        assertThat(stays(bench.order())).isEqualTo(3);
    }

    // X1, X2: one touch-proof wire each; start-up free, default switching: polarity 5, and re-plugging that takes 1
    @Test
    void withDefaultSwitchingACheapRepluggingMakesASplitWorthWhile() {
        Bench bench = hookups(2, true);
        bench.startUp = 0;
        Map<String, Times.JoinPart> contacts =
                new java.util.HashMap<>(free(Times.defaults(), false).contacts());
        contacts.put("touch-proof", new Times.JoinPart(Quantity.seconds(1), Quantity.seconds(0)));
        bench.times = new Times(contacts, Times.defaults().actions());
        // Either way round costs one re-plugging between; with free wires a second one saves nothing here, so the
        // mains states are what is split: both hookups share each polarity.
        Ordering ordering = bench.order();
        assertThat(ordering.proof().optimal()).isTrue();
        assertThat(ordering.time().parts().get(Step.Account.SWITCH)).isLessThanOrEqualTo(2 + 5 + 2 + 4 * 2);
    }

    private static Ordering underPower(int count, int startUp) {
        Bench bench = hookups(count, true);
        bench.startUp = startUp;
        return bench.order();
    }

    // X1, X2, … in normal and reversed, re-plugged under power. Hookup by hookup: one start-up more than hookups. State
    // by
    // state: two start-ups, and each hookup but one is come to twice. Each of the other hookups then turns the polarity
    // (5)
    // and starts the device, or is re-plugged (part 3, join 5) and selected (2) once more: equal at a start-up of 5 s.
    @ParameterizedTest(name = "{0} hookups")
    @ValueSource(ints = {2, 3, 4})
    void theOptimumChangesFromSplittingStatesToSplittingHookupsWhereBothTakeTheSame(int count) {
        Ordering instant = underPower(count, 0);
        Ordering slow = underPower(count, 3600);
        assertThat(instant.time().startUps()).as("hookup by hookup").isEqualTo(count + 1);
        assertThat(slow.time().startUps()).as("state by state").isEqualTo(2);
        int crossing = -1;
        for (int startUp = 0; startUp <= 12; startUp++) {
            int byHookup = instant.time().total() + (count + 1) * startUp;
            int byState = slow.time().total() - 2 * 3600 + 2 * startUp;
            Ordering best = underPower(count, startUp);
            assertThat(best.proof().optimal()).isTrue();
            assertThat(best.time().total()).as("start-up of %d s", startUp).isEqualTo(Math.min(byHookup, byState));
            if (byHookup != byState) {
                assertThat(best.time().startUps()).isEqualTo(byHookup < byState ? count + 1 : 2);
            } else {
                crossing = startUp;
            }
        }
        assertThat(crossing).isEqualTo(5);
    }

    // the same, re-plugged in off only: whatever the start-up takes, splitting saves none of it
    @ParameterizedTest(name = "start-up of {0} s")
    @ValueSource(ints = {0, 1, 75, 3600})
    void repluggingOnlyInOffNoStartUpTimeMakesASplitWorthWhile(int startUp) {
        Bench bench = hookups(3, false);
        bench.startUp = startUp;
        assertThat(stays(bench.order())).isEqualTo(3);
    }
}
