package leadwright.catalog.text;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** What reading a file came to: the record, or every problem of the file. */
public sealed interface Outcome<T> {

    /**
     * The file was read.
     *
     * @param assumed values that the file leaves out and the program filled in, a line each, for documents to state
     */
    record Read<T>(T record, List<String> assumed) implements Outcome<T> {
        public Read {
            assumed = List.copyOf(assumed);
        }
    }

    /**
     * The file was not read.
     *
     * @param problems at least one, in the order of the file
     */
    record Refused<T>(List<Problem> problems) implements Outcome<T> {
        public Refused {
            problems = List.copyOf(problems);
        }
    }

    /** The record, where the file was read. */
    default Optional<T> found() {
        return this instanceof Read<T> read ? Optional.of(read.record()) : Optional.empty();
    }

    /** The problems; empty where the file was read. */
    default List<Problem> problems() {
        return this instanceof Refused<T> refused ? refused.problems() : List.of();
    }

    /**
     * For files that the program ships.
     *
     * @throws IllegalStateException with all problems when the file was not read
     */
    default T orThrow() {
        return found().orElseThrow(() ->
                new IllegalStateException(problems().stream().map(Problem::text).collect(Collectors.joining("\n"))));
    }
}
