package leadwright.planner.order;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import leadwright.catalog.device.Battery;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.ConnectorDefinition;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.Output;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.device.SupplySystem;
import leadwright.catalog.house.House;
import leadwright.catalog.house.ReplugUnderPower;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.kit.TouchThrough;
import leadwright.catalog.table.Connectors;

/**
 * The device on this bench: what all phases look up.
 *
 * @param therapy connections of therapy outputs, with all outputs that act through each, in file order
 */
record Scene(
        Device device,
        Kit kit,
        House house,
        Connectors connectors,
        BenchTimes times,
        SortedMap<String, Connection> connections,
        SortedMap<String, List<Output>> therapy) {

    static Scene of(Device device, Kit kit, House house, Connectors connectors) {
        SortedMap<String, Connection> byName = new TreeMap<>();
        device.connections().forEach(each -> byName.put(each.name(), each));
        SortedMap<String, List<Output>> therapy = new TreeMap<>();
        for (Output output : device.outputs()) {
            byName.values().stream()
                    .filter(each -> each.kind() == Connection.Kind.PATIENT
                            && each.part().equals(output.appliedPart()))
                    .filter(each -> output.functions().isEmpty()
                            || output.functions().stream()
                                    .anyMatch(id -> each.function().equals(each.part() + "." + id)))
                    .forEach(each -> therapy.computeIfAbsent(each.name(), key -> new ArrayList<>())
                            .add(output));
        }
        List<ConnectorDefinition> defined = new ArrayList<>(device.connectors());
        defined.addAll(kit.connectors());
        return new Scene(device, kit, house, connectors.with(defined), BenchTimes.of(device, house), byName, therapy);
    }

    /**
     * Permanent plant, and three-phase equipment on a cord, which no outlet of a tester feeds: a licensed person switches and
     * isolates it, nobody at the tester does.
     */
    boolean permanent() {
        return device.supply().connection() == SupplyConnection.PERMANENT
                || device.runsOnMains() && device.supply().system() == SupplySystem.THREE_PHASE;
    }

    /** Whether the tester's outlet feeds it. */
    boolean fedByTester() {
        return device.runsOnMains() && !permanent();
    }

    boolean battery() {
        return device.battery() != Battery.NONE;
    }

    boolean toleratesPowerCut() {
        return device.toleratesPowerCut().orElse(false);
    }

    boolean mayReplugUnderPower() {
        return house.replugUnderPower() == ReplugUnderPower.AFTER_EARTH_AND_TOUCH
                && device.forbids().stream().noneMatch(each -> each.test().equals("replug-under-power"));
    }

    /** Whether touch current is read through the earth lead. */
    boolean touchThroughEarthLead() {
        return kit.tester().touchThrough().equals(Optional.of(TouchThrough.EARTH_LEAD));
    }

    /** Whether the tester has no earth of its own, so that its second lead ties it to the reference earth. */
    boolean referenceBySecondLead() {
        return kit.tester().outlets().isEmpty()
                && kit.tester()
                        .earthTest()
                        .filter(test -> test.sockets().contains("second-jack"))
                        .isPresent();
    }

    /** Whether the earth lead may stay on while leakage is read. */
    boolean earthLeadMayStay() {
        return kit.tester()
                .earthJack()
                .flatMap(jack -> jack.atRest())
                .filter(rest -> rest == AtRest.OPEN)
                .isPresent();
    }

    Optional<KitItem> item(String instance) {
        int slash = instance.lastIndexOf('/');
        return slash < 0 ? Optional.empty() : kit.item(instance.substring(0, slash));
    }

    /** Kind of an item instance; the name itself for anything else. */
    static String kind(String name) {
        int slash = name.lastIndexOf('/');
        return slash < 0 ? name : name.substring(0, slash);
    }

    static boolean isItem(String name) {
        return name.indexOf('/') >= 0;
    }

    /** Therapy outputs that act through any of these connections, in file order. */
    List<Output> outputsOf(Collection<String> names) {
        return device.outputs().stream()
                .filter(output -> names.stream()
                        .anyMatch(name -> therapy.getOrDefault(name, List.of()).contains(output)))
                .toList();
    }

    /** Seconds to wait before these outputs are plugged: their waits run side by side, so the longest stands for all. */
    static int wait(Collection<Output> plugged) {
        return plugged.stream()
                .flatMap(output -> output.waitTime().stream())
                .mapToInt(BenchTimes::seconds)
                .max()
                .orElse(0);
    }
}
