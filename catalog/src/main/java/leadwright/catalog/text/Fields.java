package leadwright.catalog.text;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;

/**
 * One section of a file (a mapping), read key by key. Every key that a getter was asked for is known; the others are
 * problems when the section is closed, which {@link Document} does.
 *
 * <p>Getters named {@code optional…} give empty for an absent key; those with an {@code otherwise} give that; all others
 * note a problem for an absent key. A wrong value is always a problem, and the getter then gives a placeholder.
 */
public final class Fields {

    private final Node.Mapping mapping;
    private final String path;
    private final Findings findings;
    private final Values values;
    private final Set<String> asked = new LinkedHashSet<>();
    private final Map<Place, Fields> inner = new LinkedHashMap<>();

    Fields(Node.Mapping mapping, String path, Findings findings) {
        this.mapping = mapping;
        this.path = path;
        this.findings = findings;
        this.values = new Values(findings);
    }

    public Findings findings() {
        return findings;
    }

    /** Where the section begins. */
    public Place at() {
        return mapping.at();
    }

    /** Where the key's value begins; the section's own place where the key is absent. */
    public Place at(String key) {
        return mapping.entry(key).map(entry -> entry.value().at()).orElse(at());
    }

    /** Name of a key from the top of the file, for statements: {@code tester.jacks.at-rest}. */
    public String path(String key) {
        return path.isEmpty() ? key : path + "." + key;
    }

    public boolean has(String key) {
        asked.add(key);
        return mapping.entry(key).isPresent();
    }

    /** All keys in file order, for sections whose keys are data; every one counts as asked for. */
    public List<Located<String>> keys() {
        mapping.entries().forEach(entry -> asked.add(entry.key()));
        return mapping.entries().stream()
                .map(entry -> new Located<>(entry.key(), entry.at()))
                .toList();
    }

    /** The value as it stands in the tree. */
    public Optional<Node> node(String key) {
        asked.add(key);
        return mapping.entry(key).map(Node.Entry::value);
    }

    /** What was read, or the default; where the key is absent, documents state the default. */
    public <T> T assumed(String key, Optional<T> read, T otherwise, String statement) {
        if (!has(key)) {
            findings.assume(path(key) + ": not stated, " + statement);
        }
        return read.orElse(otherwise);
    }

    private void missing(String key, String due) {
        findings.problem(at(), "key '" + key + "' is missing; " + due + " is due");
    }

    private <T> T required(String key, String due, Optional<T> read, T placeholder) {
        if (!has(key)) {
            missing(key, due);
        }
        return read.orElse(placeholder);
    }

    // ---- text and words

    public Optional<String> optionalText(String key) {
        return node(key).flatMap(node -> values.text(key, node));
    }

    public String text(String key) {
        return required(key, "text", optionalText(key), "");
    }

    public Optional<String> optionalId(String key) {
        return node(key).flatMap(node -> values.id(key, node));
    }

    public String id(String key) {
        return required(key, "an id of its own", optionalId(key), "");
    }

    public Optional<String> optionalOneOf(String key, Collection<String> words) {
        return node(key).flatMap(node -> values.oneOf(key, node, words));
    }

    public String oneOf(String key, Collection<String> words) {
        String due = words.size() > 12 ? "a known word" : Spelling.either(List.copyOf(words));
        return required(key, due, optionalOneOf(key, words), "");
    }

    public <E> Optional<E> optionalWord(String key, E[] all, Function<? super E, String> spelling) {
        Map<String, E> words = words(all, spelling);
        return optionalOneOf(key, words.keySet()).map(words::get);
    }

    /** A word that is due, empty where it is missing or wrong, for readers whose further checks hang on it. */
    public <E> Optional<E> neededWord(String key, E[] all, Function<? super E, String> spelling) {
        Map<String, E> words = words(all, spelling);
        return Optional.ofNullable(words.get(oneOf(key, words.keySet())));
    }

    public <E> E word(String key, E[] all, Function<? super E, String> spelling) {
        return neededWord(key, all, spelling).orElse(all[0]);
    }

    private static <E> Map<String, E> words(E[] all, Function<? super E, String> spelling) {
        Map<String, E> words = new LinkedHashMap<>();
        for (E each : all) {
            words.put(spelling.apply(each), each);
        }
        return words;
    }

    public Optional<Boolean> optionalYesNo(String key) {
        return node(key).flatMap(node -> values.yesNo(key, node));
    }

    public boolean yesNo(String key, boolean otherwise) {
        return optionalYesNo(key).orElse(otherwise);
    }

    // ---- quantities, numbers, dates

    /** An amount of zero or more. */
    public Optional<Quantity> optionalQuantity(String key, Dimension dimension) {
        return optionalQuantity(key, List.of(dimension));
    }

    /** An amount of zero or more whose unit tells its dimension. */
    public Optional<Quantity> optionalQuantity(String key, List<Dimension> dimensions) {
        return node(key).flatMap(node -> values.quantity(key, node, dimensions));
    }

    /** An amount of zero or more. */
    public Quantity quantity(String key, Dimension dimension) {
        String due = "a quantity such as '1 " + dimension.customary() + "'";
        return required(key, due, optionalQuantity(key, dimension), Quantity.of(dimension, 0));
    }

    /** An amount above zero. */
    public Optional<Quantity> optionalPositive(String key, Dimension dimension) {
        return optionalPositive(key, List.of(dimension));
    }

    private Optional<Quantity> optionalPositive(String key, List<Dimension> dimensions) {
        Optional<Quantity> quantity = optionalQuantity(key, dimensions);
        if (quantity.isPresent() && quantity.get().amount() == 0) {
            findings.problem(at(key), "'" + key + "' is zero; an amount above zero is due");
        }
        return quantity;
    }

    /** An amount above zero. */
    public Quantity positive(String key, Dimension dimension) {
        return positive(key, List.of(dimension));
    }

    /** An amount above zero whose unit tells its dimension. */
    public Quantity positive(String key, List<Dimension> dimensions) {
        String due = "a quantity such as '1 " + dimensions.get(0).customary() + "'";
        return required(key, due, optionalPositive(key, dimensions), Quantity.of(dimensions.get(0), 0));
    }

    /** One amount above zero or a range of two, such as {@code 100-240 V}. */
    public Optional<Range> optionalRange(String key, Dimension dimension) {
        return node(key).flatMap(node -> values.range(key, node, dimension));
    }

    /** Amounts of zero or more; absent means none. */
    public List<Quantity> quantities(String key, Dimension dimension) {
        return items(key).stream()
                .flatMap(node -> values.quantity(key, node, List.of(dimension)).stream())
                .toList();
    }

    public Optional<Integer> optionalWhole(String key, int least, int most) {
        return node(key).flatMap(node -> values.whole(key, node, least, most));
    }

    public int whole(String key, int least, int most) {
        return required(key, "a whole number", optionalWhole(key, least, most), least);
    }

    public Optional<BigDecimal> optionalDecimal(String key) {
        return node(key).flatMap(node -> values.decimal(key, node));
    }

    public BigDecimal decimal(String key) {
        return required(key, "a number", optionalDecimal(key), BigDecimal.ZERO);
    }

    public Optional<LocalDate> optionalDate(String key) {
        return node(key).flatMap(node -> values.date(key, node));
    }

    public LocalDate date(String key) {
        return required(key, "a date such as 2027-05-31", optionalDate(key), LocalDate.EPOCH);
    }

    // ---- lists and sections

    /** The items of a list; absent means none; anything but a list is a problem. */
    public List<Node> items(String key) {
        Optional<Node> node = node(key);
        if (node.isEmpty()) {
            return List.of();
        }
        if (node.get() instanceof Node.Sequence list) {
            return list.items();
        }
        findings.problem(
                node.get().at(), "'" + key + "' is " + node.get().kind() + "; a list is due, [] where there is none");
        return List.of();
    }

    /** Texts of a list with their places; absent means none. */
    public List<Located<String>> locatedTexts(String key) {
        List<Located<String>> texts = new ArrayList<>();
        for (Node item : items(key)) {
            values.text(key, item).ifPresent(text -> texts.add(new Located<>(text, item.at())));
        }
        return texts;
    }

    /** Texts of a list; absent means none. */
    public List<String> texts(String key) {
        return locatedTexts(key).stream().map(Located::value).toList();
    }

    /** Words of a list, in its order, repeated ones too; absent means none. */
    public List<String> oneOfs(String key, Collection<String> words) {
        return items(key).stream()
                .flatMap(item -> values.oneOf(key, item, words).stream())
                .toList();
    }

    /** Words of a list, each at most once; absent means none. */
    public <E> List<E> wordList(String key, E[] all, Function<? super E, String> spelling) {
        Map<String, E> words = words(all, spelling);
        Set<E> read = new LinkedHashSet<>();
        for (Node item : items(key)) {
            Optional<E> word = values.oneOf(key, item, words.keySet()).map(words::get);
            if (word.isPresent() && !read.add(word.get())) {
                findings.problem(item.at(), "'" + spelling.apply(word.get()) + "' stands twice in '" + key + "'");
            }
        }
        return List.copyOf(read);
    }

    /** Sections of a list; absent means none. */
    public List<Fields> rows(String key) {
        List<Fields> rows = new ArrayList<>();
        for (Node item : items(key)) {
            if (item instanceof Node.Mapping section) {
                rows.add(inner(section, path(key) + " " + nameOf(section, rows.size() + 1)));
            } else {
                findings.problem(item.at(), "'" + key + "' lists " + item.kind() + "; a section with keys is due");
            }
        }
        return rows;
    }

    private static String nameOf(Node.Mapping row, int number) {
        return row.entry("id")
                        .filter(id -> id.value() instanceof Node.Scalar scalar
                                && !scalar.text().isBlank())
                        .isPresent()
                ? ((Node.Scalar) row.entry("id").orElseThrow().value()).text()
                : String.valueOf(number);
    }

    public Optional<Fields> optionalSection(String key) {
        Optional<Node> node = node(key);
        if (node.isPresent() && node.get() instanceof Node.Mapping section) {
            return Optional.of(inner(section, path(key)));
        }
        node.ifPresent(other ->
                findings.problem(other.at(), "'" + key + "' is " + other.kind() + "; a section with keys is due"));
        return Optional.empty();
    }

    /** A section that is due; its own missing keys are reported once, not one by one, where it is absent. */
    public Optional<Fields> section(String key) {
        if (!has(key)) {
            missing(key, "a section with keys");
        }
        return optionalSection(key);
    }

    private Fields inner(Node.Mapping section, String sectionPath) {
        return inner.computeIfAbsent(section.at(), absent -> new Fields(section, sectionPath, findings));
    }

    /** Notes every key that no getter asked for, here and in the sections within. */
    void close() {
        for (Node.Entry entry : mapping.entries()) {
            if (!asked.contains(entry.key())) {
                findings.problem(
                        entry.at(),
                        "unknown key " + Spelling.show(entry.key()) + "; " + findings.instead(entry.key(), asked));
            }
        }
        inner.values().forEach(Fields::close);
    }
}
