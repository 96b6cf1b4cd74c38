package leadwright.catalog.read;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import leadwright.catalog.device.SupplySystem;
import leadwright.catalog.kit.Accuracy;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.EarthJack;
import leadwright.catalog.kit.EarthTest;
import leadwright.catalog.kit.Inlet;
import leadwright.catalog.kit.Jacks;
import leadwright.catalog.kit.MeasuringNetwork;
import leadwright.catalog.kit.Method;
import leadwright.catalog.kit.Outlet;
import leadwright.catalog.kit.PartSource;
import leadwright.catalog.kit.SourceReading;
import leadwright.catalog.kit.Tester;
import leadwright.catalog.kit.TesterSwitch;
import leadwright.catalog.kit.Ties;
import leadwright.catalog.kit.TouchThrough;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.table.MainsCouplers;
import leadwright.catalog.text.Fields;
import leadwright.catalog.text.Node;

/** The {@code tester:} section of a kit. */
final class TesterReading {

    private static final int MOST_JACKS = 100;
    private static final List<String> EARTH_SOCKETS = List.of("earth-jack", "outlet-earth", "second-jack");
    private static final Map<String, Dimension> FLOORS = new TreeMap<>(Map.of(
            "leakage", Dimension.CURRENT,
            "earth", Dimension.RESISTANCE,
            "insulation", Dimension.RESISTANCE,
            "voltage", Dimension.VOLTAGE));

    private final Fields tester;
    private final Set<String> connectors;

    private TesterReading(Fields tester, Set<String> connectors) {
        this.tester = tester;
        this.connectors = connectors;
    }

    static Tester of(Fields tester, String kitName, Set<String> connectors) {
        return new TesterReading(tester, connectors).read(kitName);
    }

    private Tester read(String kitName) {
        Optional<Jacks> jacks = tester.optionalSection("jacks").map(this::jacks);
        Optional<EarthJack> earthJack = tester.optionalSection("earth-jack").map(this::earthJack);
        Optional<TouchThrough> touchThrough =
                tester.optionalWord("touch-through", TouchThrough.values(), TouchThrough::word);
        note("touch-through", "the tester is taken to have no touch probe");
        if (touchThrough.isPresent() && touchThrough.get() == TouchThrough.JACK && !tester.has("jacks")) {
            problem("touch-through", "the touch probe cannot take a jack: the tester lists no 'jacks'");
        }
        List<Outlet> outlets = outlets();
        Optional<EarthTest> earthTest = tester.optionalSection("earth-test").map(this::earthTest);
        note("switches", "taken as none: nothing is opened or reversed");
        note("networks", "taken as none");
        note("methods", "taken as none");
        note("insulation", "taken as none");
        note("calibrated-until", "not compared with the day of the test");
        return new Tester(
                tester.optionalText("name").orElse(kitName),
                jacks,
                earthJack,
                touchThrough,
                tester.optionalSection("inlet").map(TesterReading::inlet),
                outlets,
                Set.copyOf(tester.wordList("switches", TesterSwitch.values(), TesterSwitch::word)),
                tester.wordList("networks", MeasuringNetwork.values(), MeasuringNetwork::word),
                tester.wordList("methods", Method.values(), Method::word),
                components(),
                earthTest,
                insulation(),
                partSource(),
                accuracy(),
                tester.optionalDate("calibrated-until"));
    }

    private void note(String key, String statement) {
        tester.assumed(key, Optional.of(true), true, statement);
    }

    private void problem(String key, String message) {
        tester.findings().problem(tester.at(key), message);
    }

    private Jacks jacks(Fields fields) {
        return new Jacks(
                fields.whole("count", 1, MOST_JACKS),
                fields.oneOf("socket", connectors),
                // Whatever is tied in runs can be tied by any tester, and jacks that rest earthed serve fewer demands.
                fields.assumed(
                        "ties", fields.optionalWord("ties", Ties.values(), Ties::word), Ties.RUNS, "taken as runs"),
                fields.assumed(
                        "at-rest",
                        fields.optionalWord("at-rest", AtRest.values(), AtRest::word),
                        AtRest.EARTHED,
                        "taken as earthed"));
    }

    private EarthJack earthJack(Fields fields) {
        return new EarthJack(
                fields.oneOf("socket", connectors),
                fields.assumed(
                        "at-rest",
                        fields.optionalWord("at-rest", AtRest.values(), AtRest::word)
                                .map(Optional::of),
                        Optional.empty(),
                        "taken as earthed"));
    }

    private static Inlet inlet(Fields fields) {
        return new Inlet(
                fields.oneOf("plug", MainsCouplers.builtIn().plugs().keySet()),
                fields.positive("current", Dimension.CURRENT));
    }

    private List<Outlet> outlets() {
        note("outlets", "taken as none: no device is supplied through the tester");
        return tester.rows("outlets").stream()
                .map(row -> new Outlet(
                        row.oneOf("socket", MainsCouplers.builtIn().plugs().keySet()),
                        row.assumed(
                                "system",
                                row.optionalWord("system", SupplySystem.values(), SupplySystem::word),
                                SupplySystem.LINE_NEUTRAL,
                                "taken as line-neutral"),
                        row.positive("voltage", Dimension.VOLTAGE),
                        row.positive("current", Dimension.CURRENT)))
                .toList();
    }

    private List<Component> components() {
        List<Component> stated = tester.wordList("components", Component.values(), Component::word);
        return tester.assumed(
                "components",
                tester.has("components") ? Optional.of(stated) : Optional.empty(),
                List.of(Component.AC),
                "taken as ac");
    }

    private EarthTest earthTest(Fields fields) {
        List<Quantity> currents = positives(fields, "currents", Dimension.CURRENT);
        if (currents.isEmpty()) {
            fields.findings()
                    .problem(
                            fields.at("currents"),
                            "'currents' lists none; at least one test current is due, such as '10 A'");
        }
        List<String> sockets = fields.oneOfs("sockets", EARTH_SOCKETS);
        if (fields.items("sockets").size() < 2) {
            fields.findings()
                    .problem(
                            fields.at("sockets"),
                            "'sockets' names fewer than two places; it measures between two of "
                                    + String.join(", ", EARTH_SOCKETS));
        }
        if (sockets.contains("earth-jack") && !tester.has("earth-jack")) {
            fields.findings().problem(fields.at("sockets"), "'earth-jack' is named, but the tester describes none");
        }
        if (sockets.contains("outlet-earth") && tester.items("outlets").isEmpty()) {
            fields.findings().problem(fields.at("sockets"), "'outlet-earth' is named, but the tester has no outlet");
        }
        return new EarthTest(
                currents,
                fields.word("source", Component.values(), Component::word),
                fields.positive("open-circuit", Dimension.VOLTAGE),
                fields.assumed(
                        "wiring",
                        fields.optionalOneOf("wiring", List.of("two-wire", "four-wire")),
                        "two-wire",
                        "taken as two-wire"),
                fields.optionalQuantity("null-up-to", Dimension.RESISTANCE),
                sockets);
    }

    private static List<Quantity> positives(Fields fields, String key, Dimension dimension) {
        List<Quantity> amounts = new ArrayList<>(fields.quantities(key, dimension));
        if (amounts.removeIf(amount -> amount.amount() == 0)) {
            fields.findings().problem(fields.at(key), "'" + key + "' lists a zero; amounts above zero are due");
        }
        return List.copyOf(amounts);
    }

    private List<Quantity> insulation() {
        return positives(tester, "insulation", Dimension.VOLTAGE);
    }

    /** A section, or {@code false} where the tester has no such source. */
    private Optional<PartSource> partSource() {
        String key = "mains-on-applied-part";
        note(key, "taken as none");
        Optional<Node> node = tester.node(key);
        if (node.isPresent() && node.get() instanceof Node.Scalar) {
            if (tester.optionalYesNo(key).orElse(false)) {
                problem(key, "'" + key + "' says yes; write its voltage, short-circuit and reading instead");
            }
            return Optional.empty();
        }
        return tester.optionalSection(key)
                .map(fields -> new PartSource(
                        fields.positive("voltage", Dimension.VOLTAGE),
                        fields.positive("short-circuit", Dimension.CURRENT),
                        fields.word("reading", SourceReading.values(), SourceReading::word)));
    }

    private Map<String, Accuracy> accuracy() {
        Map<String, Accuracy> accuracy = new TreeMap<>();
        note("accuracy", "no band is drawn round a reading");
        tester.optionalSection("accuracy")
                .ifPresent(section -> FLOORS.forEach((function, dimension) -> section.optionalSection(function)
                        .ifPresent(fields -> accuracy.put(
                                function,
                                new Accuracy(
                                        fields.quantity("reading", Dimension.RATIO),
                                        fields.quantity("floor", dimension))))));
        return accuracy;
    }
}
