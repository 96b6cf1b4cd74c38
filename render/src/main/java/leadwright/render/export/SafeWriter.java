package leadwright.render.export;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * Writes the files of one run, all or none. Everything is first written into a folder of its own beside the targets,
 * then moved into place one by one; each move replaces a whole file at once. When a move fails, those before it are
 * undone: what stood there before stands there again.
 *
 * <p>Should the machine stop in the middle of the moves, every file is still either the old one or the new one, never a
 * part; the folder {@code .leadwright-…} that is then left holds the old ones.
 */
public final class SafeWriter {

    /** The files could not be written; nothing was changed. The command line ends with exit code 4 on it. */
    public static final class CannotWriteException extends IOException {
        private static final long serialVersionUID = 1L;

        CannotWriteException(String message, Throwable cause) {
            super(message, cause);
        }
    }

    private SafeWriter() {}

    /**
     * Writes files into a folder, which is made if it is not there.
     *
     * @param folder where to
     * @param files the contents by name; a name may have folders in it, separated by {@code /}, but never leads out
     *     of the folder
     * @throws CannotWriteException when any of them cannot be written; then none is
     * @throws IllegalArgumentException when a name leads out of the folder
     */
    public static void write(Path folder, SortedMap<String, byte[]> files) throws CannotWriteException {
        write(folder, files, new TreeSet<>());
    }

    /**
     * As above, and takes files away together with the writing: all of it is done or nothing.
     *
     * @param gone names of files in the folder that are not to stand beside the new ones; none of {@code files}
     */
    public static void write(Path folder, SortedMap<String, byte[]> files, SortedSet<String> gone)
            throws CannotWriteException {
        for (String name : files.keySet()) {
            checkName(name);
        }
        gone.forEach(SafeWriter::checkName);
        Deque<Path> madeFolders = new ArrayDeque<>();
        List<Undo> done = new ArrayList<>();
        Path stage = folder;
        try {
            makeFolders(folder, madeFolders);
            stage = Files.createTempDirectory(folder, ".leadwright-");
            Path fresh = Files.createDirectory(stage.resolve("new"));
            Path old = Files.createDirectory(stage.resolve("old"));
            int number = 0;
            for (Map.Entry<String, byte[]> file : files.entrySet()) {
                refuseFolder(folder.resolve(file.getKey()));
                Files.write(fresh.resolve(Integer.toString(number++)), file.getValue());
            }
            number = 0;
            for (String name : files.keySet()) {
                Path target = folder.resolve(name);
                makeFolders(target.getParent(), madeFolders);
                Path kept = old.resolve(Integer.toString(number));
                boolean existed = keep(target, kept);
                replace(fresh.resolve(Integer.toString(number++)), target);
                done.add(new Undo(target, kept, existed));
            }
            for (String name : gone) {
                Path target = folder.resolve(name);
                refuseFolder(target);
                Path kept = old.resolve(Integer.toString(number++));
                if (keep(target, kept)) {
                    Files.delete(target);
                    done.add(new Undo(target, kept, true));
                }
            }
        } catch (IOException e) {
            if (undo(done)) {
                deleteStage(folder, stage);
            }
            for (Path made : madeFolders) {
                deleteQuietly(made);
            }
            throw new CannotWriteException("Nothing was written to " + folder + ": " + words(e), e);
        }
        deleteStage(folder, stage);
    }

    /**
     * Tries whether a folder can be written to, and leaves everything as it was: so that a run which takes long finds
     * out at its beginning.
     *
     * @throws CannotWriteException when it cannot
     */
    public static void tryOut(Path folder) throws CannotWriteException {
        Deque<Path> made = new ArrayDeque<>();
        try {
            makeFolders(folder, made);
            Files.delete(Files.createTempDirectory(folder, ".leadwright-"));
        } catch (IOException e) {
            throw new CannotWriteException("Nothing was written to " + folder + ": " + words(e), e);
        } finally {
            made.forEach(SafeWriter::deleteQuietly);
        }
    }

    /** How to take back one move. */
    private record Undo(Path target, Path kept, boolean existed) {}

    private static void checkName(String name) {
        try {
            Path path = Path.of(name);
            if (!name.isEmpty() && !path.isAbsolute() && path.normalize().equals(path) && !path.startsWith("..")) {
                return;
            }
        } catch (InvalidPathException e) {
            throw new IllegalArgumentException("Not the name of a file: " + name, e);
        }
        throw new IllegalArgumentException("Not the name of a file in the folder: " + name);
    }

    /** Makes a folder and those above it; {@code made} gets the new ones, innermost first. */
    private static void makeFolders(Path folder, Deque<Path> made) throws IOException {
        if (Files.isDirectory(folder)) {
            return;
        }
        Path above = folder.toAbsolutePath().getParent();
        if (above != null) {
            makeFolders(above, made);
        }
        Files.createDirectory(folder);
        made.push(folder);
    }

    private static void refuseFolder(Path target) throws IOException {
        if (Files.isDirectory(target, LinkOption.NOFOLLOW_LINKS)) {
            throw new FileAlreadyExistsException(target.toString(), null, "a folder stands in the place of this file");
        }
    }

    /** Keeps what stands at the target, if anything; a second name for the same file where the disk allows it. */
    private static boolean keep(Path target, Path kept) throws IOException {
        if (!Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
            return false;
        }
        try {
            Files.createLink(kept, target);
        } catch (IOException | UnsupportedOperationException noLinks) {
            Files.copy(target, kept, StandardCopyOption.COPY_ATTRIBUTES, LinkOption.NOFOLLOW_LINKS);
        }
        return true;
    }

    private static void replace(Path from, Path target) throws IOException {
        Files.move(from, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }

    /** Takes the moves back, last first; false when one could not be, so that what was kept must stay. */
    private static boolean undo(List<Undo> done) {
        boolean all = true;
        for (int i = done.size() - 1; i >= 0; i--) {
            Undo undo = done.get(i);
            try {
                if (undo.existed()) {
                    replace(undo.kept(), undo.target());
                } else {
                    Files.delete(undo.target());
                }
            } catch (IOException e) {
                all = false;
            }
        }
        return all;
    }

    private static void deleteStage(Path folder, Path stage) {
        if (stage.equals(folder)) {
            return;
        }
        for (String part : List.of("new", "old")) {
            try (var files = Files.list(stage.resolve(part))) {
                files.forEach(SafeWriter::deleteQuietly);
            } catch (IOException e) {
                // An empty or missing part has nothing to delete.
            }
            deleteQuietly(stage.resolve(part));
        }
        deleteQuietly(stage);
    }

    private static void deleteQuietly(Path path) {
        try {
            Files.deleteIfExists(path);
        } catch (IOException e) {
            // Left behind rather than failing a run whose files are all in place.
        }
    }

    /** Why a file could not be written, in plain words. */
    public static String words(IOException e) {
        if (!(e instanceof FileSystemException file) || file.getFile() == null) {
            return e.getMessage() == null ? "the disk refused it" : e.getMessage();
        }
        String name = file.getFile();
        if (e instanceof AccessDeniedException) {
            return "there is no right to write to " + name;
        }
        if (e instanceof NoSuchFileException) {
            return name + " cannot be made there";
        }
        if (e instanceof FileAlreadyExistsException && file.getReason() == null) {
            return name + " is a file, not a folder";
        }
        return name + ": " + (file.getReason() == null ? "the disk refused it" : file.getReason());
    }
}
