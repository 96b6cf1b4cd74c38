package leadwright.catalog.read;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.QuantityException;
import leadwright.catalog.table.Conductors;
import leadwright.catalog.table.MainsCouplers;
import leadwright.catalog.text.Fields;
import leadwright.catalog.text.Spelling;

/** One row of a kit's {@code items:}. */
final class ItemReading {

    private static final int MOST_BRANCHES = 200;
    private static final int MOST_STOCK = 10_000;
    private static final Pattern PRICE = Pattern.compile("\\d{1,9}(\\.\\d{1,2})? [A-Z]{3}");
    private static final Pattern BARE = Pattern.compile("\\d+(\\.\\d+)?");

    private ItemReading() {}

    static KitItem of(Fields row, Ids ids, Set<String> connectors) {
        String id = ids.claim(row);
        Optional<ItemKind> kind = row.neededWord("kind", ItemKind.values(), ItemKind::word);
        boolean fanOut = kind.isPresent() && kind.get() == ItemKind.FAN_OUT;
        List<String> ends;
        int branches = 0;
        if (fanOut) {
            refuse(row, List.of("ends"), "a fan-out has 'trunk', 'branch' and 'branches' instead");
            ends = List.of(row.oneOf("trunk", connectors), row.oneOf("branch", connectors));
            branches = row.whole("branches", 2, MOST_BRANCHES);
        } else {
            ends = row.oneOfs(
                    "ends", kind.filter(ItemKind.ADAPTER::equals).isPresent() ? withMains(connectors) : connectors);
            if (kind.isPresent()) {
                refuse(
                        row,
                        List.of("trunk", "branch", "branches"),
                        "only a fan-out has it; other items have two 'ends'");
                twoEnds(row);
            } else {
                List.of("trunk", "branch", "branches").forEach(row::has);
            }
        }
        return new KitItem(
                id,
                kind.orElse(ItemKind.ADAPTER),
                ends,
                branches,
                also(row, kind, connectors),
                row.optionalQuantity("length", Dimension.LENGTH),
                conductor(row),
                row.optionalPositive("current", Dimension.CURRENT),
                row.optionalPositive("voltage", Dimension.VOLTAGE),
                row.optionalQuantity("capacitance", Dimension.CAPACITANCE_PER_LENGTH),
                row.whole("stock", 0, MOST_STOCK),
                price(row));
    }

    /** An adapter may also go between a wall plug and an outlet: the socket it offers, then the plug it ends in. */
    private static Set<String> withMains(Set<String> connectors) {
        Set<String> words = new TreeSet<>(connectors);
        words.addAll(MainsCouplers.builtIn().plugs().keySet());
        return words;
    }

    private static void refuse(Fields row, List<String> keys, String instead) {
        for (String key : keys) {
            if (row.has(key)) {
                row.findings().problem(row.at(key), "'" + key + "' does not belong here: " + instead);
            }
        }
    }

    private static void twoEnds(Fields row) {
        int given = row.items("ends").size();
        if (!row.has("ends")) {
            row.findings().problem(row.at(), "key 'ends' is missing; a list of two connector words is due");
        } else if (given != 2) {
            row.findings().problem(row.at("ends"), "'ends' lists " + given + "; exactly two ends are due");
        }
    }

    private static List<String> also(Fields row, Optional<ItemKind> kind, Set<String> connectors) {
        boolean reaches = kind.isEmpty() || kind.get() == ItemKind.CLIP || kind.get() == ItemKind.PROBE;
        if (!reaches && row.has("also")) {
            row.findings()
                    .problem(row.at("also"), "'also' does not belong here: only a clip or a probe reaches further");
        }
        return row.oneOfs("also", connectors);
    }

    /** A cross-section or an AWG number, kept as written. */
    private static Optional<String> conductor(Fields row) {
        Optional<String> written = row.optionalText("conductor");
        if (written.isPresent()) {
            try {
                if (Conductors.builtIn().find(written.get()).isEmpty()) {
                    row.findings()
                            .problem(
                                    row.at("conductor"),
                                    Spelling.show(written.get())
                                            + " is not in the conductor table; write the cross-section, such as '1.5 mm2'");
                }
            } catch (QuantityException e) {
                row.findings().problem(row.at("conductor"), "'conductor': " + e.getMessage());
            }
        }
        return written;
    }

    private static Optional<String> price(Fields row) {
        Optional<String> written = row.optionalText("price");
        if (written.isPresent() && !PRICE.matcher(written.get()).matches()) {
            String wrong = BARE.matcher(written.get()).matches() ? " has no currency" : " is no price";
            row.findings()
                    .problem(
                            row.at("price"),
                            "'price': " + Spelling.show(written.get()) + wrong
                                    + "; an amount and a currency code are due, such as '4 GBP'");
        }
        return written;
    }
}
