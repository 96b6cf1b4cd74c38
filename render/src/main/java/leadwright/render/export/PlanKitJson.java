package leadwright.render.export;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import leadwright.catalog.device.Device;
import leadwright.catalog.kit.Accuracy;
import leadwright.catalog.kit.EarthTest;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KnownResistor;
import leadwright.catalog.kit.Outlet;
import leadwright.catalog.kit.PartSource;
import leadwright.catalog.kit.Tester;
import leadwright.catalog.quantity.Quantity;

/** The kit in a plan: what a reader of readings needs to know of the tester, in the words of {@code kit/1}. */
final class PlanKitJson {

    private final JsonGenerator out;

    PlanKitJson(JsonGenerator out) {
        this.out = out;
    }

    /** @param device its supply system picks the outlets that are of interest */
    void write(Kit kit, Device device) throws IOException {
        Tester tester = kit.tester();
        out.writeStringField("name", kit.name());
        out.writeStringField("tester", tester.name());
        text("calibrated-until", tester.calibratedUntil().map(Object::toString));
        out.writeObjectFieldStart("accuracy");
        for (Map.Entry<String, Accuracy> each : new TreeMap<>(tester.accuracy()).entrySet()) {
            out.writeObjectFieldStart(each.getKey());
            out.writeStringField("reading", each.getValue().reading().text());
            out.writeStringField("floor", each.getValue().floor().text());
            out.writeEndObject();
        }
        out.writeEndObject();
        text("earth-wiring", tester.earthTest().map(EarthTest::wiring));
        text("null-up-to", tester.earthTest().flatMap(EarthTest::nullUpTo).map(Quantity::text));
        source(tester.partSource());
        out.writeArrayFieldStart("outlets");
        for (Outlet each : tester.outlets()) {
            if (device.supply().system() == each.system()) {
                out.writeStartObject();
                out.writeStringField("system", each.system().word());
                out.writeStringField("voltage", each.voltage().text());
                out.writeEndObject();
            }
        }
        out.writeEndArray();
        out.writeArrayFieldStart("checks");
        for (KnownResistor each : kit.checks()) {
            out.writeStartObject();
            out.writeStringField("id", each.id());
            out.writeStringField("value", each.value().text());
            out.writeStringField("tolerance", each.tolerance().text());
            out.writeEndObject();
        }
        out.writeEndArray();
    }

    private void source(Optional<PartSource> source) throws IOException {
        if (source.isEmpty()) {
            out.writeNullField("mains-on-applied-part");
            return;
        }
        out.writeObjectFieldStart("mains-on-applied-part");
        out.writeStringField("voltage", source.get().voltage().text());
        out.writeStringField("short-circuit", source.get().shortCircuit().text());
        out.writeStringField("reading", source.get().reading().word());
        out.writeEndObject();
    }

    private void text(String key, Optional<String> value) throws IOException {
        if (value.isPresent()) {
            out.writeStringField(key, value.get());
        } else {
            out.writeNullField(key);
        }
    }
}
