package leadwright.planner.circuit;

import static leadwright.planner.circuit.Parts.EARTH;
import static leadwright.planner.circuit.Parts.c;
import static leadwright.planner.circuit.Parts.circuit;
import static leadwright.planner.circuit.Parts.r;
import static leadwright.planner.circuit.Parts.v;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Milliohms beside picofarads and teraohms: double precision against forty digits. */
class ConditioningTest {
    /** Far more than the 0.1 % that is asked for. */
    private static final double ENOUGH = 1e-4;

    /** Ten leads, each of a few contacts, to a part behind its insulation; read through the measuring network. */
    @ParameterizedTest(name = "contact {0} ohm, coupling {1} F, insulation {2} ohm, {3} Hz")
    @CsvSource({
        "0.01, 5e-12, 1e10, 50",
        "0.001, 5e-12, 1e10, 50",
        "0.001, 0.5e-12, 1e12, 50",
        "0.001, 0.5e-12, 1e12, 60",
        "0.001, 5e-12, 1e10, 0",
        "0.001, 5e-12, 1e12, 0",
        "1e-4, 1e-13, 1e12, 50"
    })
    void ten_leads_to_an_insulated_part(double contact, double coupling, double insulation, double hertz) {
        List<Element> all = new ArrayList<>(Network.iec60601().between("m:", "jack", EARTH));
        all.add(v("V", "line", EARTH, 230));
        all.add(c("C", "line", "inside", coupling));
        all.add(r("I", "line", "inside", insulation));
        all.add(c("E", "inside", "chassis", 100e-12));
        all.add(r("J", "inside", "chassis", insulation));
        all.add(r("P", "chassis", EARTH, 3 * contact));
        for (int lead = 1; lead <= 10; lead++) {
            all.add(r("A" + lead, "inside", "end-" + lead, 10 * contact));
            all.add(r("B" + lead, "end-" + lead, "tip-" + lead, contact));
            all.add(r("D" + lead, "tip-" + lead, "jack", contact));
            all.add(c("F" + lead, "tip-" + lead, EARTH, 1e-12));
        }
        Circuit circuit = new Circuit(all);
        double exact = StarMesh.voltage(circuit, hertz, "m:out", EARTH).size();
        assertThat(circuit.solve(hertz).volts("m:out", EARTH)).isCloseTo(exact, within(ENOUGH * exact));
    }

    /** Mains on a part: the source's current through milliohms into a picofarad. */
    @ParameterizedTest(name = "{0} ohm, {1} F, {2} ohm, {3} Hz")
    @CsvSource({"0.001, 1e-12, 1e12, 50", "0.01, 10e-12, 1e10, 50", "0.01, 1e-12, 1e10, 0", "0.001, 1e-12, 1e11, 0"})
    void a_source_through_a_chain_of_contacts(double contact, double farads, double ohms, double hertz) {
        List<Element> all = new ArrayList<>();
        all.add(v("V", "n0", EARTH, 230));
        for (int n = 0; n < 12; n++) {
            all.add(r("R" + n, "n" + n, "n" + (n + 1), contact));
            all.add(c("S" + n, "n" + (n + 1), EARTH, farads));
        }
        all.add(r("I", "n12", EARTH, ohms));
        Circuit circuit = new Circuit(all);
        double exact = StarMesh.current(circuit, hertz, "V").size();
        assertThat(circuit.solve(hertz).current("V").getMagnitude()).isCloseTo(exact, within(1e-3 * exact));
    }

    /** The differential method: microamperes between two conductors that carry 10 A. */
    @ParameterizedTest(name = "{0} F")
    @CsvSource({"1e-9", "10e-12", "1e-12"})
    void a_small_difference_of_large_currents(double farads) {
        Circuit circuit = circuit(
                v("V1", "L", EARTH, 230),
                v("V2", "N", EARTH, 0),
                r("load", "L", "N", 23),
                c("CL", "L", "frame", farads),
                c("CN", "N", "frame", farads),
                r("earth", "frame", EARTH, 0.02));
        Solved solved = circuit.solve(50);
        double difference = solved.current("V1").plus(solved.current("V2")).getMagnitude();
        StarMesh.Number exact = StarMesh.current(circuit, 50, "V1").plus(StarMesh.current(circuit, 50, "V2"));
        assertThat(difference).isCloseTo(exact.size(), within(ENOUGH * exact.size()));
    }
}
