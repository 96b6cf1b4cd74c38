package leadwright.render.edition;

import static leadwright.render.circuit.Station.Row.BOTTOM;
import static leadwright.render.circuit.Station.Row.SIDE;
import static leadwright.render.circuit.Station.Row.TOP;
import static leadwright.render.circuit.Zone.DEVICE;
import static leadwright.render.circuit.Zone.LEADS;
import static leadwright.render.circuit.Zone.TESTER;

import java.util.List;
import java.util.Optional;
import leadwright.catalog.kit.Method;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.plan.Obligation;
import leadwright.render.circuit.Circuit;
import leadwright.render.circuit.Station;

/** The way of a current that the tester's own source drives through an insulation or a barrier. */
final class SourceWays {

    private SourceWays() {}

    /** Mains from the tester on what is measured. */
    static Circuit of(Obligation reading, boolean earthed) {
        boolean probe = reading.quantity() == QuantityKind.MAINS_ON_UNEARTHED_METAL;
        String onto = switch (reading.quantity()) {
            case MAINS_ON_UNEARTHED_METAL -> "unearthed metal";
            case MAINS_ON_PORT -> "socket";
            default -> "connections that are measured";
        };
        boolean alternative = reading.method().equals(Optional.of(Method.ALTERNATIVE));
        return loop(
                List.of(
                        new Station(TESTER, TOP, "source", "From the tester's source, which a resistor limits"),
                        new Station(
                                LEADS,
                                TOP,
                                probe ? "its lead" : "wires",
                                probe ? ", by its lead" : ", by the jacks and wires"),
                        new Station(DEVICE, TOP, onto, " to the " + onto),
                        new Station(
                                DEVICE,
                                SIDE,
                                "barrier",
                                ", through the barrier inside the device that keeps this apart from earth")),
                back(reading, earthed, alternative),
                alternative ? ", and back to the source. The device is off the mains." : ", and back to the source.");
    }

    private static List<Station> back(Obligation reading, boolean earthed, boolean alternative) {
        if (alternative) {
            return List.of(
                    new Station(
                            DEVICE,
                            BOTTOM,
                            "line, neutral and earth",
                            ", to line, neutral and earth of the device, which are joined"),
                    new Station(LEADS, BOTTOM, "cord", "; by the cord to the tester"));
        }
        if (reading.quantity() == QuantityKind.MAINS_ON_UNEARTHED_METAL
                || reading.quantity() == QuantityKind.MAINS_ON_PORT) {
            return List.of(
                    new Station(
                            DEVICE, BOTTOM, "connections that are measured", ", to the connections that are measured"),
                    new Station(LEADS, BOTTOM, "their wires", "; by their wires and jacks"));
        }
        if (!reading.demand().against().isEmpty()) {
            return List.of(
                    new Station(DEVICE, BOTTOM, "other pole", ", to the other pole that is joined here"),
                    new Station(LEADS, BOTTOM, "its wires", "; by its wires"));
        }
        if (!reading.demand().earthed().isEmpty()) {
            return List.of(
                    new Station(
                            DEVICE,
                            BOTTOM,
                            "what is tied to earth",
                            ", to what is tied to earth for this reading, without which the current would have nowhere to"
                                    + " flow"),
                    new Station(LEADS, BOTTOM, "its wires", "; by its wires"));
        }
        return earthed
                ? List.of(
                        new Station(DEVICE, BOTTOM, "protective earth", ", to the device's protective earth"),
                        new Station(LEADS, BOTTOM, "earth conductor", "; by the earth conductor of the cord"))
                : List.of(
                        new Station(DEVICE, BOTTOM, "what lies at earth", ", to what lies at earth of the device"),
                        new Station(LEADS, BOTTOM, "earth", "; by earth"));
    }

    /** Equipment leakage with the tester's source in the place of the mains. */
    static Circuit alternativeEquipment(boolean earthed) {
        return loop(
                List.of(
                        new Station(TESTER, TOP, "source", "The device is off the mains. From the tester's source"),
                        new Station(
                                LEADS, TOP, "line and neutral", " to line and neutral of the plug, which are joined"),
                        new Station(DEVICE, TOP, "mains part", ", into the mains part"),
                        new Station(DEVICE, SIDE, "insulation", ", through the filter capacitors and the insulation")),
                List.of(
                        new Station(
                                DEVICE,
                                BOTTOM,
                                "all that can be touched",
                                earthed
                                        ? ", to all that can be touched and is joined here: earthed metal and connections"
                                        : ", to all that can be touched and is joined here"),
                        new Station(LEADS, BOTTOM, "wires", "; from there by the wires to the jacks")),
                ", and back to the source.");
    }

    private static Circuit loop(List<Station> there, List<Station> back, String end) {
        List<Station> way = new java.util.ArrayList<>(there);
        way.addAll(back);
        way.add(new Station(
                TESTER,
                BOTTOM,
                "measuring network",
                ", through the measuring network, which stands for a person's body"));
        return new Circuit(way, end, Optional.empty(), Optional.empty(), false);
    }
}
