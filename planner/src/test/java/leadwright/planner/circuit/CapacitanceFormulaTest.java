package leadwright.planner.circuit;

import static leadwright.planner.circuit.Parts.printed;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The formulas behind what the program assumes of a lead's capacitance, by examples that books print. The books' figures are as
 * the open companions to them print them; 'calc' where no book prints the answer.
 */
class CapacitanceFormulaTest {
    /** F/m. */
    private static final double VACUUM = 8.854e-12;
    /** As rounded in the figures of some books, which follow from it to the last digit. */
    private static final double ROUNDED = 8.85e-12;

    private static final double PICO = 1e12;

    private static double coaxial(double permittivity, double inner, double outer) {
        return 2 * Math.PI * VACUUM * permittivity / Math.log(outer / inner);
    }

    private static double pair(double distance, double radius) {
        return Math.PI * VACUUM / arcosh(distance / (2 * radius));
    }

    private static double pairByLogarithm(double distance, double radius) {
        return Math.PI * VACUUM / Math.log(distance / radius);
    }

    private static double overPlane(double height, double radius) {
        return 2 * Math.PI * VACUUM / arcosh(height / radius);
    }

    private static double arcosh(double x) {
        return Math.log(x + Math.sqrt(x * x - 1));
    }

    /** To neutral, of two wires at a height over earth. */
    private static double toNeutral(double distance, double radius, double height) {
        double raised = distance / (radius * Math.sqrt(1 + distance * distance / (4 * height * height)));
        return 2 * Math.PI * VACUUM / Math.log(raised);
    }

    @Test
    void coaxial_cables() {
        printed(coaxial(2.7, 0.5, 6) * PICO * ROUNDED / VACUUM, "60.42", "Bird ex. 40.3");
        printed(coaxial(3.2, 20, 60) * 1e9, "0.16", "Bird ex. 40.8");
        printed(coaxial(2.25, 0.81, 2.9) * PICO, "98.1", "calc, inputs of a University of Delaware exercise");
        printed(coaxial(1, 0.81, 2.9) * PICO, "43.6", "calc");
        // Handy form, from a coax calculator page: 7.36 er / log10(D/d) pF a foot.
        double handy = 7.36 * 2.25 / Math.log10(2.9 / 0.81) / 0.3048;
        assertThat(handy).isCloseTo(coaxial(2.25, 0.81, 2.9) * PICO, within(0.2));
    }

    @Test
    void two_parallel_wires() {
        double metre = pairByLogarithm(50, 2.5) * ROUNDED / VACUUM;
        printed(metre * PICO, "9.28", "Bird ex. 40.9");
        printed(metre * 200 * 1e6, "0.00186", "Bird ex. 40.9");
        printed(pair(50, 2.5) * 200 * 1e6 * ROUNDED / VACUUM, "0.00186", "calc, arcosh form");
        printed(pairByLogarithm(1.2, 0.004) * 1000 * 1e9 * ROUNDED / VACUUM, "4.87", "Bird ex. 40.10");
    }

    /** The shape factor is that of a buried pipe: Holman, ex. 3.1, by whose heat loss it is checked; capacitance calc. */
    @Test
    void a_wire_over_a_plane() {
        double shape = 4 * overPlane(0.20, 0.075) / VACUUM;
        printed(shape, "15.35", "Holman ex. 3.1");
        printed(0.8 * shape * 70, "859.9", "Holman ex. 3.1");
        printed(overPlane(0.20, 0.075) * PICO, "34.0", "calc");
    }

    @Test
    void two_wires_near_earth() {
        printed(toNeutral(3, 0.0075, 1e9) * PICO * ROUNDED / VACUUM, "9.28", "Theraja ex. 41.7, far from earth");
        // The book cuts off what is 9.328.
        assertThat(toNeutral(3, 0.0075, 6) * PICO * ROUNDED / VACUUM)
                .as("Theraja ex. 41.7")
                .isBetween(9.32, 9.33);
        printed(pairByLogarithm(1.5, 0.006) * PICO, "5.038", "Ray ex. 4.11, far from earth");
        printed(toNeutral(1.5, 0.006, 5) / 2 * PICO, "5.048", "Ray ex. 4.11");
    }

    /** L C = 1/v², Z0 = √(L/C). */
    @Test
    void lines() {
        printed(50 * 50 * 90e-12 * 1e9, "225", "Blake ex. 14.1");
        double beta = 3;
        double omega = 2 * Math.PI * 100e6;
        printed(beta / (omega * 70) * PICO, "68.2", "Sadiku ex. 11.1");
        printed(70 * beta / omega * 1e9, "334.2", "Sadiku ex. 11.1");
        printed(1 / (60 * 0.6 * 3e8) * PICO, "92.59", "Sadiku ex. 11.2");
    }

    /** A test lead of core radius 0.5 mm in air above metal, calc. */
    @ParameterizedTest
    @CsvSource({"5, 18.6", "20, 12.7", "50, 10.5", "100, 9.3"})
    void a_test_lead_above_a_metal_bench(double millimetres, String picoFarads) {
        printed(overPlane(millimetres, 0.5) * PICO, picoFarads, "calc");
    }
}
