package leadwright.catalog.read;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantities;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.quantity.QuantityException;
import leadwright.catalog.readings.Nulls;
import leadwright.catalog.readings.Readings;
import leadwright.catalog.readings.ReadingsTable;
import leadwright.catalog.readings.Shown;
import leadwright.catalog.readings.Taken;
import leadwright.catalog.text.CsvForm;
import leadwright.catalog.text.Document;
import leadwright.catalog.text.Fields;
import leadwright.catalog.text.Located;
import leadwright.catalog.text.Node;
import leadwright.catalog.text.Outcome;
import leadwright.catalog.text.Spelling;

/** Reads {@code readings/1} files: YAML, JSON, or CSV with a header. Whether they fit a plan is not looked at here. */
public final class ReadingsReader {

    private static final String KIND = "readings/1";
    private static final Pattern FINGERPRINT = Pattern.compile("[0-9a-f]{8,64}");
    private static final List<String> OCCASIONS =
            List.of("acceptance", "after-repair", "recurrent", "after-loan", "incident");
    private static final List<Dimension> READ = List.of(Dimension.CURRENT, Dimension.RESISTANCE, Dimension.VOLTAGE);

    private final String file;
    private final Fields top;

    private ReadingsReader(String file, Fields top) {
        this.file = file;
        this.top = top;
    }

    /**
     * Reads what was measured.
     *
     * @param file name of the file, for messages
     * @param bytes its content in UTF-8
     */
    public static Outcome<Readings> read(String file, byte[] bytes) {
        return CsvForm.isCsv(bytes)
                ? Document.readCsv(
                        file,
                        bytes,
                        KIND,
                        "readings",
                        Set.of("device.accessories"),
                        Set.copyOf(ReadingsTable.OF_THE_PLAN),
                        top -> new ReadingsReader(file, top).readings())
                : Document.read(file, bytes, KIND, top -> new ReadingsReader(file, top).readings());
    }

    private Supplier<Readings> readings() {
        Located<String> plan = fingerprint();
        Optional<Located<String>> occasion =
                top.optionalOneOf("occasion", OCCASIONS).map(word -> new Located<>(word, top.at("occasion")));
        Readings.Unit device = top.section("device")
                .map(this::unit)
                .orElse(new Readings.Unit(Optional.empty(), Optional.empty(), List.of()));
        String by = top.text("by");
        Optional<Located<LocalDate>> date = top.optionalDate("date").map(day -> new Located<>(day, top.at("date")));
        Optional<String> tester = top.optionalText("tester");
        Optional<Located<Quantity>> mains = top.optionalPositive("mains-voltage", Dimension.VOLTAGE)
                .map(volts -> new Located<>(volts, top.at("mains-voltage")));
        Optional<Nulls> nulls = top.optionalSection("nulls").map(this::nulls);
        List<Taken> taken = new ArrayList<>();
        Ids ids = new Ids("reading", top.findings());
        if (!top.has("readings") || top.items("readings").isEmpty()) {
            top.findings()
                    .problem(top.at("readings"), "'readings' lists none; a line for each reading of the plan is due");
        }
        for (Fields row : top.rows("readings")) {
            taken.add(taken(row, ids));
        }
        return () -> new Readings(file, top.at(), plan, occasion, device, by, date, tester, mains, nulls, taken);
    }

    private Located<String> fingerprint() {
        String plan = top.text("plan");
        if (!plan.isEmpty() && !FINGERPRINT.matcher(plan).matches()) {
            top.findings()
                    .problem(
                            top.at("plan"),
                            Spelling.show(plan)
                                    + " is no fingerprint of a plan: its first eight digits or more, 0-9 and a-f, as the"
                                    + " sheet and the plan print them");
        }
        return new Located<>(plan, top.at("plan"));
    }

    private Readings.Unit unit(Fields section) {
        Optional<String> serial = section.optionalText("serial");
        Optional<String> inventory = section.optionalText("inventory");
        if (!section.has("serial") && !section.has("inventory")) {
            section.findings().problem(section.at(), "'device' names no single device; 'serial' or 'inventory' is due");
        }
        return new Readings.Unit(serial, inventory, section.texts("accessories"));
    }

    private Nulls nulls(Fields section) {
        Quantity start = section.quantity("start", Dimension.RESISTANCE);
        Optional<Quantity> end = section.optionalQuantity("end", Dimension.RESISTANCE);
        boolean takenOff = section.assumed(
                "taken-off",
                section.optionalYesNo("taken-off"),
                true,
                "taken as yes: the tester takes the leads off by itself, and nothing more is taken off");
        return new Nulls(start, end, takenOff);
    }

    private static Taken taken(Fields row, Ids ids) {
        String id = ids.claim(row);
        Optional<Located<Shown>> shown = row.node("value").flatMap(node -> shown(row, node));
        Optional<String> notTaken = row.optionalText("not-taken");
        if (!row.has("value") && !row.has("not-taken")) {
            row.findings()
                    .problem(
                            row.at(),
                            "reading '" + id + "' has no value; write it, or say under 'not-taken' why there is none");
        }
        if (row.has("value") && row.has("not-taken")) {
            row.findings().problem(row.at("not-taken"), "a reading with a value was taken; keep one of the two");
        }
        return new Taken(new Located<>(id, row.at("id")), shown, notTaken, remark(row));
    }

    /** A remark may be empty: forms are filled in. */
    private static Optional<String> remark(Fields row) {
        Optional<Node> node = row.node("remark");
        boolean empty = node.isPresent()
                && node.get() instanceof Node.Scalar scalar
                && scalar.text().isBlank();
        return empty ? Optional.empty() : row.optionalText("remark");
    }

    private static Optional<Located<Shown>> shown(Fields row, Node node) {
        if (!(node instanceof Node.Scalar scalar)
                || scalar.type() == Node.Type.NOTHING
                || scalar.text().isBlank()) {
            row.findings().problem(node.at(), "'value' is empty; write it, or say under 'not-taken' why there is none");
            return Optional.empty();
        }
        String text = scalar.text().strip();
        if (text.equals("open")) {
            return Optional.of(new Located<>(new Shown.NoPath(), node.at()));
        }
        boolean above = text.startsWith(">");
        boolean below = text.startsWith("<");
        try {
            Quantity amount =
                    Quantities.parse(above || below ? text.substring(1).strip() : text, READ);
            boolean negative = amount.amount() < 0;
            if (negative && (above || below || amount.dimension() != Dimension.RESISTANCE)) {
                row.findings()
                        .problem(
                                node.at(),
                                "'value' is " + Spelling.show(text)
                                        + ", less than nothing: no current or voltage is read so; read again");
                return Optional.empty();
            }
            Shown shown = above
                    ? new Shown.Above(amount, text)
                    : below ? new Shown.Below(amount, text) : new Shown.Value(amount, text);
            return Optional.of(new Located<>(shown, node.at()));
        } catch (QuantityException e) {
            row.findings().problem(node.at(), "'value': " + e.getMessage());
            return Optional.empty();
        }
    }
}
