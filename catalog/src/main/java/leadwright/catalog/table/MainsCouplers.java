package leadwright.catalog.table;

import java.util.Collections;
import java.util.Optional;
import java.util.SortedMap;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.SupplySystem;
import leadwright.catalog.device.Words;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.text.Fields;

/** Appliance inlets, and wall plugs with the sockets that they enter. A larger plug enters no smaller socket. */
public final class MainsCouplers {
    private final SortedMap<String, MainsCoupler> byInlet;
    private final SortedMap<String, MainsPlug> plugs;

    private MainsCouplers(SortedMap<String, MainsCoupler> byInlet, SortedMap<String, MainsPlug> plugs) {
        this.byInlet = Collections.unmodifiableSortedMap(byInlet);
        this.plugs = Collections.unmodifiableSortedMap(plugs);
    }

    private static final class BuiltIn {
        private static final MainsCouplers TABLE = load();
    }

    /** The catalog's own table. */
    public static MainsCouplers builtIn() {
        return BuiltIn.TABLE;
    }

    private static MainsCouplers load() {
        return TableFile.read("mains.yaml", "mains/1", top -> {
            SortedMap<String, MainsCoupler> byInlet = Rows.byKey(top, "couplers", "inlet", MainsCouplers::coupler);
            SortedMap<String, MainsPlug> plugs = Rows.byKey(top, "plugs", "id", MainsCouplers::plug);
            return () -> new MainsCouplers(byInlet, plugs);
        });
    }

    private static MainsCoupler coupler(Fields row) {
        return new MainsCoupler(
                row.id("inlet"),
                row.id("connector"),
                row.text("name"),
                row.word("class", Protection.values(), Protection::word),
                row.positive("current", Dimension.CURRENT),
                row.optionalPositive("current-north-america", Dimension.CURRENT),
                row.positive("voltage", Dimension.VOLTAGE),
                row.whole("pin-celsius", 70, 155),
                row.texts("accepts"),
                Origin.of(row));
    }

    private static MainsPlug plug(Fields row) {
        return new MainsPlug(
                row.id("id"),
                row.text("name"),
                row.quantities("currents", Dimension.CURRENT),
                row.optionalWord("fits", MainsPlug.Fits.values(), Words::of).orElse(MainsPlug.Fits.EQUAL),
                row.positive("voltage", Dimension.VOLTAGE),
                row.yesNo("earth", true),
                row.yesNo("polarised", false),
                row.wordList("systems", SupplySystem.values(), SupplySystem::word),
                row.texts("enters"),
                Origin.of(row));
    }

    public Optional<MainsCoupler> inlet(String id) {
        return Optional.ofNullable(byInlet.get(id));
    }

    public Optional<MainsPlug> plug(String id) {
        return Optional.ofNullable(plugs.get(id));
    }

    /** Every inlet, by id. */
    public SortedMap<String, MainsCoupler> inlets() {
        return byInlet;
    }

    /** Every plug, by id. */
    public SortedMap<String, MainsPlug> plugs() {
        return plugs;
    }

    /** Whether the plug goes into the socket, by shape; an unknown plug enters nothing. */
    public boolean enters(String plug, String socket) {
        return plug(plug).map(each -> each.enters().contains(socket)).orElse(false);
    }
}
