package leadwright.catalog.text;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;

/** Reads one file of a known kind and version, as its first key names them. */
public final class Document {

    private static final String KEY = "leadwright";

    /** Far above any plan: one of 64 connections, each read on its own, takes half a million. */
    private static final int MOST_WRITTEN = 64 * 1024 * 1024;

    /** What the kinds of file are called in messages. */
    private static final Map<String, String> NAMES = Map.of(
            "device", "a device",
            "kit", "a kit",
            "house", "house rules",
            "readings", "readings",
            "plan", "a plan",
            "record", "a record",
            "system", "a system");

    private Document() {}

    /**
     * Reads a file.
     *
     * @param file name for messages
     * @param kind kind and version, for instance {@code device/1}
     * @param reader takes the top section and gives what builds the record; that is called only when no problem was noted
     */
    public static <T> Outcome<T> read(String file, byte[] bytes, String kind, Function<Fields, Supplier<T>> reader) {
        Findings findings = new Findings(file);
        return read(Tree.read(bytes, findings), kind, reader, findings);
    }

    /** Reads a file that this program wrote, which may be larger than what a person writes. */
    public static <T> Outcome<T> readWritten(
            String file, byte[] bytes, String kind, Function<Fields, Supplier<T>> reader) {
        Findings findings = new Findings(file);
        return read(Tree.read(bytes, MOST_WRITTEN, findings), kind, reader, findings);
    }

    /**
     * Reads a form of comma-separated values, see {@link CsvForm}.
     *
     * @param list key of the list that the rows below the header make
     * @param texts dotted keys of the first lines that list texts
     * @param ignored columns that say nothing here
     */
    public static <T> Outcome<T> readCsv(
            String file,
            byte[] bytes,
            String kind,
            String list,
            Set<String> texts,
            Set<String> ignored,
            Function<Fields, Supplier<T>> reader) {
        Findings findings = new Findings(file);
        Optional<Node> root = TextCheck.text(CsvForm.withoutMark(bytes), findings)
                .flatMap(text -> new CsvForm(list, texts, ignored, findings).tree(text));
        return read(root, kind, reader, findings);
    }

    private static <T> Outcome<T> read(
            Optional<Node> root, String kind, Function<Fields, Supplier<T>> reader, Findings findings) {
        if (root.isEmpty() || !isOf(kind, root.get(), findings)) {
            return findings.refused();
        }
        Fields top = new Fields((Node.Mapping) root.get(), "", findings);
        top.optionalText(KEY);
        Supplier<T> record = reader.apply(top);
        top.close();
        return findings.outcome(record);
    }

    private static boolean isOf(String kind, Node root, Findings findings) {
        String due = "'" + KEY + ": " + kind + "'";
        if (!(root instanceof Node.Mapping top)) {
            findings.problem(root.at(), "the file holds " + root.kind() + "; it begins with " + due);
            return false;
        }
        Optional<Node.Entry> entry = top.entry(KEY);
        if (entry.isEmpty()) {
            String first = top.entries().isEmpty() ? "" : top.entries().get(0).key();
            String hint = Spelling.nearest(first, List.of(KEY)).isPresent()
                    ? "; key " + Spelling.show(first) + ": did you mean '" + KEY + "'?"
                    : "";
            findings.problem(root.at(), "the kind of file is missing; the first line is " + due + hint);
            return false;
        }
        if (!(entry.get().value() instanceof Node.Scalar stated)) {
            findings.problem(entry.get().value().at(), "the first line is " + due);
            return false;
        }
        if (!stated.text().equals(kind)) {
            findings.problem(stated.at(), wrongKind(stated.text(), kind));
            return false;
        }
        if (!top.entries().get(0).key().equals(KEY)) {
            findings.problem(entry.get().at(), due + " is the first key of the file; move it up");
        }
        return true;
    }

    private static String wrongKind(String stated, String kind) {
        String wanted = kind.substring(0, kind.indexOf('/'));
        int slash = stated.indexOf('/');
        String given = slash < 0 ? stated : stated.substring(0, slash);
        String due = "write '" + KEY + ": " + kind + "'";
        if (given.equals(wanted)) {
            return "version " + Spelling.show(stated.substring(Math.max(slash, 0))) + " of " + name(wanted)
                    + " is not known to this program; it reads " + kind;
        }
        if (given.equals("system") && wanted.equals("device")) {
            return "this is a system (" + Spelling.show(stated)
                    + "); this version plans single devices: give each member as a device/1 file of its own";
        }
        if (NAMES.containsKey(given)) {
            return "this is " + name(given) + " (" + Spelling.show(stated) + ") where " + name(wanted) + " (" + kind
                    + ") is due";
        }
        return Spelling.show(stated) + " is no kind of file; " + due;
    }

    private static String name(String kind) {
        return NAMES.getOrDefault(kind, kind);
    }
}
