package leadwright.render.cli;

import java.util.List;

/** What a person gave cannot be used; each line says what is wrong, where, and what would be right. */
final class BadInput extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final transient List<String> lines;

    BadInput(List<String> lines) {
        super(String.join("\n", lines));
        this.lines = List.copyOf(lines);
    }

    BadInput(String line) {
        this(List.of(line));
    }

    List<String> lines() {
        return lines;
    }
}
