package leadwright.planner.judge;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantities;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.quantity.QuantityException;
import leadwright.catalog.text.Fields;
import leadwright.catalog.text.Node;
import leadwright.catalog.text.Spelling;

/**
 * A section of a file that this program wrote: keys that it does not know are for others and let pass, null means that
 * there is none.
 */
final class Given {

    private final Fields fields;

    Given(Fields fields) {
        this.fields = fields;
        fields.keys();
    }

    Optional<String> maybe(String key) {
        return fields.node(key)
                .filter(node -> node instanceof Node.Scalar scalar && scalar.type() != Node.Type.NOTHING)
                .map(node -> ((Node.Scalar) node).text());
    }

    String text(String key) {
        if (!fields.has(key)) {
            missing(key);
        }
        return maybe(key).orElse("");
    }

    boolean has(String key) {
        return fields.has(key);
    }

    void missing(String key) {
        problem(key, "key '" + key + "' is missing: the file is not whole, or an older program wrote it; make it anew");
    }

    void problem(String key, String message) {
        fields.findings().problem(fields.at(key), message);
    }

    boolean yes(String key) {
        return text(key).equals("true");
    }

    Optional<Quantity> quantity(String key, List<Dimension> dimensions) {
        try {
            return maybe(key).map(text -> Quantities.parse(text, dimensions));
        } catch (QuantityException e) {
            problem(key, "'" + key + "': " + e.getMessage());
            return Optional.empty();
        }
    }

    Optional<Quantity> quantity(String key, Dimension dimension) {
        return quantity(key, List.of(dimension));
    }

    Optional<LocalDate> date(String key) {
        try {
            return maybe(key).map(LocalDate::parse);
        } catch (DateTimeException e) {
            problem(key, "'" + key + "' is no day");
            return Optional.empty();
        }
    }

    /** A word of a known list, empty where there is none. */
    <E extends Enum<E>> Optional<E> word(String key, Class<E> type) {
        Optional<String> word = maybe(key);
        for (E each : type.getEnumConstants()) {
            if (word.equals(Optional.of(leadwright.catalog.device.Words.of(each)))) {
                return Optional.of(each);
            }
        }
        word.ifPresent(other -> problem(key, Spelling.show(other) + " is not a word for '" + key + "'"));
        return Optional.empty();
    }

    List<String> texts(String key) {
        return fields.texts(key);
    }

    Optional<Given> section(String key) {
        Optional<Node> node = fields.node(key);
        boolean none = node.isEmpty() || node.get() instanceof Node.Scalar scalar && scalar.type() == Node.Type.NOTHING;
        return none ? Optional.empty() : fields.optionalSection(key).map(Given::new);
    }

    /** A section that the file cannot do without. */
    Optional<Given> due(String key) {
        Optional<Given> section = section(key);
        if (section.isEmpty()) {
            missing(key);
        }
        return section;
    }

    List<Given> rows(String key) {
        return fields.rows(key).stream().map(Given::new).toList();
    }

    /** Names of the keys, in the order of the file. */
    List<String> keys() {
        return fields.keys().stream().map(located -> located.value()).toList();
    }
}
