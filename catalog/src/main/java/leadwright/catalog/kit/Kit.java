package leadwright.catalog.kit;

import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.ConnectorDefinition;

/** A bench kit, as described by a {@code kit/1} file. */
public record Kit(
        String name,
        Tester tester,
        List<KitItem> items,
        List<KnownResistor> checks,
        List<ConnectorDefinition> connectors) {
    public Kit {
        items = List.copyOf(items);
        checks = List.copyOf(checks);
        connectors = List.copyOf(connectors);
    }

    public Optional<KitItem> item(String id) {
        return items.stream().filter(item -> item.id().equals(id)).findFirst();
    }
}
