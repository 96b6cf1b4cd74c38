package leadwright.render.export;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.quantity.Quantity;
import leadwright.planner.Foresight;
import leadwright.planner.foresee.EarthBudget;
import leadwright.planner.foresee.Foreseen;
import leadwright.planner.mistake.Finding;
import leadwright.planner.mistake.ProofStep;

/** The part of {@code plan/1} that says what is foreseen. */
final class ForesightJson {
    private final JsonGenerator out;

    ForesightJson(JsonGenerator out) {
        this.out = out;
    }

    /** A reading's {@code foreseen}. */
    void reading(Optional<Foreseen> foreseen) throws IOException {
        if (foreseen.isEmpty()) {
            out.writeNullField("foreseen");
            return;
        }
        Foreseen each = foreseen.get();
        out.writeObjectFieldStart("foreseen");
        quantity("value", each.value());
        quantity("low", Optional.of(each.low()));
        quantity("high", each.high());
        out.writeStringField("basis", each.basis().word());
        if (each.firm().isPresent()) {
            out.writeObjectFieldStart("firm");
            quantity("low", Optional.of(each.firm().get().low()));
            quantity("high", each.firm().get().high());
            out.writeEndObject();
        } else {
            out.writeNullField("firm");
        }
        out.writeStringField("because", each.why());
        out.writeEndObject();
    }

    void foresight(Foresight foresight) throws IOException {
        out.writeObjectFieldStart("foresight");
        out.writeNumberField("temperature", plain(foresight.situation().celsius(), 1));
        if (foresight.situation().volts().isPresent()) {
            out.writeNumberField("supply", plain(foresight.situation().volts().get(), 1));
        } else {
            out.writeNullField("supply");
        }
        out.writeArrayFieldStart("earth-paths");
        for (EarthBudget budget : foresight.budgets()) {
            budget(budget);
        }
        out.writeEndArray();
        out.writeArrayFieldStart("slips");
        for (Finding finding : foresight.watch().findings()) {
            finding(finding);
        }
        out.writeEndArray();
        out.writeArrayFieldStart("proof-steps");
        for (ProofStep proof : foresight.watch().proofs()) {
            out.writeStartObject();
            out.writeStringField("id", proof.id());
            text("hookup", proof.hookup());
            out.writeNumberField("seconds", proof.seconds());
            texts("shows", proof.exposes().stream().sorted().toList());
            out.writeStringField("text", proof.text());
            out.writeEndObject();
        }
        out.writeEndArray();
        texts("silent", foresight.watch().remaining());
        out.writeEndObject();
    }

    private void budget(EarthBudget budget) throws IOException {
        out.writeStartObject();
        out.writeStringField("reading", budget.reading());
        out.writeBooleanField("nulled", budget.nulled());
        out.writeBooleanField("beyond-null", budget.beyondNull());
        out.writeArrayFieldStart("path");
        for (EarthBudget.Entry entry : budget.entries()) {
            out.writeStartObject();
            out.writeStringField("what", entry.words());
            out.writeNumberField("milliohm", plain(entry.nominal() * 1000, 1));
            out.writeNumberField("at-least", plain(entry.low() * 1000, 1));
            out.writeNumberField("at-most", plain(entry.high() * 1000, 1));
            out.writeBooleanField("lead", entry.leads());
            out.writeStringField("basis", entry.basis().word());
            out.writeEndObject();
        }
        out.writeEndArray();
        out.writeEndObject();
    }

    private void finding(Finding finding) throws IOException {
        out.writeStartObject();
        out.writeStringField("id", finding.slip().id());
        out.writeStringField("kind", finding.slip().kind().word());
        text("hookup", finding.slip().hookup());
        texts("things", finding.slip().things());
        out.writeStringField("exposure", finding.exposure().word());
        text("reading", finding.by());
        quantity("planned", finding.planned());
        quantity("shown", finding.shown());
        out.writeEndObject();
    }

    /** So many decimals, the same on every machine. */
    private static BigDecimal plain(double value, int decimals) {
        return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
    }

    private void quantity(String key, Optional<Quantity> value) throws IOException {
        text(key, value.map(Quantity::text));
    }

    private void text(String key, Optional<String> value) throws IOException {
        if (value.isPresent()) {
            out.writeStringField(key, value.get());
        } else {
            out.writeNullField(key);
        }
    }

    private void texts(String key, List<String> values) throws IOException {
        out.writeArrayFieldStart(key);
        for (String value : values) {
            out.writeString(value);
        }
        out.writeEndArray();
    }
}
