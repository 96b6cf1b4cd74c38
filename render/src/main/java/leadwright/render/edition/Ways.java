package leadwright.render.edition;

import static leadwright.render.circuit.Station.Row.BOTTOM;
import static leadwright.render.circuit.Station.Row.SIDE;
import static leadwright.render.circuit.Station.Row.TOP;
import static leadwright.render.circuit.Zone.DEVICE;
import static leadwright.render.circuit.Zone.LEADS;
import static leadwright.render.circuit.Zone.SUPPLY;
import static leadwright.render.circuit.Zone.TESTER;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.Protection;
import leadwright.catalog.kit.Method;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;
import leadwright.render.circuit.Circuit;
import leadwright.render.circuit.Circuit.At;
import leadwright.render.circuit.Circuit.Conductor;
import leadwright.render.circuit.Station;

/**
 * The way of a leakage current from the supply, or from the device itself, by what is read and in which state. Readings with a
 * source of the tester stand in {@link SourceWays}, those of resistance and voltage in {@link EarthWays}.
 */
final class Ways {

    private static final String BACK =
            ", and by the supply's own tie between neutral and earth back to where it came from.";

    private final Obligation reading;
    private final boolean earthed;
    private final boolean mains;
    private final boolean fixed;

    private Ways(Obligation reading, Plan plan) {
        this.reading = reading;
        this.earthed = plan.device().protection() == Protection.CLASS_1;
        this.mains = plan.device().runsOnMains();
        this.fixed = reading.state() == MainsState.INSTALLED_ON;
    }

    /** The way of the current in a reading of this plan. */
    static Circuit of(Obligation reading, Plan plan) {
        if (reading.sourcePolarity().isPresent() || reading.quantity() == QuantityKind.APPLIED_PART_LEAKAGE) {
            return SourceWays.of(reading, plan.device().protection() == Protection.CLASS_1);
        }
        return switch (reading.quantity()) {
            case EARTH_RESISTANCE,
                    BONDING_RESISTANCE,
                    BONDING_VOLTAGE,
                    INSULATION_RESISTANCE,
                    SUPPLY_VOLTAGE,
                    TESTER_CHECK,
                    PROOF -> EarthWays.of(reading);
            case MAINS_ON_APPLIED_PART, TOTAL_MAINS_ON_APPLIED_PART, MAINS_ON_UNEARTHED_METAL, MAINS_ON_PORT ->
                SourceWays.of(reading, plan.device().protection() == Protection.CLASS_1);
            default -> new Ways(reading, plan).leakage();
        };
    }

    private Circuit leakage() {
        return switch (reading.quantity()) {
            case SUPPLY_CURRENT -> supplyCurrent();
            case EARTH_LEAKAGE -> earth(false);
            case FUNCTIONAL_EARTH_LEAKAGE -> earth(true);
            case EQUIPMENT_LEAKAGE -> equipment();
            case PATIENT_AUXILIARY, LEAD_TO_LEAD -> auxiliary();
            case TOUCH_CURRENT -> mains ? touch() : battery(probe());
            case TOUCH_CURRENT_BETWEEN -> mains ? between() : battery(probe());
            default -> mains ? patient() : battery(wires("part that is measured", ", to the part that is measured"));
        };
    }

    /** From the supply into the mains part of the device. */
    private List<Station> in() {
        List<Station> way = new ArrayList<>();
        way.add(new Station(SUPPLY, TOP, "live conductor", "From the live conductor of the supply"));
        if (!fixed) {
            way.add(new Station(TESTER, TOP, "outlet", ", by the tester's outlet"));
            way.add(new Station(LEADS, TOP, "cord", " and the cord"));
        }
        way.add(new Station(DEVICE, TOP, "mains part", ", into the mains part of the device"));
        return way;
    }

    private static Station insulation(String what) {
        return new Station(DEVICE, SIDE, "insulation", ", through " + what);
    }

    private static Station network() {
        return new Station(
                TESTER,
                BOTTOM,
                "measuring network",
                ", and through the measuring network, which stands for a person's body,");
    }

    private static Station supplyEarth() {
        return new Station(SUPPLY, BOTTOM, "earth of the supply", " to the earth of the supply");
    }

    /** The loop of a current from the supply, with the conductors beside it as the state has them. */
    private Circuit loop(List<Station> way, boolean earthBeside) {
        MainsState.Fault fault = reading.state().fault();
        At other = fixed ? At.WITHOUT_SWITCH : fault == MainsState.Fault.SUPPLY_OPEN ? At.OPEN : At.CLOSED;
        At earth = fixed ? At.WITHOUT_SWITCH : fault == MainsState.Fault.EARTH_OPEN ? At.OPEN : At.CLOSED;
        return new Circuit(
                way,
                BACK,
                Optional.of(new Conductor("other conductor", other)),
                earthBeside ? Optional.of(new Conductor("earth conductor", earth)) : Optional.empty(),
                false);
    }

    private Circuit earth(boolean functional) {
        String kind = functional ? "functional earth" : "protective earth";
        List<Station> way = in();
        way.add(insulation("the capacitors of the mains filter and the insulation inside it"));
        way.add(new Station(DEVICE, BOTTOM, kind, ", to its " + kind));
        way.add(new Station(LEADS, BOTTOM, "earth conductor", "; by the earth conductor of the cord to the tester"));
        way.add(network());
        way.add(supplyEarth());
        return loop(way, false);
    }

    private List<Station> probe() {
        return List.of(
                new Station(DEVICE, BOTTOM, "part that is touched", ", to the part that is touched"),
                new Station(LEADS, BOTTOM, "probe", "; from there by the probe"));
    }

    private static List<Station> wires(String label, String phrase) {
        return List.of(
                new Station(DEVICE, BOTTOM, label, phrase),
                new Station(LEADS, BOTTOM, "wires", "; from there by the wires"),
                new Station(TESTER, BOTTOM, "jacks", " to the jacks"));
    }

    private Circuit touch() {
        List<Station> way = in();
        way.add(insulation("the insulation and stray capacitance inside it"));
        way.addAll(probe());
        way.add(network());
        way.add(supplyEarth());
        return loop(way, earthed);
    }

    private Circuit between() {
        List<Station> way = in();
        way.add(insulation("the insulation inside it"));
        way.add(new Station(DEVICE, BOTTOM, "first part", ", to the first part"));
        way.add(new Station(LEADS, BOTTOM, "lead", "; from there by a lead"));
        way.add(new Station(
                TESTER,
                BOTTOM,
                "measuring network",
                ", and through the measuring network, which stands for a person's body,"));
        way.add(new Station(
                SUPPLY,
                BOTTOM,
                "earth, by the second part",
                " to the supply and its earth, by the second part that is joined to the network's other end"));
        return loop(way, false);
    }

    private Circuit patient() {
        List<Station> way = in();
        way.add(insulation("the insulation and stray capacitance inside it"));
        way.addAll(wires("connections that are joined", ", to the connections that are joined here to be measured"));
        way.add(network());
        way.add(supplyEarth());
        return loop(way, earthed);
    }

    private Circuit equipment() {
        if (reading.method().equals(Optional.of(Method.ALTERNATIVE))) {
            return SourceWays.alternativeEquipment(earthed);
        }
        List<Station> way = in();
        way.add(insulation("the capacitors of the mains filter and the insulation inside it"));
        if (reading.method().equals(Optional.of(Method.DIFFERENTIAL))) {
            way.add(new Station(DEVICE, BOTTOM, "all that is joined to earth", ", to all that is joined to earth"));
            way.add(new Station(LEADS, BOTTOM, "any way to earth", "; from there by any way to earth"));
            way.add(new Station(SUPPLY, BOTTOM, "earth of the supply", " and to the earth of the supply"));
            way.set(
                    1,
                    new Station(
                            TESTER,
                            TOP,
                            "difference of two conductors",
                            ", by the outlet, where the tester reads the difference of two conductors, with no network in"
                                    + " the way of the current,"));
            return loop(way, false);
        }
        String joined = earthed
                ? ", to all that can be touched and is joined here: earthed metal and connections"
                : ", to all that can be touched and is joined here";
        way.addAll(wires("all that can be touched", joined));
        way.add(network());
        way.add(supplyEarth());
        Circuit loop = loop(way, earthed);
        // The network stands in the place of the earth conductor, which the tester opens for this reading.
        return new Circuit(
                loop.way(),
                loop.end(),
                loop.other(),
                loop.earth().map(each -> new Conductor(each.name(), fixed ? At.WITHOUT_SWITCH : At.OPEN)),
                false);
    }

    private static Circuit auxiliary() {
        return new Circuit(
                List.of(
                        new Station(DEVICE, SIDE, "device's own circuit", "From the device's own circuit"),
                        new Station(DEVICE, BOTTOM, "measured connection", " out of the measured connection"),
                        new Station(LEADS, BOTTOM, "its wire", "; by its wire"),
                        new Station(TESTER, BOTTOM, "its jack", " to its jack"),
                        new Station(TESTER, BOTTOM, "measuring network", ", and through the measuring network"),
                        new Station(
                                TESTER,
                                TOP,
                                "the other jacks",
                                ", which stands for a person's body, to the other jacks"),
                        new Station(LEADS, TOP, "their wires", "; by their wires"),
                        new Station(DEVICE, TOP, "other connections", " to the other connections, the other pole")),
                ", and back into the device. Neither mains nor earth is needed for it.",
                Optional.empty(),
                Optional.empty(),
                false);
    }

    private static Circuit battery(List<Station> out) {
        List<Station> way = new ArrayList<>();
        way.add(new Station(DEVICE, SIDE, "battery and circuits", "From the device's own battery and circuits"));
        way.addAll(out);
        way.add(new Station(TESTER, BOTTOM, "measuring network", ", and through the measuring network"));
        way.add(new Station(
                TESTER,
                TOP,
                "jack of the other pole",
                ", which stands for a person's body, to the jack of the other pole"));
        way.add(new Station(LEADS, TOP, "its lead", "; by its lead"));
        way.add(new Station(
                DEVICE, TOP, "other pole, or housing", " to the other pole, or housing where the row names none"));
        return new Circuit(
                way, ", and back into the device. No mains is joined.", Optional.empty(), Optional.empty(), false);
    }

    private Circuit supplyCurrent() {
        List<Station> way = in();
        way.add(new Station(DEVICE, SIDE, "all that runs", ", through all that runs in it"));
        way.add(new Station(LEADS, BOTTOM, "other conductor", ", and by the other conductor of the cord"));
        way.add(new Station(TESTER, BOTTOM, "ammeter", ", through the tester's ammeter"));
        way.add(new Station(SUPPLY, BOTTOM, "neutral", " to the neutral"));
        return new Circuit(way, " of the supply, as in use.", Optional.empty(), Optional.empty(), false);
    }
}
