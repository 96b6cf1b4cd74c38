package leadwright.planner.oblige;

import java.util.List;
import java.util.stream.Stream;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.Tester;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.rules.RuleCase;
import leadwright.catalog.rules.RuleSet;
import leadwright.catalog.rules.TestRow;
import leadwright.planner.plan.Occasion;

/** Everything that decides what is due, together. */
record Asking(DeviceFacts facts, Kit kit, RuleSet rules, House house, Occasion occasion) {

    /** Circumstance of limits for several devices on one outlet. */
    private static final String SYSTEM = "system";

    Device device() {
        return facts.device();
    }

    Tester tester() {
        return kit.tester();
    }

    /** The case of a quantity on this device. */
    RuleCase asked(QuantityKind quantity) {
        return RuleCase.of(quantity, facts.protection(), facts.supply(), device().builtTo());
    }

    /** Whether the device's own instructions rule the test out. */
    boolean forbidden(QuantityKind quantity) {
        return device().forbids().stream().anyMatch(each -> each.test().equals(quantity.word()));
    }

    /** Rows that ask for the quantity on this device; none where its instructions rule it out. */
    List<TestRow> tests(QuantityKind quantity) {
        return forbidden(quantity)
                ? List.of()
                : rules.tests(quantity).stream().filter(this::applies).toList();
    }

    /** The same case as part of a system, or in the circumstance that the house states, where the rule set has a limit for it. */
    RuleCase here(RuleCase asked) {
        Stream<String> system = device().system().stream().map(info -> SYSTEM);
        Stream<String> stated = house.where().stream()
                .filter(where ->
                        rules.places().stream().anyMatch(place -> place.id().equals(where)));
        return Stream.concat(system, stated)
                .map(asked::where)
                .filter(each -> rules.limit(each).isPresent())
                .findFirst()
                .orElse(asked);
    }

    /** Of a part tested by itself only what a source puts on it says anything. */
    boolean pointless(TestRow row) {
        boolean sourceOnPart =
                !row.sourcePolarities().isEmpty() && row.quantity() != QuantityKind.MAINS_ON_UNEARTHED_METAL;
        return facts.passive() && !sourceOnPart && row.quantity() != QuantityKind.INSULATION_RESISTANCE;
    }

    private boolean applies(TestRow row) {
        return !pointless(row)
                && (row.scope().where().isEmpty() || row.scope().where().equals(house.where()))
                && (row.scope().classes().isEmpty() || row.scope().classes().contains(facts.protection()))
                && (row.scope().supplies().isEmpty() || row.scope().supplies().contains(facts.supply()));
    }
}
