package leadwright.render.export;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leadwright.catalog.kit.Kit;
import leadwright.planner.Plan;
import leadwright.planner.plan.Proposal;
import leadwright.planner.plan.Remedy;
import leadwright.planner.plan.Shortfall;
import leadwright.planner.reach.DeviceReach;
import leadwright.planner.reach.KitReach;
import leadwright.planner.reach.KitReport;
import leadwright.planner.reach.OneMore;
import leadwright.planner.wire.KitChains.Use;
import leadwright.planner.wire.KitChains.Way;

/** A kit's report as {@code kit-report/1}: the keys and their order are the project's public face. */
public final class KitReportJson {
    private KitReportJson() {}

    public static String of(KitReach reach, KitReport report) {
        return JsonText.of(out -> new Written(out).report(reach, report));
    }

    private record Written(JsonGenerator out) {

        private interface Content {
            void write() throws IOException;
        }

        private interface Row<T> {
            void write(T each) throws IOException;
        }

        void report(KitReach reach, KitReport report) throws IOException {
            object(() -> {
                out.writeStringField("leadwright", "kit-report/1");
                out.writeStringField("kit", report.kit().name());
                out.writeStringField("rules", report.rules());
                out.writeNumberField(
                        "jacks",
                        report.kit()
                                .tester()
                                .jacks()
                                .map(jacks -> jacks.count())
                                .orElse(0));
                rows("terminals", reach.terminals(), this::terminal);
                texts("beyond", reach.beyond());
                rows("earth", reach.earth(), each -> {
                    out.writeStringField("current", each.current().text());
                    millimetres("lead-mm", each.lead());
                });
                rows("devices", report.devices(), this::device);
                rows("one-more", report.more(), each -> change(each, report.kit()));
            });
        }

        private void terminal(KitReach.Terminal each) throws IOException {
            out.writeStringField("terminal", each.word());
            out.writeFieldName("uses");
            out.writeStartArray();
            for (Map.Entry<Use, Way> way : each.ways().entrySet()) {
                object(() -> {
                    out.writeStringField(
                            "use",
                            switch (way.getKey()) {
                                case ORDINARY -> "ordinary";
                                case MAINS_ON_PART -> "mains-on-applied-part";
                                case INSULATION -> "insulation";
                            });
                    texts("items", way.getValue().items());
                    out.writeNumberField("at-once", way.getValue().atOnce());
                    millimetres("chain-up-to-mm", Optional.of(way.getValue().longest()));
                });
            }
            out.writeEndArray();
        }

        private void device(DeviceReach each) throws IOException {
            out.writeStringField("file", each.file());
            out.writeStringField("name", each.device().name());
            out.writeStringField("plan", each.plan().isEmpty() ? "none" : each.full() ? "full" : "partial");
            if (each.refusal().isPresent()) {
                out.writeStringField("refusal", each.refusal().get());
            } else {
                out.writeNullField("refusal");
            }
            out.writeNumberField("readings", each.possible());
            out.writeNumberField("stopped", each.stopped());
            out.writeNumberField("hookups", each.hookups());
            out.writeNumberField("seconds", each.seconds());
            rows("missing", each.plan().map(Plan::shortfalls).orElse(List.of()), this::missing);
            texts(
                    "to-make-whole",
                    each.plan().flatMap(Plan::remedy).map(Remedy::alternatives).orElse(List.of()).stream()
                            .map(Proposal::text)
                            .toList());
        }

        private void missing(Shortfall each) throws IOException {
            out.writeStringField("about", each.about());
            texts("connections", each.connections());
            out.writeStringField("because", each.because());
            texts("additions", each.additions());
        }

        private void change(OneMore.Change each, Kit kit) throws IOException {
            out.writeStringField("piece", each.piece().one());
            out.writeBooleanField("new", each.piece().isNewTo(kit));
            Optional<String> price = each.piece().isNewTo(kit)
                    ? Optional.empty()
                    : each.piece().item().price();
            if (price.isPresent()) {
                out.writeStringField("price", price.get());
            } else {
                out.writeNullField("price");
            }
            out.writeNumberField("readings", each.readings());
            out.writeNumberField("hookups", each.hookups());
            out.writeNumberField("seconds", each.seconds());
            texts("files", each.files());
        }

        private void millimetres(String key, Optional<Long> micrometres) throws IOException {
            if (micrometres.isPresent()) {
                out.writeNumberField(key, micrometres.get() / 1000);
            } else {
                out.writeNullField(key);
            }
        }

        private void object(Content content) throws IOException {
            out.writeStartObject();
            content.write();
            out.writeEndObject();
        }

        private <T> void rows(String key, List<T> all, Row<T> row) throws IOException {
            out.writeFieldName(key);
            out.writeStartArray();
            for (T each : all) {
                object(() -> row.write(each));
            }
            out.writeEndArray();
        }

        private void texts(String key, List<String> texts) throws IOException {
            out.writeFieldName(key);
            out.writeStartArray();
            for (String text : texts) {
                out.writeString(text);
            }
            out.writeEndArray();
        }
    }
}
