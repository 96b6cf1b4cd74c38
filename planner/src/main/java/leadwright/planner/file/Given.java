package leadwright.planner.file;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
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
public final class Given {

    private final Fields fields;

    public Given(Fields fields) {
        this.fields = fields;
        fields.keys();
    }

    public Optional<String> maybe(String key) {
        return fields.node(key)
                .filter(node -> node instanceof Node.Scalar scalar && scalar.type() != Node.Type.NOTHING)
                .map(node -> ((Node.Scalar) node).text());
    }

    public String text(String key) {
        if (!fields.has(key)) {
            missing(key);
        }
        return maybe(key).orElse("");
    }

    public boolean has(String key) {
        return fields.has(key);
    }

    public void missing(String key) {
        problem(key, "key '" + key + "' is missing: the file is not whole, or an older program wrote it; make it anew");
    }

    public void problem(String key, String message) {
        fields.findings().problem(fields.at(key), message);
    }

    public boolean yes(String key) {
        return text(key).equals("true");
    }

    public Optional<Quantity> quantity(String key, List<Dimension> dimensions) {
        try {
            return maybe(key).map(text -> Quantities.parse(text, dimensions));
        } catch (QuantityException e) {
            problem(key, "'" + key + "': " + e.getMessage());
            return Optional.empty();
        }
    }

    public Optional<Quantity> quantity(String key, Dimension dimension) {
        return quantity(key, List.of(dimension));
    }

    public Optional<LocalDate> date(String key) {
        try {
            return maybe(key).map(LocalDate::parse);
        } catch (DateTimeException e) {
            problem(key, "'" + key + "' is no day");
            return Optional.empty();
        }
    }

    /** A word of a known list, empty where there is none. */
    public <E extends Enum<E>> Optional<E> word(String key, Class<E> type) {
        Optional<String> word = maybe(key);
        for (E each : type.getEnumConstants()) {
            if (word.equals(Optional.of(leadwright.catalog.device.Words.of(each)))) {
                return Optional.of(each);
            }
        }
        word.ifPresent(other -> problem(key, Spelling.show(other) + " is not a word for '" + key + "'"));
        return Optional.empty();
    }

    public List<String> texts(String key) {
        return fields.texts(key);
    }

    public Optional<Given> section(String key) {
        Optional<Node> node = fields.node(key);
        boolean none = node.isEmpty() || node.get() instanceof Node.Scalar scalar && scalar.type() == Node.Type.NOTHING;
        return none ? Optional.empty() : fields.optionalSection(key).map(Given::new);
    }

    /** A number of zero or more; 0 where the file does not hold one, which is a problem. */
    public int whole(String key) {
        return fields.whole(key, 0, Integer.MAX_VALUE);
    }

    /** Numbers of a list, each of zero or more. */
    public List<Integer> wholes(String key) {
        List<Integer> numbers = new ArrayList<>();
        for (String text : fields.texts(key)) {
            try {
                numbers.add(Integer.parseUnsignedInt(text));
            } catch (NumberFormatException e) {
                problem(key, Spelling.show(text) + " is no number");
            }
        }
        return numbers;
    }

    /** A section that the file cannot do without. */
    public Optional<Given> due(String key) {
        Optional<Given> section = section(key);
        if (section.isEmpty()) {
            missing(key);
        }
        return section;
    }

    public List<Given> rows(String key) {
        return fields.rows(key).stream().map(Given::new).toList();
    }

    /** Names of the keys, in the order of the file. */
    public List<String> keys() {
        return fields.keys().stream().map(located -> located.value()).toList();
    }
}
