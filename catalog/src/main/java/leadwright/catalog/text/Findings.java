package leadwright.catalog.text;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;

/** Collects, while one file is read, its problems and the values filled in for what it leaves out. */
public final class Findings {

    /** Enough for every slip of a person; a file with more of them than that gets no further hints. */
    private static final int MOST_COMPARISONS = 2_000_000;

    private final String file;
    private final Set<Problem> problems = new LinkedHashSet<>();
    private final List<String> assumed = new ArrayList<>();
    private long comparisonsLeft = MOST_COMPARISONS;

    /** @param file name of the file as messages show it */
    Findings(String file) {
        this.file = file;
    }

    public void problem(Place at, String message) {
        problems.add(new Problem(file, at.line(), at.column(), message));
    }

    /** The known word nearest to the one written, as {@link Spelling#nearest}, while the file's hints cost little. */
    public Optional<String> nearest(String word, Collection<String> known) {
        comparisonsLeft -= known.size();
        return comparisonsLeft < 0 ? Optional.empty() : Spelling.nearest(word, known);
    }

    /** What to say after a word that is not known: the nearest one, or those that are. */
    public String instead(String word, Collection<String> known) {
        Optional<String> nearest = nearest(word, known);
        return comparisonsLeft < 0 ? "further hints are left out" : Spelling.instead(nearest, known);
    }

    /** Notes a value that was filled in, or a statement that is not used: documents state it. */
    public void assume(String statement) {
        assumed.add(statement);
    }

    public boolean clean() {
        return problems.isEmpty();
    }

    /** All problems so far in the order of the file. */
    public List<Problem> problems() {
        return problems.stream()
                .sorted(Comparator.comparingInt(Problem::line)
                        .thenComparingInt(Problem::column)
                        .thenComparing(Problem::message))
                .toList();
    }

    /** The record if nothing is wrong; it is built only then, so that placeholders never leave a reader. */
    <T> Outcome<T> outcome(Supplier<T> record) {
        return clean() ? new Outcome.Read<>(record.get(), assumed) : new Outcome.Refused<>(problems());
    }

    /** The outcome of a file that left nothing to read. */
    <T> Outcome<T> refused() {
        return new Outcome.Refused<>(problems());
    }
}
