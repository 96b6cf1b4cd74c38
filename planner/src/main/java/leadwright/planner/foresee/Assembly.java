package leadwright.planner.foresee;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.FunctionalEarth;
import leadwright.catalog.device.MainsSwitch;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.MeasuringNetwork;
import leadwright.catalog.kit.Method;
import leadwright.catalog.kit.PartSource;
import leadwright.catalog.kit.SourceReading;
import leadwright.planner.circuit.Circuit;
import leadwright.planner.circuit.Element;
import leadwright.planner.circuit.Network;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;

/** One reading's circuit under construction. */
final class Assembly {
    private static final String METER = "meter:";

    private final Device device;
    private final Kit kit;
    private final Situation situation;
    private final Optional<Supplies> supply;
    private final double hertz;
    private final Variation variation;
    private final Obligation what;
    private final Optional<Hookup> hookup;
    private final Network network;
    private final Wiring wiring = new Wiring();
    private final boolean direct;

    Assembly(Setups bench, Obligation what, Optional<Hookup> hookup, Variation variation) {
        this.device = bench.device();
        this.kit = bench.kit();
        this.situation = bench.situation();
        this.supply = bench.supply();
        this.hertz = bench.hertz();
        this.variation = variation;
        this.what = what;
        this.hookup = hookup;
        this.network = what.network()
                        .filter(each -> each == MeasuringNetwork.IEC_60990)
                        .isPresent()
                ? Network.iec60990()
                : Network.iec60601();
        this.direct = variation != Variation.AC_FOR_DC
                && what.component().filter(each -> each == Component.DC).isPresent();
        wiring.addAll(bench.deviceBranches());
        hookup.ifPresent(each -> wiring.addAll(bench.hookupBranches(each)));
        functionalEarth();
    }

    private void functionalEarth() {
        if (!DeviceBranches.earthed(device) && hasFunctionalEarth()) {
            wiring.tie(Nodes.CHASSIS, Nodes.FUNCTIONAL_EARTH);
        }
    }

    private boolean hasFunctionalEarth() {
        return device.functionalEarth() != FunctionalEarth.NONE
                || device.adapter()
                        .filter(each -> each.functionalEarth() != FunctionalEarth.NONE)
                        .isPresent();
    }

    Setup earthLeakage(String terminal) {
        power();
        idleJacks();
        meter(terminal, Circuit.EARTH);
        return done(Meter.Across.network(network, METER, Circuit.EARTH));
    }

    Optional<Setup> touch() {
        power();
        earthConductor();
        idleJacks();
        String point = DeviceBranches.node(device, what.place().orElse(what.of().get(0)));
        if (what.place().isEmpty() && !what.demand().isNothing()) {
            return toEarthOf(what.demand().measured());
        }
        if (point.equals(Nodes.CHASSIS) && wiring.node(Nodes.CHASSIS).equals(Circuit.EARTH)) {
            return Optional.empty();
        }
        meter(point, Circuit.EARTH);
        return Optional.of(done(Meter.Across.network(network, METER, Circuit.EARTH)));
    }

    Optional<Setup> toEarth() {
        power();
        earthConductor();
        return toEarthOf(what.demand().measured());
    }

    Optional<Setup> toEarthOf(SortedSet<String> measured) {
        Optional<String> pole = pole(measured);
        if (pole.isEmpty()) {
            return Optional.empty();
        }
        earthed();
        idleJacks();
        meter(pole.get(), Circuit.EARTH);
        return Optional.of(done(Meter.Across.network(network, METER, Circuit.EARTH)));
    }

    Optional<Setup> between() {
        power();
        earthConductor();
        Optional<String> one = pole(what.demand().measured());
        Optional<String> other = pole(what.demand().against());
        if (one.isEmpty() || other.isEmpty()) {
            return Optional.empty();
        }
        earthed();
        idleJacks();
        meter(one.get(), other.get());
        return Optional.of(done(Meter.Across.network(network, METER, wiring.node(other.get()))));
    }

    Optional<Setup> equipmentLeakage() {
        Method method = what.method().orElse(Method.DIRECT);
        Optional<String> pole = what.demand().isNothing()
                ? Optional.of(housing())
                : pole(what.demand().measured());
        if (pole.isEmpty()) {
            return Optional.empty();
        }
        if (DeviceBranches.earthed(device)) {
            wiring.tie(pole.get(), Nodes.EARTH_TERMINAL);
        }
        if (method == Method.ALTERNATIVE) {
            return alternative(() -> meter(pole.get(), Circuit.EARTH), Circuit.EARTH);
        }
        power();
        if (method == Method.DIFFERENTIAL) {
            wiring.tie(pole.get(), Circuit.EARTH);
            idleJacks();
            return Optional.of(done(new Meter.Difference(
                    List.of(Supplies.FIRST, Supplies.SECOND), direct ? 1 : network.weight(hertz))));
        }
        idleJacks();
        meter(pole.get(), Circuit.EARTH);
        return Optional.of(done(Meter.Across.network(network, METER, Circuit.EARTH)));
    }

    /** What stands for all of the device's accessible metal: its protective earth, else the inside of its enclosure. */
    private String housing() {
        return DeviceBranches.earthed(device) ? Nodes.EARTH_TERMINAL : Nodes.CHASSIS;
    }

    Optional<Setup> alternativePart() {
        Optional<String> pole = pole(what.demand().measured());
        if (pole.isEmpty()) {
            return Optional.empty();
        }
        wiring.tie(housing(), mainsTerminal(Nodes.NEUTRAL));
        earthed();
        return alternative(() -> meter(mainsTerminal(Nodes.NEUTRAL), Circuit.EARTH), pole.get());
    }

    /** The device off the mains, line and neutral joined; the tester's source against the meter's far end. */
    Optional<Setup> alternative(Runnable meter, String driven) {
        double volts = supply.map(Supplies::volts)
                .or(() ->
                        kit.tester().partSource().map(source -> source.voltage().inSi()))
                .orElse(0.0);
        if (volts == 0) {
            return Optional.empty();
        }
        wiring.tie(mainsTerminal(Nodes.LINE), mainsTerminal(Nodes.NEUTRAL));
        idleJacks();
        meter.run();
        String to = driven.equals(Circuit.EARTH) ? mainsTerminal(Nodes.LINE) : driven;
        source(to, volts, 0);
        return Optional.of(done(Meter.Across.network(network, METER, Circuit.EARTH)));
    }

    Optional<Setup> mainsOnPart() {
        Optional<String> pole = pole(what.demand().measured());
        Optional<PartSource> source = kit.tester().partSource();
        if (pole.isEmpty() || source.isEmpty()) {
            return Optional.empty();
        }
        power();
        earthConductor();
        earthed();
        tieTo(what.demand().against(), Circuit.EARTH);
        idleJacks();
        meter(Nodes.SOURCE, pole.get());
        source(Nodes.SOURCE, sourceVolts(source.get()), reversed() ? 180 : 0);
        return Optional.of(done(Meter.Across.network(network, METER, wiring.node(pole.get()))));
    }

    /** Mains on unearthed metal or on a socket; read is what comes to the part, or from it to earth. */
    Optional<Setup> mainsElsewhere() {
        Optional<String> pole = pole(what.demand().measured());
        Optional<String> metal = pole(what.demand().against());
        Optional<PartSource> source = kit.tester().partSource();
        if (pole.isEmpty() || metal.isEmpty() || source.isEmpty()) {
            return Optional.empty();
        }
        power();
        earthConductor();
        earthed();
        idleJacks();
        meter(pole.get(), Circuit.EARTH);
        source(metal.get(), sourceVolts(source.get()), reversed() ? 180 : 0);
        return Optional.of(done(Meter.Across.network(network, METER, Circuit.EARTH)));
    }

    private double sourceVolts(PartSource source) {
        return situation.volts().orElse(source.voltage().inSi());
    }

    private boolean reversed() {
        return what.sourcePolarity()
                .filter(each -> each == Obligation.SourcePolarity.REVERSED)
                .isPresent();
    }

    /** A source with the resistance that limits it, where what it reads is not corrected for that. */
    private void source(String to, double volts, double degrees) {
        Optional<PartSource> stated = kit.tester().partSource();
        boolean raw = stated.filter(each -> each.reading() == SourceReading.RAW).isPresent();
        if (!raw) {
            wiring.addFixed(List.of(new Element.Voltage("V:source", to, Circuit.EARTH, volts, degrees)));
            return;
        }
        double ohms = volts / stated.get().shortCircuit().inSi();
        wiring.addFixed(List.of(
                new Element.Voltage("V:source", "behind-source", Circuit.EARTH, volts, degrees),
                new Element.Resistance("R:source", "behind-source", to, ohms)));
    }

    Optional<Setup> insulation() {
        Optional<String> from =
                what.of().equals(List.of("mains")) || what.demand().isNothing()
                        ? Optional.of(Nodes.LINE)
                        : pole(what.demand().measured());
        if (from.isEmpty() || kit.tester().insulation().isEmpty()) {
            return Optional.empty();
        }
        wiring.tie(mainsTerminal(Nodes.LINE), mainsTerminal(Nodes.NEUTRAL));
        String against = what.insulatedFrom().orElse("");
        String to = switch (against) {
            case "mains part" -> mainsTerminal(Nodes.LINE);
            case "protective earth" -> Nodes.EARTH_TERMINAL;
            default -> pole(what.demand().against()).orElse(housing());
        };
        if (wiring.node(from.get()).equals(wiring.node(to))) {
            return Optional.empty();
        }
        wiring.tie(to, Circuit.EARTH);
        double volts = kit.tester().insulation().get(0).inSi();
        wiring.addFixed(List.of(new Element.Voltage("V:source", from.get(), Circuit.EARTH, volts, 0)));
        return Optional.of(new Setup(wiring.template(), new Meter.Insulation("V:source", volts), 0, wiring.ties()));
    }

    private Setup done(Meter meter) {
        return new Setup(wiring.template(), meter, direct ? 0 : hertz, wiring.ties());
    }

    private void meter(String in, String back) {
        wiring.addFixed(network.between(METER, in, back));
    }

    /** The outlet's two conductors to the device, by polarity and fault. */
    private void power() {
        if (what.state().polarity() == MainsState.Polarity.NONE || supply.isEmpty()) {
            return;
        }
        boolean normal = what.state().polarity() == MainsState.Polarity.NORMAL || variation == Variation.POLARITY_STUCK;
        boolean exchanged = variation == Variation.WALL_EXCHANGED;
        String first = mainsTerminal(normal != exchanged ? Nodes.LINE : Nodes.NEUTRAL);
        String second = mainsTerminal(normal != exchanged ? Nodes.NEUTRAL : Nodes.LINE);
        boolean open = switch (variation) {
            case SUPPLY_NOT_OPENED -> false;
            case SUPPLY_LEFT_OPEN -> true;
            default -> what.state().fault() == MainsState.Fault.SUPPLY_OPEN;
        };
        if (open) {
            // The tester opens the conductor that is the neutral where the wall is wired rightly.
            first = exchanged ? "open-conductor" : first;
            second = exchanged ? second : "open-conductor";
        }
        if (direct) {
            return;
        }
        if (variation == Variation.SUPPLY_NOT_EARTHED) {
            wiring.addFixed(supply.get().unearthed(first, second));
        } else {
            wiring.addFixed(supply.get().sources(first, second));
        }
        if (variation == Variation.SECOND_DEVICE) {
            wiring.addAll(second(first, second));
        }
    }

    /** What another device of class I puts between the conductors and the earth contact. */
    private static List<Template.Branch> second(String first, String second) {
        return List.of(
                Template.Branch.capacitance(
                        "C:second-device-1", first, Nodes.EARTH_TERMINAL, Assumed.FILTER.parameter("second-device")),
                Template.Branch.capacitance(
                        "C:second-device-2", second, Nodes.EARTH_TERMINAL, Assumed.FILTER.parameter("second-device")));
    }

    /** Where a conductor ends: in the device, or before its open switch. */
    private String mainsTerminal(String inside) {
        boolean cut = variation == Variation.ON_BATTERY
                || variation == Variation.SWITCH_OFF
                        && (device.mainsSwitch() == MainsSwitch.BOTH_POLES
                                || device.mainsSwitch() == MainsSwitch.ONE_POLE && inside.equals(Nodes.LINE));
        return cut ? "before-switch-" + inside : inside;
    }

    /** The earth conductor of cord and outlet, unless it is opened. */
    private void earthConductor() {
        boolean open = switch (variation) {
            case EARTH_NOT_OPENED -> false;
            case EARTH_LEFT_OPEN -> true;
            default -> what.state().fault() == MainsState.Fault.EARTH_OPEN;
        };
        if (!open) {
            wiring.tie(Nodes.EARTH_TERMINAL, Circuit.EARTH);
            if (!DeviceBranches.earthed(device) && hasFunctionalEarth()) {
                wiring.tie(Nodes.FUNCTIONAL_EARTH, Circuit.EARTH);
            }
        }
    }

    private void earthed() {
        tieTo(what.demand().earthed(), Circuit.EARTH);
    }

    private void tieTo(SortedSet<String> connections, String node) {
        for (String connection : connections) {
            end(connection).ifPresent(end -> wiring.tie(end, node));
        }
    }

    /** One node of all that is measured as one. */
    private Optional<String> pole(SortedSet<String> connections) {
        List<String> ends = new ArrayList<>();
        for (String connection : connections) {
            end(connection).ifPresent(ends::add);
        }
        if (ends.size() < connections.size() || ends.isEmpty()) {
            return Optional.empty();
        }
        ends.forEach(end -> wiring.tie(ends.get(0), end));
        return Optional.of(ends.get(0));
    }

    /** The tester's end of a connection: its jack, or the tip of the probe that touches it. */
    private Optional<String> end(String connection) {
        Optional<Chain> chain = hookup.flatMap(each -> each.chainOf(connection));
        if (chain.isPresent()) {
            return Optional.of(Nodes.jack(chain.get().jack()));
        }
        if (connection.equals(Device.TOUCH_PROBE)) {
            return what.place().map(place -> DeviceBranches.node(device, place));
        }
        return Optional.empty();
    }

    /** Jacks that nothing uses here, where the tester earths them. */
    private void idleJacks() {
        boolean earths = variation == Variation.IDLE_JACKS_EARTHED
                || kit.tester()
                        .jacks()
                        .filter(jacks -> jacks.atRest() == AtRest.EARTHED)
                        .isPresent();
        if (!earths || hookup.isEmpty()) {
            return;
        }
        List<String> used = new ArrayList<>();
        what.demand().measured().forEach(each -> end(each).ifPresent(used::add));
        what.demand().against().forEach(each -> end(each).ifPresent(used::add));
        hookup.get().chains().stream()
                .map(chain -> Nodes.jack(chain.jack()))
                .filter(jack -> !used.contains(jack))
                .forEach(jack -> wiring.tie(jack, Circuit.EARTH));
    }
}
