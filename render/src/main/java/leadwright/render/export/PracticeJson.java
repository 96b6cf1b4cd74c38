package leadwright.render.export;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import leadwright.planner.Plan;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;
import leadwright.planner.rehearse.Display;
import leadwright.planner.rehearse.Practice;

/** A practice sheet as {@code practice/1}. What is right stands in it only where an answer was given. */
public final class PracticeJson {

    private final JsonGenerator out;
    private final Plan plan;
    private final Practice practice;

    private PracticeJson(JsonGenerator out, Plan plan, Practice practice) {
        this.out = out;
        this.plan = plan;
        this.practice = practice;
    }

    /**
     * The whole file, ended by a line feed.
     *
     * @param sentences the choices as people read them, in the order of their letters
     * @param given place of the choice that was answered; empty for a sheet without its answer
     */
    public static String of(Plan plan, Practice practice, List<String> sentences, Optional<Integer> given) {
        return JsonText.of(out -> new PracticeJson(out, plan, practice).write(sentences, given));
    }

    private void write(List<String> sentences, Optional<Integer> given) throws IOException {
        out.writeStartObject();
        out.writeStringField("leadwright", "practice/1");
        out.writeStringField("notice", "PRACTICE: invented readings, not a record");
        out.writeStringField("fingerprint", plan.fingerprint());
        out.writeNumberField("seed", practice.seed());
        out.writeStringField("device", plan.device().name());
        out.writeStringField("kit", plan.kit().name());
        out.writeStringField("rules", plan.rules().id());
        out.writeArrayFieldStart("readings");
        for (Practice.Row row : practice.rows()) {
            reading(row);
        }
        out.writeEndArray();
        out.writeArrayFieldStart("choices");
        for (int i = 0; i < sentences.size(); i++) {
            out.writeStartObject();
            out.writeStringField("letter", Practice.letter(i));
            out.writeStringField("text", sentences.get(i));
            out.writeEndObject();
        }
        out.writeEndArray();
        if (given.isPresent()) {
            answer(given.get());
        }
        out.writeEndObject();
    }

    private void reading(Practice.Row row) throws IOException {
        Reading reading = plan.readings().stream()
                .filter(each -> each.id().equals(row.reading()))
                .findFirst()
                .orElseThrow();
        Obligation what = reading.obligation();
        out.writeStartObject();
        out.writeStringField("id", row.reading());
        out.writeStringField("key", what.key());
        text("hookup", reading.hookup());
        out.writeStringField("state", what.state().word());
        out.writeStringField("last-year", words(row.before()));
        out.writeStringField("now", words(row.now()));
        text(
                "limit",
                what.limit()
                        .map(limit -> limit.bound().word() + " " + limit.value().text()));
        out.writeEndObject();
    }

    private void answer(int given) throws IOException {
        out.writeObjectFieldStart("answer");
        out.writeStringField("given", Practice.letter(given));
        out.writeStringField("right", practice.right());
        out.writeBooleanField("correct", given == practice.answer());
        out.writeArrayFieldStart("why-not");
        for (int i = 0; i < practice.choices().size(); i++) {
            if (i != practice.answer()) {
                Practice.Against first = practice.choices().get(i).against().get(0);
                out.writeStartObject();
                out.writeStringField("letter", Practice.letter(i));
                out.writeStringField("reading", first.reading());
                out.writeStringField("would-show", words(first.would()));
                out.writeEndObject();
            }
        }
        out.writeEndArray();
        out.writeEndObject();
    }

    private static String words(Display display) {
        return display instanceof Display.Amount amount ? amount.quantity().text() : "open";
    }

    private void text(String key, Optional<String> value) throws IOException {
        if (value.isPresent()) {
            out.writeStringField(key, value.get());
        } else {
            out.writeNullField(key);
        }
    }
}
