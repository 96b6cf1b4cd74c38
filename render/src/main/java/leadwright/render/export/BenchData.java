package leadwright.render.export;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leadwright.catalog.kit.Accuracy;
import leadwright.catalog.kit.PartSource;
import leadwright.catalog.kit.SourceReading;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.planner.judge.Expected;
import leadwright.planner.judge.PlannedReading;
import leadwright.planner.judge.PlannedTest;

/**
 * What a bench sheet on a screen must know of its plan to set a typed value beside its limit: exactly what the judge reads of
 * the plan. Amounts are whole numbers of their dimension's base unit, written as texts since a script's numbers are not
 * exact that far.
 */
public final class BenchData {

    private BenchData() {}

    /** JSON that may stand inside a script element: it holds no character that ends one, begins a comment or ends a line. */
    public static String of(PlannedTest plan) {
        String json = JsonText.of(out -> {
            out.writeStartObject();
            out.writeStringField("fingerprint", plan.fingerprint());
            out.writeStringField("occasion", plan.occasion());
            out.writeStringField("device", plan.device().name());
            out.writeStringField("decision", plan.house().decision().word());
            out.writeBooleanField("corrects", plan.rules().nominalMains().isPresent());
            bench(out, plan.bench());
            units(out);
            out.writeArrayFieldStart("readings");
            for (PlannedReading each : plan.readings()) {
                reading(out, each);
            }
            out.writeEndArray();
            out.writeEndObject();
        });
        return escaped(json);
    }

    /** These characters stand only within texts of a JSON file, where they may be written by their numbers. */
    private static String escaped(String json) {
        return json.replace("<", "\\u003c")
                .replace(">", "\\u003e")
                .replace("&", "\\u0026")
                .replace("\u2028", "\\u2028")
                .replace("\u2029", "\\u2029");
    }

    private static void bench(JsonGenerator out, PlannedTest.Bench bench) throws IOException {
        optional(out, "calibrated-until", bench.calibratedUntil().map(Object::toString));
        out.writeBooleanField("four-wire", bench.fourWire());
        optional(out, "null-up-to", bench.nullUpTo().map(BenchData::amount));
        out.writeBooleanField(
                "raw-source",
                bench.source()
                        .map(PartSource::reading)
                        .filter(SourceReading.RAW::equals)
                        .isPresent());
        out.writeArrayFieldStart("nominal");
        for (Quantity each : bench.nominal()) {
            out.writeString(amount(each));
        }
        out.writeEndArray();
        out.writeObjectFieldStart("accuracy");
        for (Map.Entry<String, Accuracy> each : bench.accuracy().entrySet()) {
            out.writeObjectFieldStart(each.getKey());
            out.writeNumberField("share", each.getValue().reading().amount());
            out.writeStringField("floor", amount(each.getValue().floor()));
            out.writeStringField(
                    "dimension", each.getValue().floor().dimension().name());
            out.writeEndObject();
        }
        out.writeEndObject();
        out.writeObjectFieldStart("checks");
        for (Map.Entry<String, PlannedTest.Resistor> each : bench.checks().entrySet()) {
            out.writeObjectFieldStart(each.getKey());
            out.writeStringField("value", amount(each.getValue().value()));
            out.writeNumberField("tolerance", each.getValue().tolerance().amount());
            out.writeEndObject();
        }
        out.writeEndObject();
    }

    /** The units of what testers read, with their size in base units. */
    private static void units(JsonGenerator out) throws IOException {
        out.writeObjectFieldStart("units");
        for (Dimension dimension : List.of(Dimension.CURRENT, Dimension.RESISTANCE, Dimension.VOLTAGE)) {
            out.writeObjectFieldStart(dimension.name());
            for (Dimension.Unit unit : dimension.units()) {
                out.writeStringField(unit.symbol(), String.valueOf(unit.baseUnits()));
            }
            out.writeEndObject();
        }
        out.writeEndObject();
    }

    private static void reading(JsonGenerator out, PlannedReading reading) throws IOException {
        out.writeStartObject();
        out.writeStringField("id", reading.id());
        out.writeStringField("key", reading.key());
        out.writeStringField("quantity", reading.quantity().word());
        out.writeStringField("state", reading.state());
        optional(out, "dimension", reading.dimension().map(Dimension::name));
        optional(out, "function", reading.function());
        out.writeBooleanField("leakage", reading.isLeakage());
        out.writeBooleanField("through-leads", reading.isThroughLeads());
        out.writeBooleanField("from-source", reading.isFromSource());
        out.writeBooleanField("by-current", reading.component().isPresent());
        out.writeArrayFieldStart("of");
        for (String each : reading.of()) {
            out.writeString(each);
        }
        out.writeEndArray();
        if (reading.limit().isPresent()) {
            out.writeObjectFieldStart("limit");
            out.writeStringField("bound", reading.limit().get().bound().word());
            out.writeStringField("value", amount(reading.limit().get().value()));
            out.writeEndObject();
        } else {
            out.writeNullField("limit");
        }
        if (reading.expected().isPresent()) {
            out.writeObjectFieldStart("foreseen");
            out.writeBooleanField("assumed", reading.expected().get().assumed());
            span(out, "band", Optional.of(reading.expected().get().band()));
            span(out, "firm", reading.expected().get().firm());
            out.writeEndObject();
        } else {
            out.writeNullField("foreseen");
        }
        out.writeEndObject();
    }

    private static void span(JsonGenerator out, String name, Optional<Expected.Span> span) throws IOException {
        if (span.isEmpty()) {
            out.writeNullField(name);
            return;
        }
        out.writeObjectFieldStart(name);
        out.writeStringField("low", amount(span.get().low()));
        optional(out, "high", span.get().high().map(BenchData::amount));
        out.writeStringField("text", span.get().text());
        out.writeEndObject();
    }

    private static String amount(Quantity quantity) {
        return String.valueOf(quantity.amount());
    }

    private static void optional(JsonGenerator out, String key, Optional<String> value) throws IOException {
        if (value.isPresent()) {
            out.writeStringField(key, value.get());
        } else {
            out.writeNullField(key);
        }
    }
}
