package leadwright.planner.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.planner.wire.Rig;

/** Kits of the benchmark: an adapter a terminal, fan-outs that may be cascaded. */
final class Kits {
    /** What mates with each terminal. */
    static final Map<String, String> MATES = Map.of(
            "snap-socket", "snap-stud",
            "tp15-socket", "tp15-pin",
            "skin-surface", "foil-wrap",
            "liquid-column", "fluid-electrode");

    private Kits() {}

    static Kit of(Instance instance) {
        List<KitItem> items = new ArrayList<>();
        instance.adapters().entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .filter(each -> each.getValue() > 0)
                .forEach(each -> items.add(adapter(each.getKey(), each.getValue())));
        for (Instance.Fan fan : instance.fans()) {
            items.add(Rig.fanOut("fan-" + fan.branches(), Rig.PLUG, Rig.SOCKET, fan.branches(), fan.stock()));
        }
        for (Instance.Fan comb : instance.combs()) {
            items.add(Rig.fanOut("comb-" + comb.branches(), Rig.PLUG, "tp15-pin", comb.branches(), comb.stock()));
        }
        return Rig.kit(instance.jacks(), instance.ties(), items.toArray(KitItem[]::new));
    }

    private static KitItem adapter(String terminal, int stock) {
        ItemKind kind = terminal.equals("skin-surface") || terminal.equals("liquid-column")
                ? ItemKind.CONTACT_AID
                : ItemKind.ADAPTER;
        return Rig.item("to-" + terminal, kind, MATES.get(terminal), Rig.PLUG, stock);
    }
}
