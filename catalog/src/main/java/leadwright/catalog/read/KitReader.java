package leadwright.catalog.read;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.kit.KnownResistor;
import leadwright.catalog.kit.Tester;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.text.Document;
import leadwright.catalog.text.Fields;
import leadwright.catalog.text.Outcome;

/** Reads {@code kit/1} files. */
public final class KitReader {

    private KitReader() {}

    /**
     * Reads a bench kit.
     *
     * @param file name of the file, for messages
     * @param bytes its content, YAML or JSON in UTF-8
     */
    public static Outcome<Kit> read(String file, byte[] bytes) {
        return Document.read(file, bytes, "kit/1", KitReader::kit);
    }

    private static Supplier<Kit> kit(Fields top) {
        String name = top.text("name");
        ConnectorWords connectors = ConnectorWords.of(top);
        Optional<Tester> tester =
                top.section("tester").map(section -> TesterReading.of(section, name, connectors.words()));
        Ids itemIds = new Ids("item", top.findings());
        top.assumed("items", Optional.of(true), true, "taken as none");
        List<KitItem> items = top.rows("items").stream()
                .map(row -> ItemReading.of(row, itemIds, connectors.words()))
                .toList();
        Ids checkIds = new Ids("known resistor", top.findings());
        List<KnownResistor> checks =
                top.rows("checks").stream().map(row -> check(row, checkIds)).toList();
        return () -> new Kit(name, tester.orElseThrow(), items, checks, connectors.definitions());
    }

    private static KnownResistor check(Fields row, Ids ids) {
        return new KnownResistor(
                ids.claim(row),
                row.positive("value", Dimension.RESISTANCE),
                row.quantity("tolerance", Dimension.RATIO),
                row.optionalPositive("voltage", Dimension.VOLTAGE));
    }
}
