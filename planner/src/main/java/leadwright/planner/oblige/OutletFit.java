package leadwright.planner.oblige;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.Supply;
import leadwright.catalog.device.SupplySystem;
import leadwright.catalog.kit.Inlet;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.kit.Outlet;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.table.MainsCouplers;

/**
 * Whether the device may be plugged into the tester: supply system, voltage, plug, and the chain of ratings from the
 * device's plug to the wall.
 *
 * @param outlet the outlet taken; empty where none is needed or none fits
 * @param adapter the kit's mains adapter in between, where one is needed
 * @param refusal why the device goes on no outlet
 */
record OutletFit(Optional<Outlet> outlet, Optional<KitItem> adapter, Optional<String> refusal, List<String> warnings) {

    /** Rated supplies hold for a mains voltage within a tenth (common practice, no source). */
    private static final int TOLERANCE_PERCENT = 10;

    /** Through an adapter only to this share of the smallest part. */
    private static final int ADAPTER_PERCENT = 80;

    static OutletFit of(DeviceFacts facts, Kit kit) {
        if (!facts.onOutlet()) {
            return new OutletFit(Optional.empty(), Optional.empty(), Optional.empty(), List.of());
        }
        Supply supply = facts.device().supply();
        if (kit.tester().outlets().isEmpty()) {
            return refused("the tester '" + kit.tester().name()
                    + "' has no outlet, and the device runs from one; nothing is planned");
        }
        List<String> reasons = new ArrayList<>();
        for (Outlet outlet : kit.tester().outlets()) {
            Optional<String> reason = wrongSupply(supply, outlet);
            if (reason.isEmpty()) {
                Plugging plugging = plugging(supply, outlet, kit);
                if (plugging.reason().isEmpty()) {
                    return new OutletFit(Optional.of(outlet), plugging.adapter(), Optional.empty(), warnings(supply));
                }
                reason = plugging.reason();
            }
            reasons.add("outlet " + outlet.socket() + ", " + outlet.system().word() + ", "
                    + outlet.voltage().text() + ", " + outlet.current().text() + ": " + reason.orElseThrow());
        }
        return refused(
                "the device does not go on the tester '" + kit.tester().name() + "': " + String.join("; ", reasons));
    }

    private static OutletFit refused(String reason) {
        return new OutletFit(Optional.empty(), Optional.empty(), Optional.of(reason), List.of());
    }

    private static List<String> warnings(Supply supply) {
        List<String> warnings = new ArrayList<>();
        if (supply.cordPlug().isEmpty()) {
            warnings.add("the device file does not state the plug of the cord: whether it goes into the tester's outlet"
                    + " was not compared");
        }
        if (supply.current().isEmpty()) {
            warnings.add("the device file does not state the rated current: compare the label with the outlet's rating"
                    + " before plugging in");
        }
        supply.cordPlug()
                .flatMap(MainsCouplers.builtIn()::plug)
                .filter(plug -> !plug.polarised())
                .ifPresent(plug -> warnings.add("the plug " + plug.id()
                        + " goes in either way round: both polarities are read, and neither is the device's own"));
        return warnings;
    }

    private static Optional<String> wrongSupply(Supply supply, Outlet outlet) {
        if (outlet.system() != supply.system()) {
            return Optional.of("the device is for a " + supply.system().word() + " supply");
        }
        if (supply.lowest().isEmpty() || supply.highest().isEmpty()) {
            return Optional.of("the device file does not state its rated voltage");
        }
        Quantity lowest = supply.lowest().get();
        Quantity highest = supply.highest().get();
        long volts = outlet.voltage().amount();
        if (volts * 100 < lowest.amount() * (100 - TOLERANCE_PERCENT)) {
            return Optional.of("the device is rated " + rated(lowest, highest)
                    + ": on this outlet it would not run as made, and a leakage through capacitance would read "
                    + ratio(outlet.voltage(), lowest)
                    + " of the real value at the same frequency; take a tester with an outlet of its voltage"
                    + (supply.system() == SupplySystem.LINE_NEUTRAL
                            ? ", or a split-phase one where its label allows"
                            : "")
                    + ", or test it as fixed plant where it is installed");
        }
        if (volts * 100 > highest.amount() * (100 + TOLERANCE_PERCENT)) {
            return Optional.of("the device is rated " + rated(lowest, highest) + ": the outlet's voltage is too high");
        }
        return Optional.empty();
    }

    private static String rated(Quantity lowest, Quantity highest) {
        return lowest.equals(highest) ? lowest.text() : lowest.text() + " to " + highest.text();
    }

    private static String ratio(Quantity part, Quantity whole) {
        return BigDecimal.valueOf(part.amount())
                .divide(BigDecimal.valueOf(whole.amount()), 2, RoundingMode.HALF_EVEN)
                .toPlainString();
    }

    /** How the plug gets into the outlet, or why it does not. */
    private record Plugging(Optional<KitItem> adapter, Optional<String> reason) {}

    private static Plugging plugging(Supply supply, Outlet outlet, Kit kit) {
        if (supply.cordPlug().isEmpty()
                || MainsCouplers.builtIn().enters(supply.cordPlug().get(), outlet.socket())) {
            Quantity most = weakest(outlet, kit.tester().inlet());
            if (supply.current().isPresent() && !supply.current().get().atMost(most)) {
                return new Plugging(
                        Optional.empty(),
                        Optional.of("the device draws " + supply.current().get().text() + ", more than the "
                                + most.text() + " from outlet to wall"));
            }
            return new Plugging(Optional.empty(), Optional.empty());
        }
        String plug = supply.cordPlug().get();
        List<String> reasons = new ArrayList<>();
        for (KitItem adapter : adapters(plug, outlet, kit)) {
            Optional<String> reason = adapterTooWeak(supply, adapter, outlet, kit);
            if (reason.isEmpty()) {
                return new Plugging(Optional.of(adapter), Optional.empty());
            }
            reasons.add(reason.get());
        }
        if (reasons.isEmpty()) {
            reasons.add(noAdapter(supply, outlet, kit));
        }
        return new Plugging(
                Optional.empty(),
                Optional.of("the plug " + plug + " does not enter it; " + String.join("; ", reasons)));
    }

    private static Quantity weakest(Outlet outlet, Optional<Inlet> inlet) {
        return inlet.map(Inlet::current)
                .filter(current -> current.atMost(outlet.current()))
                .orElse(outlet.current());
    }

    /** Items whose first end takes the plug and whose other end goes into the outlet. */
    private static List<KitItem> adapters(String plug, Outlet outlet, Kit kit) {
        MainsCouplers mains = MainsCouplers.builtIn();
        return kit.items().stream()
                .filter(item -> item.kind() == ItemKind.ADAPTER && item.ends().size() == 2 && item.stock() > 0)
                .filter(item -> mains.enters(plug, item.ends().get(0))
                        && mains.enters(item.ends().get(1), outlet.socket()))
                .toList();
    }

    private static Optional<String> adapterTooWeak(Supply supply, KitItem adapter, Outlet outlet, Kit kit) {
        String name = "the adapter '" + adapter.id() + "' ";
        if (adapter.current().isEmpty() || adapter.voltage().isEmpty()) {
            return Optional.of(name + "states no current or no voltage");
        }
        if (!adapter.voltage().get().atLeast(outlet.voltage())) {
            return Optional.of(name + "is for " + adapter.voltage().get().text());
        }
        if (supply.current().isEmpty()) {
            return Optional.of(
                    name + "may carry " + ADAPTER_PERCENT + " % of its rating, and the device file states no current");
        }
        Quantity smallest =
                smallest(adapter.current().get(), weakest(outlet, kit.tester().inlet()));
        return within80(supply.current().get(), smallest)
                ? Optional.empty()
                : Optional.of(name + "would carry " + supply.current().get().text() + ", over " + ADAPTER_PERCENT
                        + " % of " + smallest.text());
    }

    private static String noAdapter(Supply supply, Outlet outlet, Kit kit) {
        Quantity smallest = weakest(outlet, kit.tester().inlet());
        return supply.current().isPresent() && !within80(supply.current().get(), smallest)
                ? "no adapter helps: " + supply.current().get().text() + " is over " + ADAPTER_PERCENT + " % of "
                        + smallest.text()
                : "the kit has no adapter for it";
    }

    private static Quantity smallest(Quantity one, Quantity other) {
        return one.atMost(other) ? one : other;
    }

    private static boolean within80(Quantity current, Quantity rating) {
        return current.amount() * 100 <= rating.amount() * ADAPTER_PERCENT;
    }
}
