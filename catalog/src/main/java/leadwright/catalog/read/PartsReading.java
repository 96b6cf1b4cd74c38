package leadwright.catalog.read;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Output;
import leadwright.catalog.device.PartFunction;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.PatientConnection;
import leadwright.catalog.device.TherapyKind;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.table.ElectrodeSets;
import leadwright.catalog.table.ElectrodeWire;
import leadwright.catalog.text.Fields;
import leadwright.catalog.text.Findings;
import leadwright.catalog.text.Located;

/**
 * Applied parts with their connections, and the therapy outputs that act through them.
 *
 * @param ids ids of the applied parts
 */
record PartsReading(List<AppliedPart> parts, List<Output> outputs, Ids ids) {

    /** First words of full names that are not patient connections. */
    private static final Set<String> RESERVED = Set.of("housing", "port", "touch-probe");

    static PartsReading of(Fields top, ConnectorWords connectors) {
        Findings findings = top.findings();
        Ids ids = new Ids("applied part", findings);
        top.assumed("applied-parts", Optional.of(true), true, "taken as none");
        List<AppliedPart> parts = new ArrayList<>();
        int before = findings.problems().size();
        for (Fields row : top.rows("applied-parts")) {
            parts.add(part(row, ids, connectors));
        }
        if (parts.isEmpty() && findings.problems().size() > before) {
            ids.unread();
        }
        top.assumed("outputs", Optional.of(true), true, "taken as none");
        Ids outputIds = new Ids("output", findings);
        List<Output> outputs = new ArrayList<>();
        for (Fields row : top.rows("outputs")) {
            outputs.add(output(row, outputIds, ids, parts));
        }
        return new PartsReading(List.copyOf(parts), List.copyOf(outputs), ids);
    }

    /** What a limit can be of: parts, and functions by their full names. */
    Set<String> subjects() {
        Set<String> subjects = new LinkedHashSet<>();
        for (AppliedPart part : parts) {
            subjects.add(part.id());
            part.functions().forEach(function -> subjects.add(part.functionName(function)));
        }
        return subjects;
    }

    private static AppliedPart part(Fields row, Ids ids, ConnectorWords connectors) {
        String id = ids.claim(row);
        if (RESERVED.contains(id)) {
            row.findings().problem(row.at("id"), "'" + id + "' begins the names of other connections; take another id");
        }
        boolean named = row.has("functions");
        Optional<String> terminal = row.optionalOneOf("terminal", connectors.words());
        Optional<String> set =
                row.optionalOneOf("set", ElectrodeSets.builtIn().byId().keySet());
        List<PartFunction> functions = named
                ? functions(row, terminal, connectors)
                : List.of(new PartFunction(id, connections(row, set, terminal, connectors)));
        return new AppliedPart(
                id,
                row.optionalText("name").orElse(id),
                row.word("type", PartType.values(), PartType::word),
                row.assumed("defibrillation-proof", row.optionalYesNo("defibrillation-proof"), false, "taken as no"),
                functions,
                named,
                set,
                row.optionalQuantity("distance", Dimension.LENGTH),
                row.optionalQuantity("cable", Dimension.LENGTH));
    }

    private static List<PartFunction> functions(Fields row, Optional<String> terminal, ConnectorWords connectors) {
        for (String key : List.of("set", "connections")) {
            if (row.has(key)) {
                row.findings()
                        .problem(row.at(key), "'" + key + "' does not go with 'functions'; put it into one of them");
            }
        }
        Ids ids = new Ids("function of a part", row.findings());
        List<PartFunction> functions = new ArrayList<>();
        List<Fields> rows = row.rows("functions");
        if (rows.isEmpty()) {
            row.findings().problem(row.at("functions"), "'functions' lists none; take it out or list at least one");
        }
        for (Fields each : rows) {
            String id = ids.claim(each);
            Optional<String> own = each.optionalOneOf("terminal", connectors.words());
            Optional<String> set =
                    each.optionalOneOf("set", ElectrodeSets.builtIn().byId().keySet());
            functions.add(new PartFunction(id, connections(each, set, own.or(() -> terminal), connectors)));
        }
        return functions;
    }

    /** The wires of the set, where one is named, then the connections listed. */
    private static List<PatientConnection> connections(
            Fields row, Optional<String> set, Optional<String> terminal, ConnectorWords connectors) {
        Findings findings = row.findings();
        List<PatientConnection> connections = new ArrayList<>();
        if (set.isPresent() && terminal.isEmpty() && !row.has("terminal")) {
            findings.problem(
                    row.at("set"),
                    "set '" + set.get()
                            + "' needs 'terminal': what the patient end of each wire is, such as snap-socket");
        }
        Ids ids = new Ids("connection of a function", findings);
        if (set.isPresent()) {
            for (ElectrodeWire wire :
                    ElectrodeSets.builtIn().find(set.get()).orElseThrow().wires()) {
                ids.reserve(wire.id(), row.at("set"));
                connections.add(new PatientConnection(
                        wire.id(), terminal.orElse(""), Optional.of(wire.iec().label())));
            }
        }
        for (Fields each : row.rows("connections")) {
            String id = ids.claim(each);
            Optional<String> own = each.optionalOneOf("terminal", connectors.words());
            if (!each.has("terminal") && terminal.isEmpty()) {
                findings.problem(
                        each.at(), "key 'terminal' is missing; what its patient end is, such as skin-surface, is due");
            }
            connections.add(new PatientConnection(id, own.or(() -> terminal).orElse(""), each.optionalText("label")));
        }
        boolean listsNone = row.has("connections") && row.items("connections").isEmpty();
        if (listsNone || !row.has("set") && !row.has("connections")) {
            findings.problem(
                    row.at("connections"),
                    "this has no connection; write 'set', or list at least one under 'connections'");
        }
        return connections;
    }

    private static Output output(Fields row, Ids ids, Ids partIds, List<AppliedPart> parts) {
        String id = ids.claim(row);
        Optional<String> stated = row.optionalText("applied-part");
        String part = stated.orElse(id);
        boolean known = stated.isPresent()
                ? partIds.refers(part, row.at("applied-part"))
                : !id.isEmpty() && partIds.refersByDefault(id, row.at("id"), "applied-part");
        List<String> functions = new ArrayList<>();
        for (Located<String> function : row.locatedTexts("functions")) {
            functions.add(function.value());
            if (known) {
                functionRefers(function, part, parts, row.findings());
            }
        }
        return new Output(
                id,
                part,
                functions,
                row.word("kind", TherapyKind.values(), TherapyKind::word),
                row.assumed(
                        "made-safe-by",
                        row.optionalText("made-safe-by").map(Optional::of),
                        Optional.empty(),
                        "see the device's instructions before anything is plugged"),
                row.assumed(
                        "wait",
                        Durations.optional(row, "wait").map(Optional::of),
                        Optional.empty(),
                        "see the device's instructions"),
                row.optionalText("may-share"));
    }

    private static void functionRefers(
            Located<String> function, String partId, List<AppliedPart> parts, Findings findings) {
        AppliedPart part = parts.stream()
                .filter(each -> each.id().equals(partId))
                .findFirst()
                .orElseThrow();
        Ids ids = new Ids("function of '" + partId + "'", findings);
        if (part.namedFunctions()) {
            ids.adopt(part.functions().stream().map(PartFunction::id).toList());
        }
        ids.refers(function.value(), function.at());
    }
}
