package leadwright.catalog.read;

import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.ElectricalKey;
import leadwright.catalog.device.Forbidden;
import leadwright.catalog.device.OperatingMode;
import leadwright.catalog.device.ParticularLimit;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.text.Document;
import leadwright.catalog.text.Fields;
import leadwright.catalog.text.Findings;
import leadwright.catalog.text.Located;
import leadwright.catalog.text.Outcome;

/** Reads {@code device/1} files. */
public final class DeviceReader {

    private final Fields top;
    private final Findings findings;

    private DeviceReader(Fields top) {
        this.top = top;
        this.findings = top.findings();
    }

    /**
     * Reads a device.
     *
     * @param file name of the file, for messages
     * @param bytes its content, YAML or JSON in UTF-8
     */
    public static Outcome<Device> read(String file, byte[] bytes) {
        return Document.read(file, bytes, "device/1", top -> new DeviceReader(top).device());
    }

    private Supplier<Device> device() {
        String name = top.text("name");
        SupplyReading power = SupplyReading.of(top);
        ConnectorWords connectors = ConnectorWords.of(top);
        PartsReading parts = PartsReading.of(top, connectors);
        PlacesReading places = PlacesReading.of(top, connectors);
        Quantity startUp = time("start-up");
        Quantity shutDown = time("shut-down");
        Optional<Boolean> toleratesPowerCut = top.optionalYesNo("tolerates-power-cut");
        assume("tolerates-power-cut", "taken as no");
        Optional<String> builtTo = top.optionalId("built-to");
        assume("built-to", "no edition's own limits are used");
        List<Forbidden> forbids = forbids();
        List<String> panel = panel(parts);
        List<ParticularLimit> limits = limits(parts, places);
        Map<String, Quantity> electrical = electrical();
        List<OperatingMode> modes = modes();
        return () -> new Device(
                name,
                power.supply(),
                power.protection(),
                power.functionalEarth(),
                power.battery(),
                power.mainsSwitch(),
                startUp,
                shutDown,
                top.has("start-up"),
                toleratesPowerCut,
                builtTo,
                forbids,
                parts.parts(),
                places.ports(),
                parts.outputs(),
                places.touchPoints(),
                places.earthPoints(),
                panel,
                limits,
                electrical,
                modes,
                power.adapter(),
                connectors.definitions());
    }

    private void assume(String key, String statement) {
        top.assumed(key, Optional.of(true), true, statement);
    }

    private Quantity time(String key) {
        return top.assumed(key, Durations.optional(top, key), Quantity.seconds(0), "left out of the bench time");
    }

    private List<Forbidden> forbids() {
        assume("forbids", "taken as none");
        return top.rows("forbids").stream()
                .map(row -> new Forbidden(
                        row.word("test", QuantityKind.values(), QuantityKind::word)
                                .word(),
                        row.text("because")))
                .toList();
    }

    /** Every applied part once; those that the file leaves out follow in its order. */
    private List<String> panel(PartsReading parts) {
        Set<String> panel = new LinkedHashSet<>();
        for (Located<String> id : top.locatedTexts("panel")) {
            if (parts.ids().refers(id.value(), id.at()) && !panel.add(id.value())) {
                findings.problem(
                        id.at(), "'" + id.value() + "' stands twice in 'panel'; each applied part stands once");
            }
        }
        List<String> leftOut = parts.parts().stream()
                .map(AppliedPart::id)
                .filter(id -> !panel.contains(id))
                .sorted(Comparator.comparing(DeviceReader::natural))
                .toList();
        if (!leftOut.isEmpty()) {
            findings.assume(
                    "panel: does not list " + String.join(", ", leftOut) + ", drawn last in the order of their ids");
        }
        panel.addAll(leftOut);
        return List.copyOf(panel);
    }

    /** Numbers in it compare by value, up to eighteen digits. */
    private static String natural(String id) {
        return Pattern.compile("[0-9]+")
                .matcher(id)
                .replaceAll(number -> "0".repeat(Math.max(0, 18 - number.group().length())) + number.group());
    }

    private List<ParticularLimit> limits(PartsReading parts, PlacesReading places) {
        return top.rows("limits").stream().map(row -> limit(row, parts, places)).toList();
    }

    private ParticularLimit limit(Fields row, PartsReading parts, PlacesReading places) {
        Optional<QuantityKind> kind = row.neededWord("quantity", QuantityKind.values(), QuantityKind::word);
        if (kind.isPresent() && !LimitedQuantity.hasCeiling(kind.get())) {
            findings.problem(row.at("quantity"), "'" + kind.get().word() + "' has no greatest value to limit");
        }
        Optional<String> of = row.optionalText("of");
        of.ifPresent(subject -> refersToSubject(row, subject, parts, places));
        List<Dimension> dimensions =
                kind.map(LimitedQuantity::dimension).map(List::of).orElse(LimitedQuantity.ANY);
        return new ParticularLimit(
                kind.map(QuantityKind::word).orElse(""), of, row.positive("at-most", dimensions), row.text("source"));
    }

    private void refersToSubject(Fields row, String subject, PartsReading parts, PlacesReading places) {
        boolean part = parts.subjects().contains(subject);
        boolean place = places.ids().has(subject);
        if (part && place) {
            findings.problem(
                    row.at("of"),
                    "'" + subject
                            + "' is both an applied part and a place of the housing; give one of them another id");
        } else if (!part && !place) {
            Ids all = new Ids("applied part, touch point or port", findings);
            all.adopt(parts.subjects());
            all.adopt(places.ids().all());
            all.refers(subject, row.at("of"));
        }
    }

    private Map<String, Quantity> electrical() {
        Map<String, Quantity> values = new TreeMap<>();
        Optional<Fields> section = top.optionalSection("electrical");
        if (section.isPresent()) {
            for (ElectricalKey key : ElectricalKey.values()) {
                section.get()
                        .optionalQuantity(key.word(), key.dimensions())
                        .ifPresent(value -> values.put(key.word(), value));
            }
        }
        return values;
    }

    private List<OperatingMode> modes() {
        Ids ids = new Ids("mode", findings);
        return top.rows("modes").stream()
                .map(row -> {
                    String id = ids.claim(row);
                    return new OperatingMode(
                            id,
                            row.optionalText("name").orElse(id),
                            row.assumed(
                                    "reach", Durations.optional(row, "reach"), Quantity.seconds(0), "taken as 0 s"));
                })
                .toList();
    }
}
