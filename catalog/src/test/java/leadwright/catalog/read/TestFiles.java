package leadwright.catalog.read;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import leadwright.catalog.text.Outcome;

/** The files that tests read: the examples of the formats, the samples, the outlines and the default kit. */
final class TestFiles {

    private TestFiles() {}

    /** The example of a format: {@code device}, {@code kit} or {@code house}. */
    static String example(String kind) {
        try (InputStream in = TestFiles.class.getResourceAsStream("format-" + kind + ".yaml")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Every device, kit and house that the program ships, and the examples. */
    static List<Path> all() {
        return Stream.of(
                        "src/test/resources/leadwright/catalog/read",
                        "../samples",
                        "src/main/resources/leadwright/catalog/outlines",
                        "src/main/resources/leadwright/catalog")
                .flatMap(directory -> list(Path.of(directory)).stream())
                .filter(path -> path.toString().endsWith(".yaml"))
                .filter(path -> List.of("device", "kit", "house", "readings").contains(kind(text(path))))
                .toList();
    }

    private static List<Path> list(Path directory) {
        try (Stream<Path> files = Files.list(directory)) {
            return files.sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static String text(Path path) {
        try {
            return Files.readString(path);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The word before the slash of the file's {@code leadwright:} line; empty where there is none. */
    static String kind(String text) {
        return text.lines()
                .filter(line -> line.startsWith("leadwright: "))
                .map(line -> line.substring(12).split("/", 2)[0].trim())
                .findFirst()
                .orElse("");
    }

    static Outcome<?> read(String kind, String name, byte[] bytes) {
        return switch (kind) {
            case "device" -> DeviceReader.read(name, bytes);
            case "kit" -> KitReader.read(name, bytes);
            case "house" -> HouseReader.read(name, bytes);
            case "readings" -> ReadingsReader.read(name, bytes);
            default -> throw new IllegalArgumentException(kind);
        };
    }

    static Outcome<?> read(String kind, String text) {
        return read(kind, "t.yaml", text.getBytes(StandardCharsets.UTF_8));
    }
}
