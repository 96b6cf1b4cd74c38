package leadwright.catalog.read;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import leadwright.catalog.device.Battery;
import leadwright.catalog.device.ExternalAdapter;
import leadwright.catalog.device.FunctionalEarth;
import leadwright.catalog.device.MainsSwitch;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.Supply;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.device.SupplySystem;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.table.MainsCouplers;
import leadwright.catalog.text.Fields;
import leadwright.catalog.text.Findings;
import leadwright.catalog.text.Range;

/** How a device gets its power and is protected, with the contradictions between these. */
record SupplyReading(
        Supply supply,
        Protection protection,
        FunctionalEarth functionalEarth,
        Battery battery,
        MainsSwitch mainsSwitch,
        Optional<ExternalAdapter> adapter) {

    private static final List<String> ONLY_WITH_SUPPLY =
            List.of("inlet", "cord-plug", "system", "voltage", "frequency", "current");

    static SupplyReading of(Fields top) {
        Optional<Fields> section = top.section("supply");
        Supply supply = section.map(SupplyReading::supply).orElseGet(SupplyReading::placeholder);
        Protection protection = top.word("protection", Protection.values(), Protection::word);
        boolean mains = supply.connection() != SupplyConnection.NONE;
        FunctionalEarth functionalEarth = top.assumed(
                "functional-earth",
                top.optionalWord("functional-earth", FunctionalEarth.values(), FunctionalEarth::word),
                FunctionalEarth.NONE,
                "taken as none");
        Battery battery = battery(top, mains);
        // An electronic switch leaves the mains part out of reach while the device is off: the safe guess.
        Optional<MainsSwitch> stated = top.optionalWord("mains-switch", MainsSwitch.values(), MainsSwitch::word);
        MainsSwitch mainsSwitch = mains
                ? top.assumed("mains-switch", stated, MainsSwitch.ELECTRONIC, "taken as electronic")
                : stated.orElse(MainsSwitch.NONE);
        Optional<ExternalAdapter> adapter = adapter(top, supply, section.isPresent());
        SupplyReading reading = new SupplyReading(supply, protection, functionalEarth, battery, mainsSwitch, adapter);
        if (section.isPresent() && section.get().has("connection") && top.has("protection")) {
            reading.contradictions(top, section.get());
        }
        return reading;
    }

    private static Supply placeholder() {
        return new Supply(
                SupplyConnection.DETACHABLE_CORD,
                Optional.empty(),
                Optional.empty(),
                SupplySystem.LINE_NEUTRAL,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    private static Supply supply(Fields fields) {
        SupplyConnection connection = fields.word("connection", SupplyConnection.values(), SupplyConnection::word);
        boolean mains = fields.has("connection") && connection != SupplyConnection.NONE;
        Optional<String> inlet =
                fields.optionalOneOf("inlet", MainsCouplers.builtIn().inlets().keySet());
        Optional<String> plug = fields.optionalOneOf(
                "cord-plug", MainsCouplers.builtIn().plugs().keySet());
        Optional<SupplySystem> system = fields.optionalWord("system", SupplySystem.values(), SupplySystem::word);
        Optional<Range> voltage = fields.optionalRange("voltage", Dimension.VOLTAGE);
        Optional<Range> frequency = fields.optionalRange("frequency", Dimension.FREQUENCY);
        Optional<Quantity> current = fields.optionalPositive("current", Dimension.CURRENT);
        if (mains) {
            state(fields, connection);
        }
        return new Supply(
                connection,
                inlet,
                plug,
                system.orElse(SupplySystem.LINE_NEUTRAL),
                voltage.map(Range::lowest),
                voltage.map(Range::highest),
                frequency.map(Range::lowest),
                current);
    }

    /** What a device that runs on mains has to say, and what stands in where it does not. */
    private static void state(Fields fields, SupplyConnection connection) {
        Findings findings = fields.findings();
        if (!fields.has("voltage")) {
            findings.problem(
                    fields.at(), "key 'voltage' is missing; the rated voltage is due, such as '230 V' or '100-240 V'");
        }
        List<String> unstated = new ArrayList<>(List.of("current"));
        if (!fields.has("system")) {
            findings.assume("supply.system: not stated, taken as line-neutral");
        }
        if (connection == SupplyConnection.DETACHABLE_CORD) {
            unstated.add("inlet");
        }
        if (connection != SupplyConnection.PERMANENT) {
            unstated.add("cord-plug");
        }
        for (String key : unstated) {
            if (!fields.has(key)) {
                findings.assume("supply." + key + ": not stated, not compared with the tester");
            }
        }
        boolean direct = fields.optionalWord("system", SupplySystem.values(), SupplySystem::word)
                .filter(SupplySystem.DC::equals)
                .isPresent();
        if (!fields.has("frequency") && !direct) {
            findings.assume("supply.frequency: not stated, the outlet's is taken");
        }
    }

    private static Battery battery(Fields top, boolean mains) {
        Optional<Battery> stated = top.optionalWord("battery", Battery.values(), Battery::word);
        return mains
                ? top.assumed("battery", stated, Battery.NONE, "taken as none")
                : top.assumed("battery", stated, Battery.ONLY, "taken as only, since there is no supply");
    }

    private static Optional<ExternalAdapter> adapter(Fields top, Supply supply, boolean supplyStated) {
        Optional<Fields> section = top.optionalSection("adapter");
        boolean external = supply.connection() == SupplyConnection.EXTERNAL_ADAPTER;
        if (external && !top.has("adapter")) {
            top.findings()
                    .assume("adapter: not stated, taken to be of the device's own class, without functional earth");
        }
        if (supplyStated && !external && top.has("adapter")) {
            top.findings()
                    .problem(
                            top.at("adapter"),
                            "'adapter' describes an external adapter, but supply.connection is "
                                    + supply.connection().word() + "; write external-adapter there, or take it out");
        }
        return section.map(fields -> new ExternalAdapter(
                fields.word("class", new Protection[] {Protection.CLASS_1, Protection.CLASS_2}, Protection::word),
                fields.assumed(
                        "functional-earth",
                        fields.optionalWord("functional-earth", FunctionalEarth.values(), FunctionalEarth::word),
                        FunctionalEarth.NONE,
                        "taken as none"),
                fields.optionalText("name")));
    }

    private void contradictions(Fields top, Fields section) {
        Findings findings = top.findings();
        String connection = supply.connection().word();
        if (supply.connection() == SupplyConnection.NONE) {
            if (protection != Protection.INTERNALLY_POWERED) {
                findings.problem(
                        top.at("protection"),
                        "a device whose supply.connection is none cannot be " + protection.word()
                                + "; write internally-powered, or say how it is supplied");
            }
            if (battery == Battery.NONE) {
                findings.assume("battery: none, and no supply: taken as a part tested by itself, never switched on");
            }
            for (String key : ONLY_WITH_SUPPLY) {
                if (section.has(key)) {
                    findings.problem(
                            section.at(key),
                            "'" + key + "' does not go with connection none; take it out, or say how it is supplied");
                }
            }
        } else if (protection == Protection.INTERNALLY_POWERED
                && supply.connection() != SupplyConnection.EXTERNAL_ADAPTER) {
            findings.problem(
                    top.at("protection"),
                    "a device on the mains (" + connection
                            + ") is class-1 or class-2 while it is, whatever its battery");
        }
        refuse(section, "inlet", Set.of(SupplyConnection.PERMANENT, SupplyConnection.FIXED_CORD), "detachable-cord");
        refuse(section, "cord-plug", Set.of(SupplyConnection.PERMANENT), "fixed-cord or detachable-cord");
        earthOfClassOne(section);
    }

    private void refuse(Fields section, String key, Set<SupplyConnection> connections, String instead) {
        if (connections.contains(supply.connection()) && section.has(key)) {
            section.findings()
                    .problem(
                            section.at(key),
                            "'" + key + "' does not go with connection "
                                    + supply.connection().word() + "; take it out, or write " + instead + " there");
        }
    }

    /** Class I needs an earth all the way; an external adapter has a class of its own. */
    private void earthOfClassOne(Fields section) {
        if (protection != Protection.CLASS_1 || supply.connection() == SupplyConnection.EXTERNAL_ADAPTER) {
            return;
        }
        supply.inlet()
                .flatMap(MainsCouplers.builtIn()::inlet)
                .filter(inlet -> inlet.protection() == Protection.CLASS_2)
                .ifPresent(inlet -> section.findings()
                        .problem(
                                section.at("inlet"),
                                inlet.inlet()
                                        + " has no earth pin, so the device cannot be class-1; compare its label"));
        supply.cordPlug()
                .flatMap(MainsCouplers.builtIn()::plug)
                .filter(plug -> !plug.earth())
                .ifPresent(plug -> section.findings()
                        .problem(
                                section.at("cord-plug"),
                                plug.id() + " has no earth pin, so the device cannot be class-1; compare its label"));
    }
}
