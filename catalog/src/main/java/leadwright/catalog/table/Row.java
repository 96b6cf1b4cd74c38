package leadwright.catalog.table;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantities;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.quantity.QuantityException;
import leadwright.catalog.rules.Mark;

/** One row of a built-in table. Every key has to be read once, so that a misspelt one cannot be overlooked. */
final class Row {
    private final String where;
    private final Map<?, ?> values;
    private final Set<String> unread = new TreeSet<>();

    Row(String where, Map<?, ?> values) {
        this.where = where;
        this.values = values;
        values.keySet().forEach(key -> unread.add(String.valueOf(key)));
    }

    Optional<String> text(String key) {
        Object value = take(key);
        if (value == null) {
            return Optional.empty();
        }
        if (value instanceof String text) {
            return Optional.of(text);
        }
        throw wrong(key, "is not a text");
    }

    String needed(String key) {
        return text(key).orElseThrow(() -> wrong(key, "is missing"));
    }

    List<String> texts(String key) {
        Object value = take(key);
        if (value == null) {
            return List.of();
        }
        if (!(value instanceof List<?> elements)) {
            throw wrong(key, "is not a list");
        }
        List<String> texts = new ArrayList<>();
        elements.forEach(element -> texts.add(String.valueOf(element)));
        return List.copyOf(texts);
    }

    Optional<Row> row(String key) {
        Object value = take(key);
        if (value == null) {
            return Optional.empty();
        }
        if (value instanceof Map<?, ?> map) {
            return Optional.of(new Row(where + ", " + key, map));
        }
        throw wrong(key, "is not a row");
    }

    Optional<Quantity> quantity(String key, Dimension dimension) {
        return text(key).map(text -> parsed(key, text, dimension));
    }

    Quantity neededQuantity(String key, Dimension dimension) {
        return parsed(key, needed(key), dimension);
    }

    List<Quantity> quantities(String key, Dimension dimension) {
        return texts(key).stream().map(text -> parsed(key, text, dimension)).toList();
    }

    BigDecimal number(String key) {
        return number(key, needed(key));
    }

    Optional<BigDecimal> optionalNumber(String key) {
        return text(key).map(text -> number(key, text));
    }

    Optional<Boolean> flag(String key) {
        return text(key).map(text -> switch (text) {
            case "yes" -> true;
            case "no" -> false;
            default -> throw wrong(key, "is neither yes nor no");
        });
    }

    <E extends Enum<E>> E word(String key, Class<E> type) {
        return constant(key, needed(key), type);
    }

    <E extends Enum<E>> List<E> words(String key, Class<E> type) {
        return texts(key).stream().map(text -> constant(key, text, type)).toList();
    }

    /** Mark and sources; a row without a source has to say that it is from memory, and only mark C may. */
    Origin origin() {
        Origin origin = new Origin(
                word("mark", Mark.class), texts("sources"), flag("from-memory").orElse(false));
        if (origin.sources().isEmpty() && !origin.fromMemory()) {
            throw new IllegalStateException(where + ": neither a source nor from memory");
        }
        if (origin.fromMemory() != (origin.mark() == Mark.C)) {
            throw new IllegalStateException(where + ": mark C and from memory go together");
        }
        return origin;
    }

    /** To be called last: complains about keys that nobody asked for. */
    void finish() {
        if (!unread.isEmpty()) {
            throw new IllegalStateException(where + ": unknown " + String.join(", ", unread));
        }
    }

    private Object take(String key) {
        unread.remove(key);
        return values.get(key);
    }

    private Quantity parsed(String key, String text, Dimension dimension) {
        try {
            return Quantities.parse(text, dimension);
        } catch (QuantityException e) {
            throw new IllegalStateException(where + ", " + key + ": " + e.getMessage(), e);
        }
    }

    private BigDecimal number(String key, String text) {
        try {
            return new BigDecimal(text);
        } catch (NumberFormatException e) {
            throw new IllegalStateException(where + ", " + key + ": '" + text + "' is not a number", e);
        }
    }

    private <E extends Enum<E>> E constant(String key, String text, Class<E> type) {
        try {
            return Enum.valueOf(type, text.toUpperCase(Locale.ROOT).replace('-', '_'));
        } catch (IllegalArgumentException e) {
            throw new IllegalStateException(where + ", " + key + ": unknown word '" + text + "'", e);
        }
    }

    private IllegalStateException wrong(String key, String what) {
        return new IllegalStateException(where + ": '" + key + "' " + what);
    }
}
