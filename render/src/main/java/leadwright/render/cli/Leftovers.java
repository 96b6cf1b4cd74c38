package leadwright.render.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Collection;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import leadwright.planner.Plan;

/** Documents in a folder that an earlier run wrote and the present one does not write anew. */
final class Leftovers {

    private static final Pattern DRAWING = Pattern.compile("H\\d+(-\\d+)?\\.(svg|png)");
    /** The table of readings, which a person may have filled in. */
    static final String READINGS = "readings.csv";

    private static final Pattern WRITTEN = Pattern.compile(DRAWING
            + "|(bench-sheet|training)\\.(html|pdf)|standing\\.(html|pdf|docx)|plan\\.json|readings\\.csv|R\\d+\\.cir");

    private Leftovers() {}

    /** Names of files of the kinds that a plan is written as, without those in {@code written}. */
    static SortedSet<String> in(Path folder, Collection<String> written) {
        if (!Files.isDirectory(folder)) {
            return new TreeSet<>();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS))
                    .map(file -> file.getFileName().toString())
                    .filter(name -> WRITTEN.matcher(name).matches() && !written.contains(name))
                    .collect(Collectors.toCollection(TreeSet::new));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * The same without what belongs to this plan: a run that writes fewer kinds of documents leaves the others of the
     * same plan as they are. Only the plan file that lies with them can say whose they are; drawings of hookups that
     * the plan lacks are never its own.
     */
    static SortedSet<String> of(Path folder, Collection<String> written, Plan plan) {
        SortedSet<String> left = in(folder, written);
        if (says(folder.resolve("plan.json"), plan.fingerprint())) {
            left.removeIf(name -> !DRAWING.matcher(name).matches()
                    || plan.hookups().stream().anyMatch(hookup -> name.matches(hookup.id() + "[-.].*")));
        }
        return left;
    }

    /** Whether a table of readings is other than the program writes it: its last two columns empty. */
    static boolean holdReadings(Path table) {
        if (!Files.exists(table)) {
            return false;
        }
        try (Stream<String> lines = Files.lines(table, StandardCharsets.UTF_8)) {
            return !lines.allMatch(line -> line.endsWith(",value,remark") || line.endsWith(",,"));
        } catch (IOException | UncheckedIOException e) {
            // What cannot be read is not ours to replace.
            return true;
        }
    }

    private static boolean says(Path file, String fingerprint) {
        try {
            return Files.isRegularFile(file)
                    && Files.readString(file, StandardCharsets.UTF_8).contains('"' + fingerprint + '"');
        } catch (IOException e) {
            // What cannot be read says nothing for the files beside it.
            return false;
        }
    }
}
