package leadwright.catalog.table;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.function.Function;
import java.util.function.Supplier;
import leadwright.catalog.text.Document;
import leadwright.catalog.text.Fields;

/** The catalog's own data files. A mistake in one is a mistake of the program, and stops it with the place named. */
final class TableFile {
    private TableFile() {}

    /**
     * Reads a table.
     *
     * @param name file name beside the other tables, such as {@code connectors.yaml}
     * @param kind what the file must declare itself to be, such as {@code connectors/1}
     * @param reader takes the top section and gives what builds the table
     * @throws IllegalStateException with every problem of the file
     */
    static <T> T read(String name, String kind, Function<Fields, Supplier<T>> reader) {
        try (InputStream in = TableFile.class.getResourceAsStream("/leadwright/catalog/" + name)) {
            if (in == null) {
                throw new IllegalStateException("the catalog has no " + name);
            }
            return Document.read(name, in.readAllBytes(), kind, reader).orThrow();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
