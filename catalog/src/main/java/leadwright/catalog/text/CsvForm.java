package leadwright.catalog.text;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * A form written as comma-separated values (RFC 4180; semicolons where the first line has one instead): first lines of a
 * key and its value, {@code date,2027-01-10}, a key within a section with a point, {@code nulls.start,62 mohm}; then a
 * header line and a row for each section of one list. It becomes the tree that the same form in YAML would be, every cell
 * with its place. An empty cell says nothing.
 */
public final class CsvForm {

    private final String list;
    private final Set<String> texts;
    private final Set<String> ignored;
    private final Findings findings;

    /** A cell with its place. */
    private record Cell(String text, Place at) {}

    /**
     * @param list key of the list that the rows below the header make
     * @param texts dotted keys of the first lines that list texts: every further cell is one
     * @param ignored columns that say nothing here
     */
    CsvForm(String list, Set<String> texts, Set<String> ignored, Findings findings) {
        this.list = list;
        this.texts = texts;
        this.ignored = ignored;
        this.findings = findings;
    }

    /** Whether a file is such a form: its first line begins with the key of every file and a comma or semicolon. */
    public static boolean isCsv(byte[] bytes) {
        String head = new String(bytes, 0, Math.min(bytes.length, 64), java.nio.charset.StandardCharsets.UTF_8);
        String plain = head.startsWith("\ufeff") ? head.substring(1) : head;
        return plain.matches("(?s)\"?leadwright\"?\\s*[,;].*");
    }

    /** Spreadsheets save a byte-order mark before such a file; it says nothing. */
    static byte[] withoutMark(byte[] bytes) {
        boolean mark =
                bytes.length > 2 && (bytes[0] & 0xff) == 0xef && (bytes[1] & 0xff) == 0xbb && (bytes[2] & 0xff) == 0xbf;
        return mark ? java.util.Arrays.copyOfRange(bytes, 3, bytes.length) : bytes;
    }

    /** The tree, or empty and a problem. */
    Optional<Node> tree(String text) {
        String firstLine = text.lines().findFirst().orElse("");
        List<List<Cell>> rows = rows(text, firstLine.matches("\"?leadwright\"?\\s*;.*") ? ';' : ',');
        Map<String, Node> top = new LinkedHashMap<>();
        Map<String, Place> places = new LinkedHashMap<>();
        Map<String, List<Node.Entry>> sections = new LinkedHashMap<>();
        int next = 0;
        while (next < rows.size() && !rows.get(next).get(0).text().equals("id")) {
            headLine(rows.get(next++), top, places, sections);
        }
        if (next == rows.size()) {
            findings.problem(Place.START, "there is no header line; one that begins with 'id' stands above the rows");
            return Optional.empty();
        }
        places.put(list, rows.get(next).get(0).at());
        top.put(
                list,
                new Node.Sequence(
                        rows.get(next).get(0).at(), table(rows.get(next), rows.subList(next + 1, rows.size()))));
        List<Node.Entry> entries = new ArrayList<>();
        places.forEach((key, at) -> entries.add(new Node.Entry(
                key, at, top.containsKey(key) ? top.get(key) : new Node.Mapping(at, sections.get(key)))));
        return Optional.of(new Node.Mapping(Place.START, entries));
    }

    private void headLine(
            List<Cell> row, Map<String, Node> top, Map<String, Place> places, Map<String, List<Node.Entry>> sections) {
        Cell key = row.get(0);
        List<Cell> values = row.subList(1, row.size()).stream()
                .filter(cell -> !cell.text().isEmpty())
                .toList();
        if (values.isEmpty()) {
            return;
        }
        if (values.size() > 1 && !texts.contains(key.text())) {
            findings.problem(
                    values.get(1).at(), Spelling.show(key.text()) + " has one value; a second one stands here");
            return;
        }
        Node value = texts.contains(key.text())
                ? new Node.Sequence(
                        values.get(0).at(), values.stream().map(CsvForm::scalar).toList())
                : scalar(values.get(0));
        int point = key.text().indexOf('.');
        String first = point < 0 ? key.text() : key.text().substring(0, point);
        if (point < 0) {
            if (places.putIfAbsent(first, key.at()) != null) {
                twice(key);
            } else {
                top.put(first, value);
            }
            return;
        }
        if (top.containsKey(first)) {
            twice(key);
            return;
        }
        places.putIfAbsent(first, key.at());
        List<Node.Entry> inner = sections.computeIfAbsent(first, absent -> new ArrayList<>());
        String within = key.text().substring(point + 1);
        if (inner.stream().anyMatch(entry -> entry.key().equals(within))) {
            twice(key);
        } else {
            inner.add(new Node.Entry(within, key.at(), value));
        }
    }

    private void twice(Cell key) {
        findings.problem(key.at(), "key " + Spelling.show(key.text()) + " stands twice; keep one");
    }

    private List<Node> table(List<Cell> header, List<List<Cell>> rows) {
        Set<String> seen = new TreeSet<>();
        for (Cell column : header) {
            if (!column.text().isEmpty() && !seen.add(column.text())) {
                findings.problem(column.at(), "column " + Spelling.show(column.text()) + " stands twice; keep one");
            }
        }
        List<Node> sections = new ArrayList<>();
        for (List<Cell> row : rows) {
            List<Node.Entry> entries = new ArrayList<>();
            for (int i = 0; i < row.size(); i++) {
                Cell cell = row.get(i);
                if (cell.text().isEmpty()) {
                    continue;
                }
                if (i >= header.size() || header.get(i).text().isEmpty()) {
                    findings.problem(
                            cell.at(), "the header names no column for this cell; a comma in a text goes in quotes");
                } else if (!ignored.contains(header.get(i).text())) {
                    entries.add(new Node.Entry(header.get(i).text(), cell.at(), scalar(cell)));
                }
            }
            sections.add(new Node.Mapping(row.get(0).at(), distinct(entries)));
        }
        return sections;
    }

    private static List<Node.Entry> distinct(List<Node.Entry> entries) {
        Map<String, Node.Entry> byKey = new LinkedHashMap<>();
        entries.forEach(entry -> byKey.putIfAbsent(entry.key(), entry));
        return List.copyOf(byKey.values());
    }

    /** A cell is text, yes and no apart: a spreadsheet knows no other types that matter here. */
    private static Node scalar(Cell cell) {
        return new Node.Scalar(cell.at(), cell.text(), Node.Type.TEXT);
    }

    /** All lines that say something, each with at least one cell; blanks around a cell that is not quoted are dropped. */
    private List<List<Cell>> rows(String text, char between) {
        List<List<Cell>> rows = new ArrayList<>();
        List<Cell> row = new ArrayList<>();
        int line = 1;
        int column = 1;
        int i = 0;
        while (i <= text.length()) {
            Place at = new Place(line, column);
            StringBuilder cell = new StringBuilder();
            boolean quoted = i < text.length() && text.charAt(i) == '"';
            if (quoted) {
                i++;
                column++;
                boolean open = true;
                while (open && i < text.length()) {
                    char c = text.charAt(i++);
                    column += Character.isLowSurrogate(c) ? 0 : 1;
                    if (c == '\n') {
                        line++;
                        column = 1;
                    }
                    if (c == '"' && i < text.length() && text.charAt(i) == '"') {
                        cell.append('"');
                        i++;
                        column++;
                    } else if (c == '"') {
                        open = false;
                    } else {
                        cell.append(c);
                    }
                }
                if (open) {
                    findings.problem(at, "this quoted cell has no end; close it with a quote");
                }
            }
            StringBuilder rest = new StringBuilder();
            while (i < text.length() && text.charAt(i) != between && text.charAt(i) != '\n') {
                char c = text.charAt(i++);
                column += Character.isLowSurrogate(c) ? 0 : 1;
                rest.append(c);
            }
            if (quoted && !rest.toString().isBlank()) {
                findings.problem(at, "text follows the closing quote of this cell; write a quote within a cell twice");
            }
            row.add(new Cell(quoted ? cell.toString() : rest.toString().strip(), at));
            if (i >= text.length() || text.charAt(i) == '\n') {
                if (row.stream().anyMatch(each -> !each.text().isEmpty())) {
                    rows.add(row);
                }
                row = new ArrayList<>();
                line++;
                column = 1;
            } else {
                column++;
            }
            i++;
        }
        return rows;
    }
}
