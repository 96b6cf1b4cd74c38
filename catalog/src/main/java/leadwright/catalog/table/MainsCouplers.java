package leadwright.catalog.table;

import java.util.Collections;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.SupplySystem;
import leadwright.catalog.quantity.Dimension;

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
        TableFile file = TableFile.load("mains.yaml", "mains/1");
        SortedMap<String, MainsCoupler> byInlet = new TreeMap<>();
        for (Row row : file.rows("couplers")) {
            MainsCoupler coupler = coupler(row);
            row.finish();
            if (byInlet.put(coupler.inlet(), coupler) != null) {
                throw new IllegalStateException("mains.yaml has '" + coupler.inlet() + "' twice");
            }
        }
        SortedMap<String, MainsPlug> plugs = new TreeMap<>();
        for (Row row : file.rows("plugs")) {
            MainsPlug plug = plug(row);
            row.finish();
            if (plugs.put(plug.id(), plug) != null) {
                throw new IllegalStateException("mains.yaml has '" + plug.id() + "' twice");
            }
        }
        return new MainsCouplers(byInlet, plugs);
    }

    private static MainsCoupler coupler(Row row) {
        return new MainsCoupler(
                row.needed("inlet"),
                row.needed("connector"),
                row.needed("name"),
                row.word("class", Protection.class),
                row.neededQuantity("current", Dimension.CURRENT),
                row.quantity("current-north-america", Dimension.CURRENT),
                row.neededQuantity("voltage", Dimension.VOLTAGE),
                row.number("pin-celsius").intValueExact(),
                row.texts("accepts"),
                row.origin());
    }

    private static MainsPlug plug(Row row) {
        return new MainsPlug(
                row.needed("id"),
                row.needed("name"),
                row.quantities("currents", Dimension.CURRENT),
                row.text("fits").isPresent() ? row.word("fits", MainsPlug.Fits.class) : MainsPlug.Fits.EQUAL,
                row.neededQuantity("voltage", Dimension.VOLTAGE),
                row.flag("earth").orElseThrow(),
                row.flag("polarised").orElseThrow(),
                row.words("systems", SupplySystem.class),
                row.texts("enters"),
                row.origin());
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
