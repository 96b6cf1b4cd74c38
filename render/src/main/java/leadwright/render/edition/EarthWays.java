package leadwright.render.edition;

import static leadwright.render.circuit.Station.Row.BOTTOM;
import static leadwright.render.circuit.Station.Row.SIDE;
import static leadwright.render.circuit.Station.Row.TOP;
import static leadwright.render.circuit.Zone.DEVICE;
import static leadwright.render.circuit.Zone.LEADS;
import static leadwright.render.circuit.Zone.SUPPLY;
import static leadwright.render.circuit.Zone.TESTER;

import java.util.List;
import java.util.Optional;
import leadwright.planner.plan.Obligation;
import leadwright.render.circuit.Circuit;
import leadwright.render.circuit.Station;

/** The way of the current in readings of resistance, of voltage, and of the bench itself. */
final class EarthWays {

    private static final String QUOTIENT =
            ". The tester drives a known current round this loop, reads the voltage that it takes, and shows their quotient;"
                    + " the measuring network takes no part.";

    private EarthWays() {}

    static Circuit of(Obligation reading) {
        return switch (reading.quantity()) {
            case BONDING_VOLTAGE -> bondingVoltage();
            case INSULATION_RESISTANCE -> insulation(reading);
            case SUPPLY_VOLTAGE -> supplyVoltage();
            case TESTER_CHECK -> testerCheck();
            case PROOF -> proof();
            default -> resistance(reading.earthSubject());
        };
    }

    private static Circuit resistance(Optional<Obligation.EarthSubject> subject) {
        if (subject.isEmpty()) {
            return round(List.of(
                    test("From the earth test of the tester"),
                    new Station(LEADS, TOP, "one lead", " by one lead"),
                    new Station(DEVICE, SIDE, "joint", ", through the joint that is judged"),
                    new Station(LEADS, BOTTOM, "other lead", ", and by the other lead back to the tester")));
        }
        return switch (subject.get()) {
            case PLUG_TO_PART ->
                round(List.of(
                        test("From the earth test of the tester, at the earth contact of its outlet"),
                        new Station(
                                LEADS,
                                TOP,
                                "earth conductor",
                                ", through the plug's earth pin and the earth conductor of the cord"),
                        new Station(DEVICE, TOP, "earth terminal", ", through the device's earth terminal"),
                        metal(),
                        part(),
                        clip()));
            case INLET_TO_PART ->
                round(List.of(
                        test("With the cord out, from the earth test of the tester"),
                        new Station(LEADS, TOP, "second lead", " by the second lead"),
                        new Station(
                                DEVICE,
                                TOP,
                                "earth pin of the inlet",
                                " to the earth pin of the inlet, the device's earth terminal"),
                        metal(),
                        part(),
                        clip()));
            case CORD ->
                round(
                        List.of(
                                test("From the earth test of the tester"),
                                new Station(LEADS, TOP, "plug's earth pin", " to the cord's plug's earth pin"),
                                new Station(
                                        LEADS,
                                        BOTTOM,
                                        "earth contact",
                                        ", through the cord's own earth conductor to the earth contact of its connector")),
                        ", and back to the tester; the device is not in the loop");
            case REFERENCE_TO_PART ->
                round(List.of(
                        test("From the earth test of the tester"),
                        new Station(LEADS, TOP, "reference earth", " by the second lead to the reference earth"),
                        new Station(
                                DEVICE,
                                TOP,
                                "protective conductor",
                                ", through the installation's protective conductor"),
                        new Station(DEVICE, SIDE, "metal", " and the metal of the plant"),
                        part(),
                        clip()));
        };
    }

    private static Station test(String phrase) {
        return new Station(TESTER, TOP, "earth test", phrase);
    }

    private static Station metal() {
        return new Station(DEVICE, SIDE, "metal", " and its metal");
    }

    private static Station part() {
        return new Station(DEVICE, BOTTOM, "part", " to the part that is read");
    }

    private static Station clip() {
        return new Station(LEADS, BOTTOM, "earth lead", ", and by the clip and the earth lead back to the tester");
    }

    private static Circuit round(List<Station> way) {
        return round(way, "");
    }

    private static Circuit round(List<Station> way, String end) {
        return new Circuit(way, end + QUOTIENT, Optional.empty(), Optional.empty(), false);
    }

    private static Circuit bondingVoltage() {
        return new Circuit(
                List.of(
                        new Station(DEVICE, SIDE, "part", "From the part, on which a voltage may stand"),
                        new Station(LEADS, BOTTOM, "lead", ", by a lead"),
                        new Station(
                                TESTER, BOTTOM, "resistor", ", through the tester's resistor that stands for a person"),
                        new Station(LEADS, TOP, "reference lead", ", by the reference lead"),
                        new Station(DEVICE, TOP, "reference earth", " to the reference earth")),
                "; whatever voltage stands between the two drives the current.",
                Optional.empty(),
                Optional.empty(),
                false);
    }

    private static Circuit insulation(Obligation reading) {
        String between = reading.insulatedFrom().orElse("earth");
        String to = between.equals("mains part") ? "the mains part, line and neutral joined," : "the " + between;
        return new Circuit(
                List.of(
                        new Station(TESTER, TOP, "one pole", "From one pole of the tester's d.c. source"),
                        new Station(LEADS, TOP, "its lead", " by its lead"),
                        new Station(DEVICE, TOP, "what is measured", " to what is measured"),
                        new Station(DEVICE, SIDE, "insulation", ", through the insulation"),
                        new Station(DEVICE, BOTTOM, between, " to " + to),
                        new Station(LEADS, BOTTOM, "second lead", " and by the second lead"),
                        new Station(TESTER, BOTTOM, "other pole", " back to the other pole")),
                ". The device is not on the mains; where its mains part is in the loop, line and neutral are joined and its"
                        + " mains switch is closed.",
                Optional.empty(),
                Optional.empty(),
                false);
    }

    private static Circuit supplyVoltage() {
        return new Circuit(
                List.of(
                        new Station(SUPPLY, TOP, "one conductor", "From one conductor of the supply"),
                        new Station(TESTER, TOP, "outlet and voltmeter", ", through the tester's outlet and voltmeter"),
                        new Station(SUPPLY, BOTTOM, "another, or earth", ", to another, or earth")),
                ", as the row says. The device is not plugged in and takes no part.",
                Optional.empty(),
                Optional.empty(),
                false);
    }

    private static Circuit testerCheck() {
        return new Circuit(
                List.of(
                        new Station(TESTER, TOP, "own source or outlet", "From the tester's own source or outlet"),
                        new Station(LEADS, TOP, "known resistor", ", through the known resistor"),
                        new Station(
                                TESTER,
                                BOTTOM,
                                "what is checked",
                                ", through what is checked of the tester: the part of it that reads")),
                ", and back.",
                Optional.empty(),
                Optional.empty(),
                false);
    }

    private static Circuit proof() {
        return new Circuit(
                List.of(
                        test("The earth test"),
                        new Station(LEADS, TOP, "lead", " looks along the lead"),
                        new Station(
                                DEVICE,
                                SIDE,
                                "earthed metal",
                                " and the earthed metal of the device, as the row says,"),
                        new Station(LEADS, BOTTOM, "way back", " for a way back")),
                ", and must find the loop open.",
                Optional.empty(),
                Optional.empty(),
                true);
    }
}
