package leadwright.catalog.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * Published worked examples of textbooks, as printed by the open Python and Scilab companions to them. Each has the
 * printed answer, with the rounding it was printed to, and the full value computed again from the example's inputs.
 */
class WireTest {

    private record Example(String source, double got, double printed, double rounding, double full) {}

    @TestFactory
    Stream<DynamicTest> published_examples() {
        return Stream.of(
                        // W1
                        new Example(
                                "Bird, Electrical Circuit Theory and Technology, ex. 3.7",
                                Wire.resistance(1.7e-8, 1200, Wire.area(0.012)),
                                0.180,
                                0.0005,
                                0.18038),
                        // W2a, in feet and circular mils: the formula keeps any one set of units
                        new Example(
                                "Boylestad, Introductory Circuit Analysis, ex. 3.1",
                                Wire.resistance(10.37, 100, 400),
                                2.59,
                                0.005,
                                2.5925),
                        // W2b, ohms per 1000 ft
                        new Example("Boylestad ex. 3.4", Wire.resistance(0.6282, 650, 1000), 0.408, 0.0005, 0.40833),
                        // W2c, metric: 100 ft of 0.032 cm
                        new Example(
                                "Boylestad ex. 3.7, metric",
                                Wire.resistance(1.723e-8, 100 * 0.3048, Wire.area(0.00032)),
                                6.5,
                                0.05,
                                6.53),
                        // W2c, circular mils: number 28 has 159.8 of them
                        new Example(
                                "Boylestad ex. 3.7, circular mils",
                                Wire.resistance(10.37, 100, 159.8),
                                6.5,
                                0.05,
                                6.49),
                        // W2d, by the inferred zero of copper
                        new Example(
                                "Boylestad ex. 3.9", 50 * Conductors.builtIn().warming(20, 100), 65.72, 0.005, 65.717),
                        new Example(
                                "Boylestad ex. 3.10", 30 * Conductors.builtIn().warming(0, -40), 24.88, 0.005, 24.883),
                        // W3
                        new Example(
                                "Tooley, Electronic Circuits, ex. 1.17",
                                Wire.resistance(1.724e-8, 8, 1e-6),
                                0.14,
                                0.005,
                                0.13792),
                        // W4, volts at 5 A
                        new Example("Tooley ex. 1.18", 5 * Wire.resistance(1.724e-8, 20, 1e-6), 1.72, 0.005, 1.724),
                        // W5
                        new Example(
                                "Hambley, Electrical Engineering, ex. 1.4",
                                Wire.resistance(1.72e-8, 10, Wire.area(2.05e-3)),
                                0.05,
                                0.005,
                                0.05211),
                        // W6
                        new Example(
                                "Bueche, Principles of Physics, ex. 17.3",
                                Wire.resistance(1.7e-8, 40, 0.0331e-4),
                                0.205,
                                0.0005,
                                0.20544),
                        // W7
                        new Example(
                                "Sedha, Applied Electronics, ex. 3.8",
                                Wire.resistance(1.7e-8, 120, Wire.area(2.5e-3)),
                                0.416,
                                0.0005,
                                0.41558),
                        // W8
                        new Example(
                                "Robertson, Fundamental Electrical and Electronic Principles, ex. 1.17",
                                Wire.resistance(1.8e-8, 250, Wire.area(0.5e-3)),
                                22.92,
                                0.005,
                                22.918),
                        // W9
                        new Example(
                                "Schultz, Grob's Basic Electronics, ex. 11-3",
                                Wire.resistance(10.4, 100, 1022),
                                1.02,
                                0.005,
                                1.0176),
                        new Example("Schultz ex. 11-4", Wire.resistance(10.4, 100, 509.5), 2.04, 0.005, 2.0412),
                        // W10
                        new Example("Bird ex. 3.8", 100 * Wire.warming(0.0043, 0, 0, 70), 130.1, 0.05, 130.1),
                        new Example("Bird ex. 3.11", 10 * Wire.warming(0.004, 20, 20, 100), 13.2, 0.05, 13.2),
                        new Example("Bird ex. 3.13", 200 * Wire.warming(0.004, 0, 20, 90), 252, 0.5, 251.85),
                        // W11, an inverse example: 3.2 mm2 is the answer for 0.25 ohm
                        new Example("Bird ex. 3.5", Wire.resistance(2e-8, 40, 3.2e-6), 0.25, 0.005, 0.25))
                .map(example -> DynamicTest.dynamicTest(example.source(), () -> {
                    assertThat(example.got()).isCloseTo(example.printed(), within(example.rounding()));
                    assertThat(example.got()).isCloseTo(example.full(), within(example.full() * 5e-4));
                }));
    }
}
