package leadwright.catalog.text;

/**
 * What is wrong at one place of a file, and what would be right.
 *
 * @param file the name as the person gave it
 * @param line from 1
 * @param column from 1, in characters
 */
public record Problem(String file, int line, int column, String message) {

    /** One line for a terminal: {@code file:line:column: message}. */
    public String text() {
        return file + ":" + line + ":" + column + ": " + message;
    }
}
