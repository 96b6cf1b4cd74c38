package leadwright.planner.circuit;

import static leadwright.planner.circuit.Parts.EARTH;
import static leadwright.planner.circuit.Parts.ammeter;
import static leadwright.planner.circuit.Parts.c;
import static leadwright.planner.circuit.Parts.printed;
import static leadwright.planner.circuit.Parts.r;
import static leadwright.planner.circuit.Parts.v;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a bench makes of mains, filters, leads and sources; all figures calc. */
class BenchFactsTest {
    private static final double LOAD = 300;

    /** Two filter capacitors to the frame, whose current to earth is read; a conductor may be left open. */
    private static double milliAmperes(
            double lineFarads, double neutralFarads, List<Element> supply, boolean load, double hertz) {
        List<Element> all = new ArrayList<>(supply);
        all.add(c("CL", "L", "frame", lineFarads));
        all.add(c("CN", "N", "frame", neutralFarads));
        all.add(ammeter("A", "frame", EARTH));
        if (load) {
            all.add(r("load", "L", "N", LOAD));
        }
        return new Circuit(all).solve(hertz).current("A").getMagnitude() * 1e3;
    }

    private static List<Element> lineNeutral(double volts, boolean reversed) {
        String live = reversed ? "N" : "L";
        String other = reversed ? "L" : "N";
        return List.of(v("V1", live, EARTH, volts), v("V2", other, EARTH, 0));
    }

    private static List<Element> split(double volts) {
        return List.of(v("V1", "L", EARTH, volts / 2), v("V2", "N", EARTH, volts / 2, 180));
    }

    @Test
    void the_capacitor_on_the_live_side_counts_and_reversing_swaps_the_two() {
        double normal = milliAmperes(4.7e-9, 2.2e-9, lineNeutral(230, false), true, 50);
        double reversed = milliAmperes(4.7e-9, 2.2e-9, lineNeutral(230, true), true, 50);
        printed(normal, "0.340", "calc");
        printed(reversed, "0.159", "calc");
        assertThat(milliAmperes(2.2e-9, 4.7e-9, lineNeutral(230, true), true, 50))
                .isCloseTo(normal, within(1e-9));
    }

    @Test
    void neutral_open_with_the_load_switched_on_gives_the_sum() {
        List<Element> open = List.of(v("V1", "L", EARTH, 230));
        double sum = milliAmperes(4.7e-9, 2.2e-9, open, true, 50);
        printed(sum, "0.499", "calc");
        double both = milliAmperes(4.7e-9, 2.2e-9, lineNeutral(230, false), true, 50)
                + milliAmperes(4.7e-9, 2.2e-9, lineNeutral(230, true), true, 50);
        assertThat(sum).isCloseTo(both, within(both * 1e-4));
        // Switched off behind its capacitors nothing ties the far one to the live side.
        assertThat(milliAmperes(4.7e-9, 2.2e-9, open, false, 50))
                .isCloseTo(milliAmperes(4.7e-9, 2.2e-9, lineNeutral(230, false), false, 50), within(1e-9));
    }

    /** 4.7 nF a side, 240 V 60 Hz. */
    @Test
    void split_phase_with_equal_capacitors() {
        assertThat(milliAmperes(4.7e-9, 4.7e-9, split(240), true, 60)).isCloseTo(0, within(1e-12));
        double open = milliAmperes(4.7e-9, 4.7e-9, List.of(split(240).get(0)), true, 60);
        printed(open, "0.425", "calc");
        printed(milliAmperes(4.7e-9, 4.7e-9, lineNeutral(240, false), true, 60), "0.425", "calc");
        double lineNeutralOpen = milliAmperes(4.7e-9, 4.7e-9, List.of(v("V1", "L", EARTH, 240)), true, 60);
        printed(lineNeutralOpen, "0.850", "calc; with a load of no resistance 0.851");
        assertThat(open).isCloseTo(lineNeutralOpen / 2, within(1e-9));
    }

    /** Ten leads of half a metre at 100 pF a metre, 230 V 50 Hz, and one metre. */
    @Test
    void leads_draw_a_current_of_their_own() {
        List<Element> leads = new ArrayList<>();
        leads.add(v("V", "source", EARTH, 230));
        for (int lead = 1; lead <= 10; lead++) {
            leads.add(r("R" + lead, "source", "lead-" + lead, 0.02));
            leads.add(c("C" + lead, "lead-" + lead, EARTH, 50e-12));
        }
        printed(new Circuit(leads).solve(50).current("V").getMagnitude() * 1e6, "36", "calc");
        printed(Parts.across(100e-12, 230, 50) * 1e6, "7.2", "calc");
    }

    /** A source of 230 V that a resistance limits to 3.5 mA: what would be 5 mA. */
    @Test
    void a_raw_source_reads_low() {
        double limiting = 230 / 3.5e-3;
        double ohms = 230 / 5e-3;
        double farads = 1 / (2 * Math.PI * 50 * ohms);
        printed(raw(limiting, r("leak", "part", EARTH, ohms), 230), "2.06", "calc");
        printed(raw(limiting, c("leak", "part", EARTH, farads), 230), "2.87", "calc");
        printed(raw(limiting, r("leak", "part", EARTH, 1e-6), 230), "3.5", "calc, a dead short");
        printed(raw(limiting, r("leak", "part", EARTH, 230 / 50e-6), 230) * 1000, "49.3", "calc");
    }

    private static double raw(double limiting, Element leak, double volts) {
        return Parts.circuit(v("V", "source", EARTH, volts), r("limit", "source", "part", limiting), leak)
                        .solve(50)
                        .current("V")
                        .getMagnitude()
                * 1e3;
    }

    /** 25 A from 6 V: whether a loop of this length and size lets it through. */
    @Test
    void compliance_of_a_source_counts_the_whole_loop() {
        printed(6.0 / 25, "0.24", "calc");
        printed(loop(18 * 7.98e-3), "0.144", "calc, 18 m of 2.5 mm2 class 5");
        printed(loop(20 * 13.3e-3), "0.266", "calc, 20 m of 1.5 mm2 class 5");
        assertThat(6 / loop(18 * 7.98e-3)).isGreaterThan(25);
        assertThat(6 / loop(20 * 13.3e-3)).isLessThan(25);
    }

    private static double loop(double ohms) {
        Solved solved = Parts.circuit(
                        v("V", "a", EARTH, 6), r("out", "a", "b", ohms / 2), r("back", "b", EARTH, ohms / 2))
                .solve(50);
        return 6 / solved.current("V").getMagnitude();
    }
}
