package leadwright.render.export;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.time.LocalDate;
import java.util.Collection;
import java.util.Optional;
import leadwright.planner.compare.Change;
import leadwright.planner.compare.Comparison;
import leadwright.planner.compare.Line;
import leadwright.planner.compare.Side;

/**
 * A comparison as {@code compare/1}: keys and their order are the project's public face. The same comparison gives the same
 * text.
 */
public final class CompareJson {

    private final JsonGenerator out;

    private CompareJson(JsonGenerator out) {
        this.out = out;
    }

    /** The whole file, ended by a line feed. */
    public static String of(Comparison comparison) {
        return JsonText.of(out -> new CompareJson(out).comparison(comparison));
    }

    private void comparison(Comparison comparison) throws IOException {
        out.writeStartObject();
        out.writeStringField("leadwright", "compare/1");
        side("a", comparison.a());
        side("b", comparison.b());
        out.writeBooleanField("same-at-the-bench", comparison.sameAtTheBench());
        out.writeArrayFieldStart("lines");
        for (Line line : comparison.lines()) {
            line(line);
        }
        out.writeEndArray();
        out.writeEndObject();
    }

    private void side(String key, Side side) throws IOException {
        out.writeObjectFieldStart(key);
        out.writeStringField("fingerprint", side.fingerprint());
        out.writeStringField("device", side.device().name());
        out.writeStringField("kit", side.bench().kit());
        out.writeStringField("tester", side.bench().tester());
        out.writeObjectFieldStart("rules");
        out.writeStringField("id", side.rules().id());
        out.writeStringField("name", side.rules().name());
        out.writeStringField("edition", side.rules().edition());
        out.writeEndObject();
        out.writeStringField("occasion", side.occasion());
        text("on", side.on().map(LocalDate::toString));
        out.writeBooleanField("partial", side.partial());
        out.writeBooleanField("training-copy", side.training());
        out.writeEndObject();
    }

    private void line(Line line) throws IOException {
        out.writeStartObject();
        out.writeStringField("concern", line.kind().concern().word());
        out.writeStringField("kind", line.kind().word());
        out.writeStringField("text", line.sentence());
        out.writeArrayFieldStart("changes");
        for (Change change : line.changes()) {
            change(change);
        }
        out.writeEndArray();
        out.writeEndObject();
    }

    private void change(Change change) throws IOException {
        out.writeStartObject();
        out.writeStringField("trend", change.trend().word());
        out.writeStringField("family", change.family());
        out.writeStringField("subject", change.subject());
        text("before", change.before());
        text("after", change.after());
        texts("in-a", change.inA());
        texts("in-b", change.inB());
        out.writeEndObject();
    }

    private void text(String key, Optional<String> value) throws IOException {
        if (value.isPresent()) {
            out.writeStringField(key, value.get());
        } else {
            out.writeNullField(key);
        }
    }

    private void texts(String key, Collection<String> values) throws IOException {
        out.writeArrayFieldStart(key);
        for (String value : values) {
            out.writeString(value);
        }
        out.writeEndArray();
    }
}
