package leadwright.catalog.text;

import java.util.List;
import java.util.Optional;

/** A file as a tree, every node with its place. */
public sealed interface Node {

    Place at();

    /** What kind of thing it is, in a word for messages. */
    String kind();

    /** Keys with their values, in file order, each key once. */
    record Mapping(Place at, List<Entry> entries) implements Node {
        public Mapping {
            entries = List.copyOf(entries);
        }

        public Optional<Entry> entry(String key) {
            return entries.stream().filter(entry -> entry.key().equals(key)).findFirst();
        }

        @Override
        public String kind() {
            return "a section with keys";
        }
    }

    /** A key with its value. */
    record Entry(String key, Place at, Node value) {}

    /** A list. */
    record Sequence(Place at, List<Node> items) implements Node {
        public Sequence {
            items = List.copyOf(items);
        }

        @Override
        public String kind() {
            return "a list";
        }
    }

    /**
     * A single value.
     *
     * @param text as written, quotes and escapes resolved; {@code 0123} stays {@code 0123}
     * @param type what YAML 1.2's core schema takes it for
     */
    record Scalar(Place at, String text, Type type) implements Node {
        @Override
        public String kind() {
            return switch (type) {
                case NOTHING -> "nothing";
                case YES_NO -> "a yes or no";
                case WHOLE, DECIMAL -> "a number";
                case TEXT -> "text";
            };
        }
    }

    /** Types of the core schema; {@code yes} and {@code no} are text there. */
    enum Type {
        TEXT,
        WHOLE,
        DECIMAL,
        YES_NO,
        NOTHING
    }
}
