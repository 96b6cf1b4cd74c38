package leadwright.planner.foresee;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.plan.MainsState;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The circuit of each reading against a general circuit simulator: {@value #COUNT} circuits to a thousandth. Where the
 * simulator is not installed, against what it printed before: netlists and results lie in the test resources. After a wanted change of
 * the circuits run this test with {@code -Dleadwright.netlists=refresh} where ngspice is installed, and look at what changed.
 */
class NgspiceTest {
    private static final int COUNT = 300;
    private static final double SHARE = 1e-3;
    /** A: where two currents cancel, what is left below this is rounding, there and here. */
    private static final double NOTHING = 1e-11;

    private static final Path FOLDER = Path.of("src", "test", "resources", "leadwright", "planner", "foresee");
    private static final Path NETLISTS = FOLDER.resolve("hookup-circuits.cir");
    private static final Path RESULTS = FOLDER.resolve("hookup-circuits.txt");
    private static final String BETWEEN = "*\n";

    private static List<HookupCircuits.Case> cases;
    private static List<Double> simulated = List.of();

    @BeforeAll
    static void simulate(@TempDir Path folder) throws IOException, InterruptedException {
        cases = HookupCircuits.drawn(COUNT);
        if (Ngspice.installed()) {
            simulated = Ngspice.read(
                    cases.stream()
                            .map(each -> each.setup().netlist(each.name()))
                            .toList(),
                    folder);
            if ("refresh".equals(System.getProperty("leadwright.netlists"))) {
                Files.createDirectories(FOLDER);
                Files.writeString(NETLISTS, netlists(), StandardCharsets.UTF_8);
                Files.writeString(RESULTS, results(), StandardCharsets.UTF_8);
            }
        }
    }

    private static String netlists() {
        return cases.stream()
                .map(each -> compact(each.setup().netlist(each.name())))
                .collect(Collectors.joining(BETWEEN));
    }

    /** Its first line, and what is not a comment. */
    private static String compact(String netlist) {
        List<String> lines = netlist.lines().toList();
        return lines.get(0) + "\n"
                + lines.stream()
                        .skip(1)
                        .filter(line -> !line.startsWith("*"))
                        .map(line -> line.replaceAll(" ;.*", "") + "\n")
                        .collect(Collectors.joining());
    }

    private static String results() {
        return simulated.stream()
                .map(each -> String.format(Locale.ROOT, "%.5e%n", each).replace("\r", ""))
                .collect(Collectors.joining());
    }

    private static List<Double> stored() throws IOException {
        return Files.readAllLines(RESULTS).stream().map(Double::parseDouble).toList();
    }

    private static List<String> apart(List<Double> printed) {
        List<String> apart = new ArrayList<>();
        for (int i = 0; i < cases.size(); i++) {
            Setup setup = cases.get(i).setup();
            double theirs = setup.meter().ofPrinted(printed.get(i));
            double ours = setup.nominal();
            boolean agree = Math.abs(ours - theirs) <= SHARE * Math.abs(theirs)
                    || Math.max(Math.abs(ours), Math.abs(theirs)) < NOTHING;
            if (!agree) {
                apart.add(cases.get(i) + ": " + ours + ", simulated " + theirs);
            }
        }
        return apart;
    }

    @Test
    void ngspice_agrees_to_a_thousandth() {
        assumeTrue(Ngspice.installed(), "skipped: needs ngspice (Debian package ngspice)");
        assertThat(apart(simulated)).isEmpty();
    }

    @Test
    void stored_results_agree_to_a_thousandth() throws IOException {
        assertThat(stored()).hasSize(COUNT);
        assertThat(apart(stored())).isEmpty();
    }

    @Test
    void stored_netlists_are_those_of_the_program() throws IOException {
        List<String> written =
                Arrays.asList(Files.readString(NETLISTS).replace("\r", "").split("(?m)^\\*\n"));
        List<String> now = Arrays.asList(netlists().split("(?m)^\\*\n"));
        assertThat(written).as("refresh with -Dleadwright.netlists=refresh").hasSameSizeAs(now);
        for (int i = 0; i < now.size(); i++) {
            assertThat(written.get(i))
                    .as("refresh with -Dleadwright.netlists=refresh")
                    .isEqualTo(now.get(i));
        }
    }

    @Test
    void stored_results_are_up_to_date() throws IOException {
        assumeTrue(Ngspice.installed(), "skipped: needs ngspice (Debian package ngspice)");
        List<Double> stored = stored();
        assertThat(stored).hasSize(COUNT);
        for (int i = 0; i < COUNT; i++) {
            double tolerance = 1e-4 * simulated.get(i) + NOTHING / 1000;
            assertThat(Math.abs(stored.get(i) - simulated.get(i)))
                    .as(cases.get(i) + ": refresh with -Dleadwright.netlists=refresh")
                    .isLessThanOrEqualTo(tolerance);
        }
    }

    @Test
    void every_kind_of_reading_and_of_supply_is_among_them() {
        Set<QuantityKind> quantities = EnumSet.noneOf(QuantityKind.class);
        Set<MainsState> states = EnumSet.noneOf(MainsState.class);
        Set<Variation> variations = EnumSet.noneOf(Variation.class);
        for (HookupCircuits.Case each : cases) {
            quantities.add(each.what().quantity());
            states.add(each.what().state());
            variations.add(each.variation());
        }
        assertThat(quantities)
                .containsExactlyInAnyOrder(
                        QuantityKind.INSULATION_RESISTANCE,
                        QuantityKind.EARTH_LEAKAGE,
                        QuantityKind.FUNCTIONAL_EARTH_LEAKAGE,
                        QuantityKind.TOUCH_CURRENT,
                        QuantityKind.TOUCH_CURRENT_BETWEEN,
                        QuantityKind.EQUIPMENT_LEAKAGE,
                        QuantityKind.APPLIED_PART_LEAKAGE,
                        QuantityKind.PATIENT_LEAKAGE,
                        QuantityKind.TOTAL_PATIENT_LEAKAGE,
                        QuantityKind.PATIENT_AUXILIARY,
                        QuantityKind.LEAD_TO_LEAD,
                        QuantityKind.MAINS_ON_APPLIED_PART,
                        QuantityKind.TOTAL_MAINS_ON_APPLIED_PART,
                        QuantityKind.MAINS_ON_UNEARTHED_METAL);
        assertThat(states)
                .containsExactlyInAnyOrderElementsOf(
                        EnumSet.complementOf(EnumSet.of(MainsState.INSTALLED_ON, MainsState.ISOLATED)));
        assertThat(variations).containsExactlyInAnyOrder(Variation.values());
        for (Class<?> meter : List.of(Meter.Across.class, Meter.Difference.class, Meter.Insulation.class)) {
            assertThat(cases).anyMatch(each -> meter.isInstance(each.setup().meter()));
        }
        assertThat(cases).extracting(HookupCircuits.Case::name).doesNotHaveDuplicates();
        for (String system : List.of("line-neutral", "split-phase", "phase-phase")) {
            assertThat(cases).anyMatch(each -> each.name().contains(system));
        }
    }
}
