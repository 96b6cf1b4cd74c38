package leadwright.render.export;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.EarthPoint;
import leadwright.catalog.device.Port;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.MeasuringNetwork;
import leadwright.catalog.kit.Method;
import leadwright.catalog.rules.Basis;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.rules.RuleSet;
import leadwright.catalog.table.RuleSets;
import leadwright.planner.Foresight;
import leadwright.planner.Plan;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Joint;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.NotApplicable;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Proof;
import leadwright.planner.plan.Proposal;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Remedy;
import leadwright.planner.plan.Shortfall;
import leadwright.planner.plan.Step;

/**
 * The plan as {@code plan/1}: the keys and their order are the project's public face. The stable keys of an object come
 * first, further ones follow. The same plan gives the same text.
 */
public final class PlanJson {

    private final JsonGenerator out;

    private PlanJson(JsonGenerator out) {
        this.out = out;
    }

    /** The whole file, ended by a line feed. */
    public static String of(Plan plan) {
        return JsonText.of(out -> new PlanJson(out).plan(plan));
    }

    /** A piece of the file. */
    @FunctionalInterface
    private interface Piece {
        void write() throws IOException;
    }

    private void plan(Plan plan) throws IOException {
        out.writeStartObject();
        text("leadwright", "plan/1");
        text("fingerprint", plan.fingerprint());
        out.writeBooleanField("partial", plan.partial());
        object("device", () -> device(plan.device()));
        object("kit", () -> new PlanKitJson(out).write(plan.kit(), plan.device()));
        object("rules", () -> {
            text("id", plan.rules().id());
            text("name", plan.rules().name());
            text("edition", plan.rules().edition());
            text(
                    "nominal-mains",
                    RuleSets.builtIn()
                            .find(plan.rules().id())
                            .flatMap(RuleSet::nominalMains)
                            .map(Basis::clause));
        });
        objects("hookups", plan.hookups(), this::hookup);
        objects("readings", plan.readings(), (Reading each) -> reading(each, plan.foresight()));
        objects("steps", plan.steps(), this::step);
        objects("not-applicable", plan.notApplicable(), this::notApplicable);
        object("time", () -> time(plan));
        object("proof", () -> {
            object("hookups", () -> proof(plan.hookupsProof()));
            object("time", () -> proof(plan.timeProof()));
        });
        text("occasion", plan.occasion());
        text("on", plan.on().map(Object::toString));
        out.writeBooleanField("training-copy", plan.trainingCopy());
        objects("shortfalls", plan.shortfalls(), this::shortfall);
        if (plan.remedy().isPresent()) {
            Remedy remedy = plan.remedy().get();
            object("to-make-whole", () -> remedy(remedy));
        } else {
            out.writeNullField("to-make-whole");
        }
        texts("warnings", plan.warnings());
        texts("unconfirmed-limits", plan.unconfirmedLimits());
        object("house", () -> house(plan.house()));
        new ForesightJson(out).foresight(plan.foresight());
        out.writeEndObject();
    }

    private void device(Device device) throws IOException {
        text("name", device.name());
        text("protection", device.protection().word());
        objects("applied-parts", device.appliedParts(), (AppliedPart part) -> {
            text("id", part.id());
            text("name", part.name());
            text("type", part.type().word());
            texts(
                    "connections",
                    part.connections().stream().map(Connection::name).toList());
        });
        texts("panel", device.panel());
        // Names of what readings are of, by id, for those who print them.
        out.writeArrayFieldStart("places");
        for (TouchPoint each : device.touchPoints()) {
            place(each.id(), each.name());
        }
        for (Port each : device.ports()) {
            place(each.id(), each.name());
        }
        for (EarthPoint each : device.earthPoints()) {
            place(each.id(), each.name());
        }
        out.writeEndArray();
    }

    private void place(String id, String name) throws IOException {
        out.writeStartObject();
        text("id", id);
        text("name", name);
        out.writeEndObject();
    }

    /** What a record of the readings needs to know of the house's choices. */
    private void house(House house) throws IOException {
        text("department", house.department());
        text("decision", house.decision().word());
        text("paper", house.paper().word());
        text("words", house.words().word());
        texts("signs", house.signs());
    }

    private void hookup(Hookup hookup) throws IOException {
        text("id", hookup.id());
        objects("bundles", hookup.bundles(), (Bundle bundle) -> {
            text("id", bundle.id());
            texts("connections", bundle.connections());
            out.writeArrayFieldStart("jacks");
            for (int jack : bundle.jacks()) {
                out.writeNumber(jack);
            }
            out.writeEndArray();
            texts("links", bundle.links());
        });
        objects("chains", hookup.chains(), (Chain chain) -> {
            text("connection", chain.connection());
            texts("items", chain.items());
            out.writeNumberField("jack", chain.jack());
            out.writeNumberField("contacts", chain.contacts());
        });
        objects("earth", hookup.earth(), (EarthPath path) -> {
            text("pole", path.pole());
            text("point", path.point());
            texts("items", path.items());
            text("socket", path.socket());
        });
    }

    private void reading(Reading reading, Foresight foresight) throws IOException {
        Obligation what = reading.obligation();
        text("id", reading.id());
        text("quantity", what.quantity().word());
        text("clause", what.clause());
        texts("of", what.of());
        texts("measured", what.demand().measured());
        texts("against", what.demand().against());
        texts("earthed", what.demand().earthed());
        text("place", what.place());
        text("hookup", reading.hookup());
        text("polarity", polarity(what.state()));
        text("fault", what.state().fault().word());
        text("mode", what.mode());
        text("source-polarity", what.sourcePolarity().map(Obligation.SourcePolarity::word));
        text("method", what.method().map(Method::word));
        text("component", what.component().map(Component::word));
        text("network", what.network().map(MeasuringNetwork::word));
        if (what.limit().isPresent()) {
            Limit limit = what.limit().get();
            object("limit", () -> limit(limit));
        } else {
            out.writeNullField("limit");
        }
        new ForesightJson(out).reading(foresight.of(reading.id()));
        text("state", what.state().word());
        text("key", what.key());
        text("earth-subject", what.earthSubject().map(Obligation.EarthSubject::word));
        text("note", what.note());
    }

    private static Optional<String> polarity(MainsState state) {
        return switch (state.polarity()) {
            case NONE -> Optional.empty();
            case NORMAL -> Optional.of("normal");
            case REVERSED -> Optional.of("reversed");
        };
    }

    private void limit(Limit limit) throws IOException {
        text("id", limit.id());
        text(limit.bound().word(), limit.value().text());
        text("mark", limit.mark().name());
        text("clause", limit.clause());
        texts("sources", limit.sources());
        // False exactly for the limits of the list unconfirmed-limits.
        out.writeBooleanField("confirmed", !limit.unconfirmed());
    }

    private void step(Step step) throws IOException {
        out.writeNumberField("number", step.number());
        text("does", step.does().word());
        text("text", step.text());
        text("reading", step.reading());
        text("state", step.state().word());
        text("hookup", step.hookup());
        if (step.joint().isPresent()) {
            Joint joint = step.joint().get();
            object("joint", () -> {
                text("from", joint.from());
                text("to", joint.to());
            });
        } else {
            out.writeNullField("joint");
        }
        out.writeNumberField("seconds", step.seconds());
        text("caution", step.caution());
        text("on-fail", step.onFail());
        text("because", step.because());
        text("place", step.place());
        text("account", step.account().word());
        out.writeNumberField("writing", step.writing());
    }

    private void notApplicable(NotApplicable each) throws IOException {
        text("test", each.test());
        text("because", each.because());
        text("clause", each.clause());
    }

    private void remedy(Remedy remedy) throws IOException {
        texts("additions", remedy.alternatives().stream().map(Proposal::text).toList());
        out.writeNumberField("pieces", remedy.proof().answer());
        out.writeNumberField("at-least", remedy.proof().lowerBound());
        text("argument", remedy.proof().argument());
    }

    private void shortfall(Shortfall each) throws IOException {
        text("about", each.about());
        texts("connections", each.connections());
        text("because", each.because());
        texts("additions", each.additions());
    }

    private void time(Plan plan) throws IOException {
        out.writeNumberField("total", plan.time().total());
        for (Step.Account account : Step.Account.values()) {
            out.writeNumberField(account.word(), plan.time().parts().getOrDefault(account, 0));
        }
        out.writeNumberField("plain-order", plan.time().plainOrder());
        out.writeNumberField("start-ups", plan.time().startUps());
    }

    private void proof(Proof proof) throws IOException {
        out.writeNumberField("answer", proof.answer());
        out.writeNumberField("lower-bound", proof.lowerBound());
        text("argument", proof.argument());
    }

    private void text(String key, String value) throws IOException {
        out.writeStringField(key, value);
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

    private void object(String key, Piece inside) throws IOException {
        out.writeObjectFieldStart(key);
        inside.write();
        out.writeEndObject();
    }

    /** How one element of a list is written, inside its own object. */
    @FunctionalInterface
    private interface Element<T> {
        void write(T element) throws IOException;
    }

    private <T> void objects(String key, List<T> elements, Element<T> inside) throws IOException {
        out.writeArrayFieldStart(key);
        for (T element : elements) {
            out.writeStartObject();
            inside.write(element);
            out.writeEndObject();
        }
        out.writeEndArray();
    }
}
