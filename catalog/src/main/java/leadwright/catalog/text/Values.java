package leadwright.catalog.text;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantities;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.quantity.QuantityException;

/** Single values: each gives the value, or empty and a problem at the value's place. */
final class Values {

    /** Keys whose words decide how safe a device must be: a guess at one might be taken, so all are listed. */
    private static final Set<String> LISTED = Set.of("class", "protection", "type");

    private static final Pattern ID = Pattern.compile("[A-Za-z0-9][A-Za-z0-9_-]{0,63}");
    private static final Pattern DATE = Pattern.compile("\\d{4}-\\d{2}-\\d{2}");
    private static final Pattern WHOLE = Pattern.compile("[+-]?\\d{1,18}");
    private static final Pattern DECIMAL =
            Pattern.compile("[+-]?(\\d{1,30}(\\.\\d{0,30})?|\\.\\d{1,30})([eE][+-]?\\d{1,2})?");

    private static final Pattern RANGE =
            Pattern.compile("(\\d+(?:\\.\\d+)?)\\s*[-/\u2013]\\s*(\\d+(?:\\.\\d+)?)\\s*(\\S+)");

    private final Findings findings;

    Values(Findings findings) {
        this.findings = findings;
    }

    private <T> Optional<T> wrong(Node node, String message) {
        findings.problem(node.at(), message);
        return Optional.empty();
    }

    /** A scalar that says something; {@code due} says what is due, for instance {@code a date such as 2027-05-31}. */
    private Optional<Node.Scalar> scalar(String key, Node node, String due) {
        if (node instanceof Node.Scalar scalar && scalar.type() != Node.Type.NOTHING) {
            return Optional.of(scalar);
        }
        String given = node instanceof Node.Scalar ? "'" + key + "' has no value" : "'" + key + "' is " + node.kind();
        return wrong(node, given + "; " + due + " is due");
    }

    Optional<String> text(String key, Node node) {
        Optional<Node.Scalar> scalar = scalar(key, node, "text");
        if (scalar.isPresent() && scalar.get().type() == Node.Type.YES_NO) {
            return wrong(
                    node,
                    "'" + key + "' is " + scalar.get().text()
                            + ", a yes or no; text is due: put it in quotes if it is a word");
        }
        if (scalar.isPresent() && scalar.get().text().isBlank()) {
            return wrong(node, "'" + key + "' is empty; write text, or leave the line out if it may be absent");
        }
        return scalar.map(Node.Scalar::text);
    }

    Optional<String> id(String key, Node node) {
        Optional<String> text = text(key, node);
        if (text.isPresent() && !ID.matcher(text.get()).matches()) {
            return wrong(
                    node,
                    Spelling.show(text.get())
                            + " is no id: letters a-z, digits, hyphens and underscores, at most 64, the first"
                            + " a letter or digit");
        }
        return text;
    }

    Optional<String> oneOf(String key, Node node, Collection<String> words) {
        Optional<Node.Scalar> scalar = scalar(key, node, "one of " + String.join(", ", words));
        if (scalar.isEmpty()) {
            return Optional.empty();
        }
        String word = yesOrNo(scalar.get().text(), scalar.get().type(), words);
        return words.contains(word)
                ? Optional.of(word)
                : wrong(
                        node,
                        Spelling.show(word) + " is not a word for '" + key + "'; "
                                + (LISTED.contains(key) ? Spelling.known(words) : findings.instead(word, words)));
    }

    /** Where yes and no are among the words, true and false say the same. */
    private static String yesOrNo(String text, Node.Type type, Collection<String> words) {
        if (type != Node.Type.YES_NO) {
            return text;
        }
        String word = text.equalsIgnoreCase("true") ? "yes" : "no";
        return words.contains(word) ? word : text;
    }

    Optional<Boolean> yesNo(String key, Node node) {
        return oneOf(key, node, List.of("yes", "no")).map("yes"::equals);
    }

    /** An amount of zero or more. */
    Optional<Quantity> quantity(String key, Node node, List<Dimension> dimensions) {
        String such = dimensions.get(0).customary();
        Optional<Node.Scalar> scalar = scalar(key, node, "a quantity such as '1 " + such + "'");
        if (scalar.isEmpty()) {
            return Optional.empty();
        }
        try {
            Quantity quantity = Quantities.parse(scalar.get().text(), dimensions);
            return quantity.amount() < 0
                    ? wrong(
                            node,
                            "'" + key + "' is " + Spelling.show(scalar.get().text()) + ", less than nothing")
                    : Optional.of(quantity);
        } catch (QuantityException e) {
            return wrong(node, "'" + key + "': " + e.getMessage());
        }
    }

    /** One amount above zero, or a range such as {@code 100-240 V}: lowest and highest. */
    Optional<Range> range(String key, Node node, Dimension dimension) {
        Matcher matcher =
                node instanceof Node.Scalar scalar ? RANGE.matcher(scalar.text().trim()) : RANGE.matcher("");
        if (!matcher.matches()) {
            return quantity(key, node, List.of(dimension)).flatMap(one -> range(key, node, one, one));
        }
        Node.Type text = Node.Type.TEXT;
        Optional<Quantity> lowest = quantity(
                key, new Node.Scalar(node.at(), matcher.group(1) + " " + matcher.group(3), text), List.of(dimension));
        Optional<Quantity> highest = quantity(
                key, new Node.Scalar(node.at(), matcher.group(2) + " " + matcher.group(3), text), List.of(dimension));
        return lowest.isPresent() && highest.isPresent()
                ? range(key, node, lowest.get(), highest.get())
                : Optional.empty();
    }

    private Optional<Range> range(String key, Node node, Quantity lowest, Quantity highest) {
        if (lowest.amount() == 0) {
            return wrong(node, "'" + key + "' is zero; an amount above zero is due");
        }
        return lowest.atMost(highest)
                ? Optional.of(new Range(lowest, highest))
                : wrong(node, "'" + key + "': the range runs downwards; write the lower value first");
    }

    /** A whole number between two bounds, both included. */
    Optional<Integer> whole(String key, Node node, int least, int most) {
        String due = "a whole number from " + least + " to " + most;
        Optional<Node.Scalar> scalar = scalar(key, node, due);
        if (scalar.isEmpty()) {
            return Optional.empty();
        }
        String text = scalar.get().text();
        if (scalar.get().type() != Node.Type.WHOLE || !WHOLE.matcher(text).matches()) {
            return wrong(
                    node, "'" + key + "' is " + Spelling.show(text) + "; " + due + " is due, without quotes or unit");
        }
        long number = Long.parseLong(text);
        return number < least || number > most
                ? wrong(node, "'" + key + "' is " + text + "; " + due + " is due")
                : Optional.of((int) number);
    }

    /** A number without unit, for tables whose unit the key names. */
    Optional<BigDecimal> decimal(String key, Node node) {
        Optional<Node.Scalar> scalar = scalar(key, node, "a number");
        if (scalar.isEmpty()) {
            return Optional.empty();
        }
        String text = scalar.get().text();
        boolean number = scalar.get().type() == Node.Type.WHOLE || scalar.get().type() == Node.Type.DECIMAL;
        return number && DECIMAL.matcher(text).matches()
                ? Optional.of(new BigDecimal(text))
                : wrong(node, "'" + key + "' is " + Spelling.show(text) + "; a number without unit is due");
    }

    Optional<LocalDate> date(String key, Node node) {
        Optional<Node.Scalar> scalar = scalar(key, node, "a date such as 2027-05-31");
        if (scalar.isEmpty()) {
            return Optional.empty();
        }
        String text = scalar.get().text();
        if (DATE.matcher(text).matches()) {
            try {
                return Optional.of(LocalDate.parse(text));
            } catch (DateTimeException e) {
                return wrong(node, "'" + key + "': there is no day " + Spelling.show(text));
            }
        }
        return wrong(
                node,
                "'" + key + "' is " + Spelling.show(text) + "; a date is year-month-day, for instance 2027-05-31");
    }
}
