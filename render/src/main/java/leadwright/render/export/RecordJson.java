package leadwright.render.export;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Collection;
import java.util.Map;
import java.util.Optional;
import leadwright.catalog.device.Words;
import leadwright.catalog.kit.Accuracy;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.Method;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.readings.Nulls;
import leadwright.catalog.rules.Limit;
import leadwright.planner.judge.Judged;
import leadwright.planner.judge.PlannedReading;
import leadwright.planner.judge.PlannedTest;
import leadwright.planner.judge.TestRecord;
import leadwright.planner.judge.Uncertainty;

/** A record as {@code record/1}: keys and their order are the project's public face. The same record gives the same text. */
public final class RecordJson {

    private final JsonGenerator out;

    private RecordJson(JsonGenerator out) {
        this.out = out;
    }

    /** The whole file, ended by a line feed. */
    public static String of(TestRecord record) {
        return JsonText.of(out -> new RecordJson(out).record(record));
    }

    private void record(TestRecord record) throws IOException {
        PlannedTest plan = record.plan();
        out.writeStartObject();
        out.writeStringField("leadwright", "record/1");
        out.writeStringField("plan", plan.fingerprint());
        out.writeStringField("result", record.result().word());
        out.writeBooleanField("provisional", record.provisional());
        texts("because", record.because());
        out.writeStringField("date", record.date().toString());
        out.writeStringField("by", record.readings().by());
        out.writeStringField("occasion", plan.occasion());
        device(record);
        bench(record);
        out.writeObjectFieldStart("rules");
        out.writeStringField("id", plan.rules().id());
        out.writeStringField("name", plan.rules().name());
        out.writeStringField("edition", plan.rules().edition());
        out.writeEndObject();
        out.writeObjectFieldStart("decision");
        out.writeStringField("rule", record.rule().word());
        out.writeNumberField("coverage-factor", Uncertainty.COVERAGE);
        out.writeEndObject();
        out.writeObjectFieldStart("mains");
        text("nominal", record.mains().nominal().map(Quantity::text));
        text("measured", record.mains().measured().map(Quantity::text));
        text("corrected-by", record.mains().due() ? plan.rules().nominalMains() : Optional.empty());
        out.writeEndObject();
        nulls(record.readings().nulls());
        out.writeBooleanField("partial", plan.partial());
        out.writeBooleanField("training-copy", plan.training());
        text("previous", record.previous().map(Object::toString));
        out.writeArrayFieldStart("readings");
        for (Judged each : record.judged()) {
            reading(each);
        }
        out.writeEndArray();
        texts("notes", record.notes());
        texts(
                "not-tested",
                plan.shortfalls().stream()
                        .map(each -> each.about() + ": " + each.because())
                        .toList());
        out.writeArrayFieldStart("not-applicable");
        for (var each : plan.notApplicable()) {
            out.writeStartObject();
            out.writeStringField("test", each.test());
            out.writeStringField("because", each.because());
            out.writeStringField("clause", each.clause());
            out.writeEndObject();
        }
        out.writeEndArray();
        texts("unconfirmed-limits", record.unconfirmed().keySet());
        out.writeEndObject();
    }

    private void device(TestRecord record) throws IOException {
        out.writeObjectFieldStart("device");
        out.writeStringField("name", record.plan().device().name());
        text("serial", record.readings().device().serial());
        text("inventory", record.readings().device().inventory());
        texts("accessories", record.readings().device().accessories());
        out.writeEndObject();
    }

    private void bench(TestRecord record) throws IOException {
        PlannedTest.Bench bench = record.plan().bench();
        out.writeObjectFieldStart("tester");
        out.writeStringField("kit", bench.kit());
        out.writeStringField("name", bench.tester());
        text("which", record.readings().tester());
        text("calibrated-until", bench.calibratedUntil().map(Object::toString));
        out.writeObjectFieldStart("accuracy");
        for (Map.Entry<String, Accuracy> each : bench.accuracy().entrySet()) {
            out.writeObjectFieldStart(each.getKey());
            out.writeStringField("reading", each.getValue().reading().text());
            out.writeStringField("floor", each.getValue().floor().text());
            out.writeEndObject();
        }
        out.writeEndObject();
        out.writeEndObject();
    }

    private void nulls(Optional<Nulls> nulls) throws IOException {
        if (nulls.isEmpty()) {
            out.writeNullField("nulls");
            return;
        }
        out.writeObjectFieldStart("nulls");
        out.writeStringField("start", nulls.get().start().text());
        text("end", nulls.get().end().map(Quantity::text));
        out.writeBooleanField("taken-off-by-tester", nulls.get().takenOff());
        out.writeEndObject();
    }

    private void reading(Judged each) throws IOException {
        PlannedReading planned = each.planned();
        out.writeStartObject();
        out.writeStringField("id", planned.id());
        out.writeStringField("key", planned.key());
        out.writeStringField("quantity", planned.quantity().word());
        texts("of", planned.of());
        out.writeStringField("state", planned.state());
        text("source-polarity", planned.sourcePolarity());
        text("method", planned.method().map(Method::word));
        text("component", planned.component().map(Component::word));
        text("shown", each.taken().shown().map(shown -> shown.value().text()));
        text("not-taken", each.taken().notTaken());
        text("leads-taken-off", each.leadsOff().map(Quantity::text));
        out.writeBooleanField("at-nominal-mains", each.atNominal());
        text("counted", each.counted().map(Quantity::text));
        text("uncertainty", each.uncertainty().map(Quantity::text));
        limit(each.limit());
        text("guard-band", each.guardBand().map(Quantity::text));
        if (each.conforming().isPresent()) {
            out.writeNumberField(
                    "conforming", BigDecimal.valueOf(each.conforming().get()).setScale(2, RoundingMode.HALF_EVEN));
        } else {
            out.writeNullField("conforming");
        }
        out.writeStringField("verdict", each.verdict().word());
        out.writeStringField("because", each.because());
        texts("flags", each.flags());
        if (each.before().isPresent()) {
            out.writeObjectFieldStart("before");
            out.writeStringField("date", each.before().get().date().toString());
            out.writeStringField("counted", each.before().get().value().text());
            out.writeEndObject();
        } else {
            out.writeNullField("before");
        }
        text("remark", each.taken().remark());
        out.writeEndObject();
    }

    private void limit(Optional<Limit> limit) throws IOException {
        if (limit.isEmpty()) {
            out.writeNullField("limit");
            return;
        }
        out.writeObjectFieldStart("limit");
        out.writeStringField("id", limit.get().id());
        out.writeStringField(Words.of(limit.get().bound()), limit.get().value().text());
        out.writeStringField("clause", limit.get().clause());
        out.writeStringField("mark", limit.get().mark().name());
        out.writeBooleanField("confirmed", !limit.get().unconfirmed());
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
