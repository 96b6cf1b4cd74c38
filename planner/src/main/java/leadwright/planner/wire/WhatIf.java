package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.house.CapacitanceLimit;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.EarthTest;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.kit.Tester;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;

/** Kits, devices and houses with one thing otherwise, to find out what stands in the way. */
final class WhatIf {
    /** Ends the id of a kind of item that the kit does not have; no id in a file has a blank. */
    static final String NEW = " new";

    private WhatIf() {}

    /** The kit with so many more of every item. */
    static Kit plenty(Kit kit, int more) {
        return with(kit, item -> item.withStock(item.stock() + more));
    }

    /** The kit with every item rated for so much current, and every conductor stated. */
    static Kit carrying(Kit kit, Quantity current) {
        return with(kit, item -> item.withConductor(item.conductor().orElse("2.5 mm2"), current));
    }

    /** The kit with an earth test that nulls any leads. */
    static Kit unlimitedNull(Kit kit) {
        return earthTest(kit, test -> nullingAny(test, test.openCircuit()));
    }

    /** The kit with an earth test that drives its current through any leads, and nulls them. */
    static Kit strongSource(Kit kit) {
        return earthTest(kit, test -> nullingAny(test, Quantity.volts(1_000_000_000L)));
    }

    private static EarthTest nullingAny(EarthTest test, Quantity openCircuit) {
        return new EarthTest(
                test.currents(), test.source(), openCircuit, test.wiring(), Optional.empty(), test.sockets());
    }

    private static Kit earthTest(Kit kit, UnaryOperator<EarthTest> change) {
        Tester was = kit.tester();
        Tester tester = new Tester(
                was.name(),
                was.jacks(),
                was.earthJack(),
                was.touchThrough(),
                was.inlet(),
                was.outlets(),
                was.switches(),
                was.networks(),
                was.methods(),
                was.components(),
                was.earthTest().map(change),
                was.insulation(),
                was.partSource(),
                was.accuracy(),
                was.calibratedUntil());
        return new Kit(kit.name(), tester, kit.items(), kit.checks(), kit.connectors());
    }

    /** An item otherwise the same, with another id, length in micrometres and number of branches. */
    static KitItem like(KitItem item, String id, long micrometres, int branches) {
        return new KitItem(
                id,
                item.kind(),
                item.ends(),
                branches,
                item.also(),
                micrometres == 0 ? Optional.empty() : Optional.of(Quantity.of(Dimension.LENGTH, micrometres)),
                item.conductor(),
                item.current(),
                item.voltage(),
                item.capacitance(),
                item.stock(),
                item.price());
    }

    /** The kit with one kind of item more. */
    static Kit with(Kit kit, KitItem added) {
        List<KitItem> items = new ArrayList<>(kit.items());
        items.add(added);
        return new Kit(kit.name(), kit.tester(), items, kit.checks(), kit.connectors());
    }

    /** A new kind of item like another, of this length and conductor. */
    static KitItem like(KitItem item, Quantity length, Optional<String> conductor, int stock) {
        return new KitItem(
                item.id() + NEW,
                item.kind(),
                item.ends(),
                item.branches(),
                item.also(),
                Optional.of(length),
                conductor,
                item.current(),
                item.voltage(),
                item.capacitance(),
                stock,
                item.price());
    }

    private static Kit with(Kit kit, UnaryOperator<KitItem> change) {
        return new Kit(
                kit.name(), kit.tester(), kit.items().stream().map(change).toList(), kit.checks(), kit.connectors());
    }

    /** The device with everything at the tester's place. */
    static Device near(Device device) {
        return new Device(
                device.name(),
                device.supply(),
                device.protection(),
                device.functionalEarth(),
                device.battery(),
                device.mainsSwitch(),
                device.startUp(),
                device.shutDown(),
                device.startUpStated(),
                device.toleratesPowerCut(),
                device.builtTo(),
                device.forbids(),
                device.appliedParts().stream().map(WhatIf::near).toList(),
                device.ports(),
                device.outputs(),
                device.touchPoints().stream().map(WhatIf::near).toList(),
                device.earthPoints(),
                device.panel(),
                device.limits(),
                device.electrical(),
                device.modes(),
                device.adapter(),
                device.connectors());
    }

    private static AppliedPart near(AppliedPart part) {
        return new AppliedPart(
                part.id(),
                part.name(),
                part.type(),
                part.defibrillationProof(),
                part.functions(),
                part.namedFunctions(),
                part.set(),
                Optional.empty(),
                part.cable());
    }

    private static TouchPoint near(TouchPoint point) {
        return new TouchPoint(
                point.id(), point.name(), point.earthed(), point.surface(), Optional.empty(), Optional.empty());
    }

    /** The house that only warns of capacitance. */
    static House warning(House house) {
        return new House(
                house.rules(),
                house.methods(),
                house.insulation(),
                house.labels(),
                house.paper(),
                house.words(),
                house.aim(),
                house.replugUnderPower(),
                house.capacitanceShare(),
                CapacitanceLimit.WARN,
                house.floatJoined(),
                house.pastDue(),
                house.decision(),
                house.times(),
                house.tighter(),
                house.extraTests(),
                house.joinStricter(),
                house.signs(),
                house.confirmed(),
                house.department());
    }
}
