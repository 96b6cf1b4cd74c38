package leadwright.render.edition;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import leadwright.catalog.kit.Method;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;
import leadwright.render.DocumentLines;
import leadwright.render.SamplePlans;
import leadwright.render.circuit.Circuit;
import leadwright.render.circuit.Drawn;
import leadwright.render.paper.Block;
import leadwright.render.paper.Document;
import leadwright.render.sheet.Vocabulary;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Every reading of real plans has its way of the current, told and drawn alike. */
class CircuitsOfSamplesTest {

    @ParameterizedTest(name = "{0} on {1} by {2}")
    @CsvSource({
        "brindlewick-ward-monitor, k1-marrowgate-bench, iec-62353-2014",
        "brindlewick-ward-monitor, k1-marrowgate-bench, iec-60601-1-ed3",
        "dovecote-infant-warmer, k1-marrowgate-bench, iec-60601-1-ed2",
        "mossback-bed, k1-marrowgate-bench, iec-60601-1-ed3",
        "mossback-bed, k1-marrowgate-bench, iec-62353-2014",
        "noctuary-sleep-recorder, k1-marrowgate-bench, iec-62353-2014",
        "oddlebar-rescue-set, k1-marrowgate-bench, iec-62353-2014",
        "slaterow-tilt-table, k3-fixed-plant-case, iec-62353-2014",
        "slaterow-tilt-table, k3-fixed-plant-case, bonding",
        "wickling-rhythm-card, k1-marrowgate-bench, iec-60601-1-ed3",
        "wickling-rhythm-card, k1-marrowgate-bench, us-leads-older",
    })
    void everyReadingHasItsFigure(String device, String kit, String rules) throws Exception {
        everyReadingHasItsFigure(SamplePlans.of(device, kit, rules));
    }

    /** Insulation readings, and the other word for earth. */
    @ParameterizedTest
    @ValueSource(strings = {"brindlewick-ward-monitor", "mossback-bed"})
    void insulationToo(String device) throws Exception {
        byte[] house = "leadwright: house/1\nwords: ground\ninsulation: always\n".getBytes(StandardCharsets.UTF_8);
        Plan plan = SamplePlans.of(SamplePlans.bytes(device), "k1-marrowgate-bench", "iec-62353-2014", house);
        assertThat(plan.readings())
                .anyMatch(each -> each.obligation().quantity() == QuantityKind.INSULATION_RESISTANCE);
        everyReadingHasItsFigure(plan);
    }

    private static void everyReadingHasItsFigure(Plan plan) throws Exception {
        Vocabulary words = Vocabulary.of(plan);
        Document training = TrainingEdition.of(plan, List.of(), List.of());
        List<Block.Figure> figures = training.blocks().stream()
                .filter(Block.Figure.class::isInstance)
                .map(Block.Figure.class::cast)
                .toList();
        Map<Block.Figure, Drawn> measured = new LinkedHashMap<>();
        for (Block.Figure each : figures) {
            measured.put(each, new Drawn(each.svg()));
        }
        Set<String> lines = new HashSet<>(DocumentLines.of(training));
        Set<String> looked = new HashSet<>();
        for (Reading reading : plan.readings()) {
            Circuit circuit = Ways.of(reading.obligation(), plan).said(words::say);
            if (!looked.add(circuit + " " + reading.obligation().quantity() + words.state(reading.obligation()))) {
                continue;
            }
            assertThat(lines).as(reading.id()).contains("The current: " + circuit.words());
            List<Block.Figure> its = new ArrayList<>();
            measured.forEach((figure, drawn) -> {
                if (drawn.stations().equals(circuit.labels()) && opens(drawn, circuit, reading.obligation())) {
                    its.add(figure);
                }
            });
            assertThat(its).as("%s: drawn, and drawn once", reading.id()).hasSize(1);
            String named = its.get(0).caption().text().replaceAll("^(Figure \\d+)\\..*", "$1");
            String state = words.state(reading.obligation());
            assertThat(lines)
                    .as("%s: the figure is named for its state", reading.id())
                    .anyMatch(line -> line.startsWith(named + ".") && line.contains(state)
                            || line.endsWith(named.toLowerCase(Locale.ROOT) + ".") && line.contains(state));
        }
        measured.forEach((figure, drawn) -> {
            drawn.isLegible();
            drawn.isOneLoop();
            toldInOrder(figure.alt(), drawn.stations());
        });
    }

    /** Whether the figure shows the switches as the state of the reading sets them. */
    private static boolean opens(Drawn drawn, Circuit circuit, Obligation reading) {
        boolean supply = circuit.other().isEmpty()
                || drawn.isOpen("other conductor") == (reading.state().fault() == MainsState.Fault.SUPPLY_OPEN);
        boolean inItsPlace = reading.quantity() == QuantityKind.EQUIPMENT_LEAKAGE
                && reading.method().filter(Method.DIRECT::equals).isPresent()
                && reading.state() != MainsState.INSTALLED_ON;
        boolean earth = circuit.earth().isEmpty()
                || drawn.isOpen(circuit.earth().get().name())
                        == (inItsPlace || reading.state().fault() == MainsState.Fault.EARTH_OPEN);
        return supply && earth;
    }

    private static void toldInOrder(String told, List<String> stations) {
        int at = 0;
        Set<String> seen = new HashSet<>();
        for (String each : stations) {
            assertThat(seen.add(each)).as("%s stands twice in '%s'", each, told).isTrue();
            at = told.indexOf(each, at);
            assertThat(at).as("'%s' in its place in '%s'", each, told).isNotNegative();
            at += each.length();
        }
    }

    private static final Pattern CAPACITIVE =
            Pattern.compile("2π × (\\d+) Hz × ([0-9.]+) nF × (\\d+) V = ([0-9.]+) µA");
    private static final Pattern OHM = Pattern.compile("(\\d+) V / ([0-9.]+) MΩ = ([0-9.]+) µA");

    /** Worked sums come out, and say that their figures are assumed. */
    @ParameterizedTest(name = "{0} on {1} by {2}")
    @CsvSource({
        "brindlewick-ward-monitor, k1-marrowgate-bench, iec-60601-1-ed3",
        "slaterow-tilt-table, k3-fixed-plant-case, iec-62353-2014",
        "wickling-rhythm-card, k1-marrowgate-bench, iec-60601-1-ed3",
    })
    void sumsComeOut(String device, String kit, String rules) {
        Plan plan = SamplePlans.of(device, kit, rules);
        Vocabulary words = Vocabulary.of(plan);
        int sums = 0;
        for (Reading reading : plan.readings()) {
            String sum = Sums.of(reading.obligation(), plan, words).orElse("");
            Matcher capacitive = CAPACITIVE.matcher(sum);
            if (capacitive.find()) {
                double value = 2
                        * Math.PI
                        * Double.parseDouble(capacitive.group(1))
                        * Double.parseDouble(capacitive.group(2))
                        / 1000
                        * Double.parseDouble(capacitive.group(3));
                assertThat(Double.parseDouble(capacitive.group(4))).as(sum).isCloseTo(value, within(0.51));
                assertThat(sum).contains("Assumed: ");
                sums++;
            }
            Matcher ohm = OHM.matcher(sum);
            if (ohm.find()) {
                assertThat(Double.parseDouble(ohm.group(3)))
                        .as(sum)
                        .isCloseTo(Double.parseDouble(ohm.group(1)) / Double.parseDouble(ohm.group(2)), within(0.51));
                sums++;
            }
            if (!sum.isEmpty() && reading.obligation().quantity() != QuantityKind.TESTER_CHECK) {
                assertThat(sum).startsWith("Assumed: ");
            }
        }
        assertThat(sums).isPositive();
    }

    private static org.assertj.core.data.Offset<Double> within(double offset) {
        return org.assertj.core.api.Assertions.within(offset);
    }
}
