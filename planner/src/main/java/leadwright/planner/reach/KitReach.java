package leadwright.planner.reach;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leadwright.catalog.kit.EarthTest;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.table.Connectors;
import leadwright.planner.wire.KitChains;
import leadwright.planner.wire.KitChains.Use;
import leadwright.planner.wire.KitChains.Way;

/**
 * What a kit reaches, whatever the device.
 *
 * @param terminals that it brings to a jack, in the order of a device: wires, then surfaces
 * @param beyond terminals that devices may have and that it does not bring to a jack
 * @param earth a row for each current of the earth test, the smallest first
 */
public record KitReach(Kit kit, List<Terminal> terminals, List<String> beyond, List<Earth> earth) {
    /** What patient wires and the surfaces of devices end in; a kit's own connectors are for the devices that name them. */
    private static final List<String> TERMINALS = List.of(
            "snap-socket",
            "snap-socket-35",
            "pinch-clip",
            "tab",
            "tp15-socket",
            "tp20-socket",
            "pin-3mm",
            "hole-3mm",
            "skin-surface",
            "probe-shaft",
            "liquid-column",
            "metal",
            "painted",
            "insulating",
            "din-42801-stud");

    public KitReach {
        terminals = List.copyOf(terminals);
        beyond = List.copyOf(beyond);
        earth = List.copyOf(earth);
    }

    /** @param ways by use; a use that no chain is fit for, or that the tester has not, is absent */
    public record Terminal(String word, Map<Use, Way> ways) {}

    /** @param lead the longest lead, in micrometres; empty where no lead and end carry the current */
    public record Earth(Quantity current, Optional<Long> lead) {}

    /** Works it out: some fitting tests a terminal. */
    public static KitReach of(Kit kit) {
        Connectors connectors = Connectors.builtIn().with(kit.connectors());
        KitChains chains = new KitChains(kit, connectors);
        List<Terminal> terminals = new ArrayList<>();
        List<String> beyond = new ArrayList<>();
        for (String word : TERMINALS) {
            Map<Use, Way> ways = new EnumMap<>(Use.class);
            for (Use use : Use.values()) {
                if (chains.has(use)) {
                    chains.way(word, use).ifPresent(way -> ways.put(use, way));
                }
            }
            if (ways.isEmpty()) {
                beyond.add(word);
            } else {
                terminals.add(new Terminal(word, ways));
            }
        }
        List<Earth> earth = kit.tester().earthTest().map(EarthTest::currents).orElse(List.of()).stream()
                .sorted()
                .map(current -> new Earth(current, chains.earthReach(current)))
                .toList();
        return new KitReach(kit, terminals, beyond, earth);
    }
}
