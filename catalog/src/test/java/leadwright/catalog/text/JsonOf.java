package leadwright.catalog.text;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.stream.Collectors;

/** A file's tree as JSON, for a judge that reads JSON only. */
public final class JsonOf {

    private JsonOf() {}

    /** Empty where the file has no tree, or a tree with problems such as a key that stands twice. */
    public static Optional<String> file(byte[] bytes) {
        Findings findings = new Findings("f");
        Optional<Node> root = Tree.read(bytes, findings);
        return findings.clean() ? root.map(JsonOf::json) : Optional.empty();
    }

    private static String json(Node node) {
        if (node instanceof Node.Sequence list) {
            return list.items().stream().map(JsonOf::json).collect(Collectors.joining(",", "[", "]"));
        }
        if (node instanceof Node.Mapping section) {
            return section.entries().stream()
                    .map(entry -> quoted(entry.key()) + ":" + json(entry.value()))
                    .collect(Collectors.joining(",", "{", "}"));
        }
        Node.Scalar scalar = (Node.Scalar) node;
        return switch (scalar.type()) {
            case TEXT -> quoted(scalar.text());
            case NOTHING -> "null";
            case YES_NO -> scalar.text().equalsIgnoreCase("true") ? "true" : "false";
            case WHOLE, DECIMAL -> number(scalar.text());
        };
    }

    /** What is no number in JSON (hexadecimal, infinite) goes as text. */
    private static String number(String text) {
        try {
            return new BigDecimal(text).toPlainString();
        } catch (NumberFormatException e) {
            return quoted(text);
        }
    }

    private static String quoted(String text) {
        StringBuilder json = new StringBuilder("\"");
        for (char character : text.toCharArray()) {
            if (character == '"' || character == '\\') {
                json.append('\\').append(character);
            } else if (character < ' ') {
                json.append(String.format("\\u%04x", (int) character));
            } else {
                json.append(character);
            }
        }
        return json.append('"').toString();
    }
}
