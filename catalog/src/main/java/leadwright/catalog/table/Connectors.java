package leadwright.catalog.table;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import leadwright.catalog.device.ConnectorDefinition;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.text.Fields;

/**
 * The connector table: which end mates with which. Mating is symmetric; an id that the table does not have mates with
 * nothing. Immutable: {@link #with} gives a new table.
 */
public final class Connectors {
    private final SortedMap<String, Connector> byId;

    private Connectors(SortedMap<String, Connector> byId) {
        this.byId = Collections.unmodifiableSortedMap(byId);
    }

    private static final class BuiltIn {
        private static final Connectors TABLE = load();
    }

    /** The catalog's own table. */
    public static Connectors builtIn() {
        return BuiltIn.TABLE;
    }

    private static Connectors load() {
        return TableFile.read("connectors.yaml", "connectors/1", top -> {
            SortedMap<String, Connector> byId = Rows.byKey(top, "connectors", "id", Connectors::connector);
            return () -> new Connectors(byId);
        });
    }

    private static Connector connector(Fields row) {
        return new Connector(
                row.id("id"),
                row.text("name"),
                row.text("family"),
                row.texts("mates"),
                row.texts("mates-unprotected"),
                row.word("contact", ContactKind.values(), ContactKind::word),
                row.optionalYesNo("shrouded"),
                row.optionalId("rear"),
                row.optionalPositive("current", Dimension.CURRENT),
                row.optionalPositive("voltage", Dimension.VOLTAGE),
                Optional.of(Origin.of(row)));
    }

    /**
     * This table with the connectors that a device's and a kit's file define. Each definition mates both ways with the
     * ids it lists. One id defined in both files is one connector: what it mates with adds up, and the lower rating
     * counts.
     *
     * @throws IllegalArgumentException when a definition takes the id of a built-in connector: files add, they never
     *     change what the catalog says
     */
    public Connectors with(Collection<ConnectorDefinition> definitions) {
        SortedMap<String, Connector> all = new TreeMap<>(byId);
        for (ConnectorDefinition definition : definitions) {
            if (builtIn().byId.containsKey(definition.id())) {
                throw new IllegalArgumentException(
                        "connector '" + definition.id() + "' is the catalog's own and cannot be defined again");
            }
            all.merge(definition.id(), defined(definition), Connectors::merged);
        }
        for (ConnectorDefinition definition : definitions) {
            for (String mate : definition.mates()) {
                all.computeIfPresent(mate, (id, connector) -> matingWith(connector, definition.id()));
            }
        }
        return new Connectors(all);
    }

    private static Connector defined(ConnectorDefinition definition) {
        return new Connector(
                definition.id(),
                definition.id().replace('-', ' '),
                "defined in the file",
                definition.mates(),
                List.of(),
                // No time is known for a connector of the device's own; it counts as a 4 mm one.
                ContactKind.LAB_4MM,
                Optional.empty(),
                Optional.empty(),
                definition.current(),
                definition.voltage(),
                Optional.empty());
    }

    private static Connector merged(Connector one, Connector other) {
        TreeSet<String> mates = new TreeSet<>(one.mates());
        mates.addAll(other.mates());
        return withMates(one, mates, lower(one.current(), other.current()), lower(one.voltage(), other.voltage()));
    }

    private static Optional<Quantity> lower(Optional<Quantity> one, Optional<Quantity> other) {
        if (one.isPresent() && other.isPresent()) {
            return one.get().atMost(other.get()) ? one : other;
        }
        return one.or(() -> other);
    }

    private static Connector matingWith(Connector connector, String mate) {
        TreeSet<String> mates = new TreeSet<>(connector.mates());
        mates.add(mate);
        return withMates(connector, mates, connector.current(), connector.voltage());
    }

    private static Connector withMates(
            Connector connector, Collection<String> mates, Optional<Quantity> current, Optional<Quantity> voltage) {
        return new Connector(
                connector.id(),
                connector.name(),
                connector.family(),
                new ArrayList<>(mates),
                connector.matesUnprotected(),
                connector.contact(),
                connector.shrouded(),
                connector.rear(),
                current,
                voltage,
                connector.origin());
    }

    public Optional<Connector> find(String id) {
        return Optional.ofNullable(byId.get(id));
    }

    /** Every connector, by id. */
    public Map<String, Connector> byId() {
        return byId;
    }

    /** Whether two ends go together. */
    public Mating mates(String one, String other) {
        return strongest(listed(one, other), listed(other, one));
    }

    private Mating listed(String one, String other) {
        Connector connector = byId.get(one);
        if (connector == null) {
            return Mating.NO;
        }
        if (connector.mates().contains(other)) {
            return Mating.YES;
        }
        return connector.matesUnprotected().contains(other) ? Mating.UNPROTECTED : Mating.NO;
    }

    private static Mating strongest(Mating one, Mating other) {
        if (one == Mating.YES || other == Mating.YES) {
            return Mating.YES;
        }
        return one == Mating.UNPROTECTED ? one : other;
    }

    /**
     * Kind of the joint between a device's terminal and what is plugged into it or put on it: the terminal's own kind, or
     * the other end's where the terminal is a surface. An unknown terminal counts as 4 mm.
     */
    public ContactKind joint(String terminal, String other) {
        ContactKind own = find(terminal).map(Connector::contact).orElse(ContactKind.LAB_4MM);
        return own == ContactKind.SURFACE ? find(other).map(Connector::contact).orElse(ContactKind.LAB_4MM) : own;
    }
}
