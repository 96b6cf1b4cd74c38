package leadwright.planner.circuit;

import static leadwright.planner.circuit.Parts.EARTH;
import static leadwright.planner.circuit.Parts.across;
import static leadwright.planner.circuit.Parts.ammeter;
import static leadwright.planner.circuit.Parts.c;
import static leadwright.planner.circuit.Parts.circuit;
import static leadwright.planner.circuit.Parts.i;
import static leadwright.planner.circuit.Parts.printed;
import static leadwright.planner.circuit.Parts.r;
import static leadwright.planner.circuit.Parts.v;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Exercises with an answer that somebody published, solved as circuits. */
class PublishedCurrentsTest {
    private static final double MILLI = 1e3;
    private static final double MICRO = 1e6;

    /** The check column is calc. */
    @ParameterizedTest(name = "{0}: {1} at {2} V, {3} Hz")
    @CsvSource({
        "'textbook solution, holooly.com/?p=1233606', 100e-9, 240, 50, 1e3, 7.5, 7.54",
        "'diyaudio forum, thread 59315', 4.7e-9, 240, 50, 1e3, 0.354, 0.3544",
        "'tutorsglobe', 2e-6, 10, 1000, 1, 0.126, 0.1257",
        "'NCERT exercise, esaral', 60e-6, 110, 60, 1, 2.49, 2.488",
        "'vidyadip', 1e-6, 200, 50, 1, 0.0628, 0.06283"
    })
    void a_capacitor_across_the_mains(
            String source, double farads, double volts, double hertz, double unit, String published, String check) {
        double amperes = across(farads, volts, hertz) * unit;
        printed(amperes, published, source);
        printed(amperes, check, "calc");
    }

    @Test
    void reactance_of_100_nF_at_50_Hz() {
        double ohms = 240 / across(100e-9, 240, 50);
        printed(ohms / 1000, "31.8", "textbook solution, holooly.com/?p=1233606");
        printed(ohms / 1000, "31.83", "calc");
    }

    @Test
    void a_capacitor_at_a_peak_voltage_and_an_angular_frequency() {
        double peak = across(500e-12, 160, 377 / (2 * Math.PI)) * MICRO;
        printed(peak, "30", "isolution.pro et13509625");
        printed(peak, "30.16", "calc");
        printed(peak / Math.sqrt(2), "21.3", "calc");
    }

    @Test
    void a_microfarad_at_200_V_and_100_rad_a_second() {
        printed(across(1e-6, 200, 100 / (2 * Math.PI)) * MILLI, "20.0", "quantumstudy");
    }

    @Test
    void twenty_microamperes_through_300_ohm() {
        double volts = circuit(i("I", EARTH, "heart", 20e-6), r("R", "heart", EARTH, 300))
                .solve(50)
                .volts("heart", EARTH);
        printed(volts * MILLI, "6.00", "OpenStax College Physics, problem");
    }

    /** Four terminals: what the leads drop is not in what is read. */
    @Test
    void four_terminals() {
        double volts = circuit(
                        i("I", EARTH, "force", 0.25),
                        r("lead", "force", "part", 0.15),
                        r("object", "part", "far", 0.2),
                        r("back", "far", EARTH, 0.15))
                .solve(0)
                .volts("part", "far");
        printed(volts, "0.05", "Japanese clinical-engineer exam, 30 pm Q43");
        printed(volts / 0.25, "0.200", "calc");
    }

    @Test
    void a_body_of_325_kilohm_at_120_V() {
        double amperes = circuit(v("V", "line", EARTH, 120), r("R", "line", EARTH, 325e3))
                .solve(60)
                .current("V")
                .getMagnitude();
        printed(amperes * MILLI, "0.369", "qammunity");
        printed(amperes * MILLI, "0.3692", "calc");
    }

    /** Question published (transtutors 11841554); answer calc. Protective earth is broken; body resistances neglected. */
    @Test
    void a_recorder_on_a_bed_with_a_broken_earth() {
        Element[] bed = {
            v("V", "line", EARTH, 230),
            c("line-neutral", "line", EARTH, 4.7e-9),
            c("line-earth", "line", "frame", 4.7e-9),
            c("neutral-earth", "frame", EARTH, 4.7e-9)
        };
        Element isolation = c("isolation", "frame", "patient", 400e-12);
        Circuit patient = circuit(bed[0], bed[1], bed[2], bed[3], isolation, ammeter("A", "patient", EARTH));
        printed(patient.solve(50).current("A").getMagnitude() * MICRO, "13.86", "calc");
        Circuit shorted = circuit(bed[0], bed[1], bed[2], bed[3], ammeter("A", "frame", EARTH));
        printed(shorted.solve(50).current("A").getMagnitude() * MICRO, "339.6", "calc");
        Circuit open = circuit(bed[0], bed[1], bed[2], bed[3]);
        printed(open.solve(50).volts("frame", EARTH), "115", "calc, Thevenin voltage");
        double behind = shorted.solve(50).current("A").getMagnitude() / 115 / (2 * Math.PI * 50);
        printed(behind * 1e9, "9.4", "calc, Thevenin capacitance");
    }

    /** Question published (transtutors 13709122); answer calc. */
    @Test
    void a_patient_beside_an_earth_wire() {
        printed(patientShare(1), "0.2395", "calc");
        printed(patientShare(33.333), "7.5", "calc");
    }

    private static double patientShare(double groundOhms) {
        return circuit(
                                i("I", EARTH, "case", 120e-6),
                                r("patient", "case", EARTH, 500),
                                r("ground", "case", EARTH, groundOhms))
                        .solve(60)
                        .volts("case", EARTH)
                / 500
                * MICRO;
    }

    /** Question published (transtutors 8957721); answer calc. */
    @Test
    void a_displacement_current_through_an_electrode() {
        double volts = circuit(i("I", EARTH, "lead", 200e-9), r("electrode", "lead", EARTH, 20e3))
                .solve(50)
                .volts("lead", EARTH);
        printed(volts * MILLI, "4", "calc");
    }

    /** Examination bank [MG]: 17 mV peak to peak at the output, taken as a sine of low frequency. */
    @Test
    void output_of_the_measuring_network_read_as_a_current() {
        double volts = 17e-3 / (2 * Math.sqrt(2));
        printed(volts * MILLI, "6.0", "calc");
        printed(volts / Network.iec60601().divisor() * MICRO, "6.0", "calc");
        // The same the other way round: this current gives this voltage at a low frequency.
        printed(6.01e-6 * Network.iec60601().transferImpedance(1) * 2 * Math.sqrt(2) * MILLI, "17", "exam bank [MG]");
    }

    /** Examination bank [MG]: rule of thumb a tenth at 10 kHz and a hundredth at 100 kHz; the exact values are calc. */
    @Test
    void high_frequencies_into_the_measuring_network() {
        Network network = Network.iec60601();
        double exact = 10e-3 * network.transferImpedance(100e3) * MILLI;
        printed(exact, "96.5", "calc");
        printed(exact / 100, "1", "exam bank [MG], rule of thumb 100 mV");
        printed(5 * network.weight(20e3), "0.241", "calc");
        printed(5 * network.weight(20e3) / 0.05, "5", "exam bank [MG], rule of thumb 0.25 mA");
    }
}
