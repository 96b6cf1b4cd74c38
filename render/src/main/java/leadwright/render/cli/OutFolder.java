package leadwright.render.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import leadwright.render.export.SafeWriter;

/** Where the documents go. */
final class OutFolder {

    private OutFolder() {}

    /**
     * Tries the folder that the person named, before long work begins.
     *
     * @throws BadInput when it has no name
     */
    static void check(Optional<Path> named) throws SafeWriter.CannotWriteException {
        if (named.isPresent()) {
            Inputs.named("--out", named.get());
            SafeWriter.tryOut(named.get());
        }
    }

    /** The folder that the person named, or one in the present folder. */
    static Path choose(Optional<Path> named, Path device, Map<String, byte[]> files) {
        return choose(named, device, "plan", files);
    }

    /** The folder that the person named, or one called after the input with {@code -} and what the files are. */
    static Path choose(Optional<Path> named, Path input, String what, Map<String, byte[]> files) {
        return choose(named, input, what, files, folder -> false);
    }

    /** As above, passing by folders that are taken. */
    static Path choose(
            Optional<Path> named, Path input, String what, Map<String, byte[]> files, Predicate<Path> taken) {
        return named.orElseGet(() -> beside(Path.of(""), input, what, files, taken));
    }

    /**
     * A folder called after the device file with {@code -plan}. It is taken only where nothing in it would be lost: where
     * a file of the same name holds something else, the next free number is added.
     */
    static Path beside(Path parent, Path device, Map<String, byte[]> files) {
        return beside(parent, device, "plan", files, folder -> false);
    }

    private static Path beside(Path parent, Path input, String what, Map<String, byte[]> files, Predicate<Path> taken) {
        String base = stem(input) + "-" + what;
        Path folder = parent.resolve(base);
        for (int number = 2; losesSomething(folder, files) || taken.test(folder); number++) {
            folder = parent.resolve(base + "-" + number);
        }
        return folder;
    }

    private static String stem(Path device) {
        String name = String.valueOf(device.getFileName());
        int dot = name.lastIndexOf('.');
        return dot > 0 ? name.substring(0, dot) : name;
    }

    private static boolean losesSomething(Path folder, Map<String, byte[]> files) {
        if (!Files.exists(folder)) {
            return false;
        }
        return !Files.isDirectory(folder)
                || files.entrySet().stream().anyMatch(file -> differs(folder.resolve(file.getKey()), file.getValue()));
    }

    private static boolean differs(Path existing, byte[] content) {
        if (!Files.exists(existing)) {
            return false;
        }
        try {
            return !Arrays.equals(Files.readAllBytes(existing), content);
        } catch (IOException e) {
            // What cannot be read is not ours to replace.
            return true;
        }
    }
}
