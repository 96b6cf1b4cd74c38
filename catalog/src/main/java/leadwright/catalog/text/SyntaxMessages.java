package leadwright.catalog.text;

import java.util.Optional;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;

/** Syntax errors in the words of the person who writes the file. */
final class SyntaxMessages {

    private SyntaxMessages() {}

    static String of(MarkedYamlEngineException error, String text, Place at) {
        String problem = error.getProblem();
        if (problem == null) {
            return "this cannot be read as YAML or JSON";
        }
        if (problem.contains("TAB") || characterAt(text, at) == '\t') {
            return "a tab stands here; indent with spaces";
        }
        return "this cannot be read as YAML or JSON: " + plainText(problem) + hint(problem) + opened(error);
    }

    static String plain(RuntimeException error) {
        return error.getMessage() == null ? error.getClass().getSimpleName() : plainText(error.getMessage());
    }

    private static String hint(String problem) {
        if (problem.contains("mapping values are not allowed")) {
            return "; put text that holds a colon in quotes, and check the indentation";
        }
        if (problem.contains("expected <block end>")) {
            return "; lines of one section begin in the same column";
        }
        if (problem.contains("could not find expected ':'")) {
            return "; a line is 'key: value' or '- item'";
        }
        if (problem.contains("expected ',' or")) {
            return "; a comma or the closing bracket is missing before this place";
        }
        if (problem.contains("cannot start any token")) {
            return "; put text that begins so in quotes";
        }
        return "";
    }

    /** Where the bracket or quote begins that is not closed; the problem itself may stand far below. */
    private static String opened(MarkedYamlEngineException error) {
        String context = error.getContext();
        Optional<Mark> mark = error.getContextMark();
        if (context == null || mark.isEmpty()) {
            return "";
        }
        String where = " opened in line " + (mark.get().getLine() + 1);
        if (context.contains("flow")) {
            return "; the bracket" + where;
        }
        return context.contains("quoted scalar") ? "; the quote" + where : "";
    }

    /** One line without control characters. */
    private static String plainText(String message) {
        String shown = Spelling.show(message.strip());
        return shown.substring(1, shown.length() - 1);
    }

    private static int characterAt(String text, Place at) {
        int start = 0;
        for (int line = 1; line < at.line(); line++) {
            start = text.indexOf('\n', start) + 1;
            if (start == 0) {
                return -1;
            }
        }
        int index = start;
        for (int column = 1; column < at.column() && index < text.length(); column++) {
            index += Character.charCount(text.codePointAt(index));
        }
        return index < text.length() ? text.codePointAt(index) : -1;
    }
}
