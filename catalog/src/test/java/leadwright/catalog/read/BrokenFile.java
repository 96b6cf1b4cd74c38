package leadwright.catalog.read;

import java.util.ArrayList;
import java.util.List;

/**
 * A broken input: an example of the formats with one text replaced. Each {@code §} in the replacement marks a place where a
 * problem is due, and each message fragment belongs to one mark, in order.
 *
 * @param kind which example
 * @param from text of the example, its first occurrence counts
 * @param to what stands in its place, with marks
 */
record BrokenFile(String kind, String from, String to, List<Edit> more, List<String> fragments) {

    /** A further replacement. */
    record Edit(String from, String to) {}

    static final char MARK = '§';

    static BrokenFile of(String kind, String from, String to, String... fragments) {
        return new BrokenFile(kind, from, to, List.of(), List.of(fragments));
    }

    BrokenFile and(String alsoFrom, String alsoTo) {
        List<Edit> edits = new ArrayList<>(more);
        edits.add(new Edit(alsoFrom, alsoTo));
        return new BrokenFile(kind, from, to, edits, fragments);
    }

    private String marked() {
        String text = replaced(TestFiles.example(kind), new Edit(from, to));
        for (Edit edit : more) {
            text = replaced(text, edit);
        }
        return text;
    }

    private static String replaced(String text, Edit edit) {
        int at = text.indexOf(edit.from());
        if (at < 0) {
            throw new IllegalArgumentException("the example has no '" + edit.from() + "'");
        }
        return text.substring(0, at)
                + edit.to()
                + text.substring(at + edit.from().length());
    }

    String text() {
        return marked().replace(String.valueOf(MARK), "");
    }

    /** {@code line:column} of each mark. */
    List<String> places() {
        List<String> places = new ArrayList<>();
        int line = 1;
        int column = 1;
        for (char character : marked().toCharArray()) {
            if (character == MARK) {
                places.add(line + ":" + column);
            } else if (character == '\n') {
                line++;
                column = 1;
            } else if (!Character.isLowSurrogate(character)) {
                column++;
            }
        }
        return places;
    }

    @Override
    public String toString() {
        return kind + ": " + to.strip().lines().findFirst().orElse("(nothing)");
    }
}
