package leadwright.render.export;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;

/** How every JSON file of the project is set: two spaces, a space after the colon, line feeds, one at the end. */
final class JsonText {

    /** What is written. */
    interface Content {
        void write(JsonGenerator out) throws IOException;
    }

    private JsonText() {}

    static String of(Content content) {
        StringWriter text = new StringWriter();
        Separators spaced = Separators.createDefaultInstance().withObjectFieldValueSpacing(Separators.Spacing.AFTER);
        try (JsonGenerator out = new JsonFactory().createGenerator(text)) {
            out.setPrettyPrinter(new DefaultPrettyPrinter(spaced).withObjectIndenter(new DefaultIndenter("  ", "\n")));
            content.write(out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.append('\n').toString();
    }
}
