package leadwright.catalog.read;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;

/** The shipped JSON Schemas, with a general validator as judge. */
final class Schemas {

    private static final SchemaRegistry REGISTRY =
            SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);
    private static final Map<String, Schema> BY_KIND = Map.of(
            "device", load("device"),
            "kit", load("kit"),
            "house", load("house"),
            "system", load("system"),
            "readings", load("readings"));

    private Schemas() {}

    static String text(String kind) {
        try (InputStream in =
                DeviceReader.class.getResourceAsStream("/leadwright/catalog/schema/" + kind + ".schema.json")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Schema load(String kind) {
        return REGISTRY.getSchema(text(kind), InputFormat.JSON);
    }

    /** What the schema has against the file; empty where it is valid. */
    static List<String> errors(String kind, String json) {
        return BY_KIND.get(kind).validate(json, InputFormat.JSON).stream()
                .map(error -> error.getInstanceLocation() + ": " + error.getMessage())
                .toList();
    }
}
