package leadwright.render.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import leadwright.catalog.house.House;
import leadwright.catalog.read.DeviceReader;
import leadwright.catalog.read.HouseReader;
import leadwright.catalog.read.KitReader;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.table.RuleSets;
import leadwright.planner.Outcome;
import leadwright.planner.Plan;
import leadwright.planner.Planner;
import leadwright.planner.Request;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Joint;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Occasion;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Shortfall;
import leadwright.planner.plan.Step;
import leadwright.render.diagram.Diagrams;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What holds for the sheet of every real plan: nothing of the plan is lost on the way to paper. */
class SampleSheetsTest {

    @ParameterizedTest(name = "{0} on {1} by {2}")
    @CsvSource({
        "brindlewick-ward-monitor, k1-marrowgate-bench, iec-62353-2014",
        "dovecote-infant-warmer, k1-marrowgate-bench, iec-62353-2014",
        "oddlebar-rescue-set, k1-marrowgate-bench, iec-62353-2014",
        "slaterow-tilt-table, k3-fixed-plant-case, iec-62353-2014",
        "wickling-rhythm-card, k1-marrowgate-bench, iec-60601-1-ed3",
        "brindlewick-ward-monitor, k1-marrowgate-bench, nfpa-99-2012",
        "dovecote-infant-warmer, k1-marrowgate-bench, iec-60601-1-ed2",
        "wickling-rhythm-card, k1-marrowgate-bench, us-leads-older",
        "slaterow-tilt-table, k3-fixed-plant-case, bonding",
    })
    void nothingOfThePlanIsLost(String device, String kit, String rules) throws IOException {
        Plan plan = plan(device, kit, rules);
        String sheet = BenchSheet.xhtml(plan, Diagrams.draw(plan), List.of());

        assertThat(found(sheet, "<td class=\"no\">(R\\d+)</td>"))
                .as("one row a reading, in step order")
                .isEqualTo(plan.readings().stream().map(Reading::id).toList());
        assertThat(found(sheet, ">(OUTLET OFF|ISOLATED)[^<]*Change the wiring to hookup (H\\d+)"))
                .as("one change of wiring a visit after the first")
                .hasSize(visits(plan).size() - 1);
        List<String> lists = found(sheet, "colspan=\"2\">Hookup (H\\d+)");
        assertThat(lists).as("a list of wires a visit").isEqualTo(visits(plan));
        int wires = visits(plan).stream()
                .map(id -> plan.hookup(id).orElseThrow())
                .mapToInt(hookup -> hookup.chains().size())
                .sum();
        wires += earthLeads(plan);
        assertThat(found(sheet, "<span class=\"(wire)\">"))
                .as("every wire, each time")
                .hasSize(wires);
        for (Hookup hookup : plan.hookups()) {
            if (!hookup.chains().isEmpty()) {
                int count = hookup.chains().size();
                assertThat(sheet).contains(count + " of " + count);
            }
        }
        for (Step step : plan.steps()) {
            if (step.does() == Step.Act.START
                    || step.does() == Step.Act.SHUT_DOWN
                    || step.does() == Step.Act.WAIT
                    || step.does() == Step.Act.MAKE_SAFE) {
                assertThat(sheet).contains(step.text());
            }
        }
        assertThat(found(sheet, "(<svg )")).isNotEmpty();
        stepsOfTheEarthLeadHaveTheirNumbers(plan, sheet);
        mainsOnAPartIsSaidBeforeItsFirstRow(plan, sheet);
    }

    private static void stepsOfTheEarthLeadHaveTheirNumbers(Plan plan, String sheet) {
        String text = sheet.replaceAll("(?s)<svg.*?</svg>", "");
        for (Step step : plan.steps()) {
            boolean lead = step.does() == Step.Act.JOIN && step.account() == Step.Account.EARTH_LEAD
                    || step.does() == Step.Act.CLIP
                    || step.does() == Step.Act.NULL
                    || step.does() == Step.Act.LOOK && step.hookup().isPresent();
            if (lead) {
                assertThat(text)
                        .as("%d %s", step.number(), step.text())
                        .containsPattern("[ >\u00a0]" + step.number() + "[ <)]");
                if (step.text().contains("full length")) {
                    assertThat(text).contains("unwound to its full length");
                }
            }
        }
    }

    /** Each table that holds such a row says it in its head, which every page repeats; no other table says it. */
    private static void mainsOnAPartIsSaidBeforeItsFirstRow(Plan plan, String sheet) {
        Set<String> ids = new HashSet<>();
        plan.readings().stream()
                .filter(reading -> reading.obligation().phase() == Obligation.Phase.MAINS_ON_PART)
                .forEach(reading -> ids.add(reading.id()));
        for (String table : found(sheet, "(?s)(<table class=\"rows.*?</table>)")) {
            List<String> rows = found(table, "<td class=\"no\">(R\\d+)</td>");
            String head = table.contains("<thead>") ? table.substring(0, table.indexOf("</thead>")) : "";
            if (!rows.isEmpty()) {
                assertThat(head.contains("MAINS ON THE PART"))
                        .as(rows.toString())
                        .isEqualTo(ids.containsAll(rows));
                assertThat(rows.stream().filter(ids::contains).count()).isIn(0L, (long) rows.size());
            }
            if (table.contains("class=\"heading\"")) {
                assertThat(head).as("a heading is repeated").contains("class=\"heading\"");
            }
        }
    }

    private static List<String> visits(Plan plan) {
        List<String> visits = new ArrayList<>();
        for (Step step : plan.steps()) {
            step.hookup().ifPresent(id -> {
                if (visits.isEmpty() || !visits.get(visits.size() - 1).equals(id)) {
                    visits.add(id);
                }
            });
        }
        return visits;
    }

    private static List<String> found(String sheet, String pattern) {
        List<String> found = new ArrayList<>();
        Matcher matcher = Pattern.compile(pattern).matcher(sheet);
        while (matcher.find()) {
            found.add(matcher.group(1));
        }
        return found;
    }

    @Test
    void everyInsulationRowSaysAgainstWhatItIsRead() throws IOException {
        House house = HouseReader.read(
                        "house", "leadwright: house/1\ninsulation: always\n".getBytes(StandardCharsets.UTF_8))
                .orThrow();
        Plan plan = plan("brindlewick-ward-monitor", "k1-marrowgate-bench", "iec-62353-2014", house);
        String sheet = BenchSheet.xhtml(plan, Diagrams.draw(plan), List.of());
        List<String> rows = found(sheet, "<b>([^<]* against the [^<]*)</b>");
        assertThat(rows)
                .hasSize((int) plan.readings().stream()
                        .filter(each -> each.obligation().quantity() == QuantityKind.INSULATION_RESISTANCE)
                        .count())
                .doesNotHaveDuplicates()
                .contains("Mains part against the protective earth")
                .contains("ECG, all 10 against the mains part: jack\u00a01");
    }

    /** Prices, purchases, proofs and totals of time are for others: the standing edition has them. */
    @ParameterizedTest(name = "{0} on {1} by {2}")
    @CsvSource({
        "noctuary-sleep-recorder, k1-marrowgate-bench, iec-62353-2014",
        "oddlebar-rescue-set, k1-marrowgate-bench, iec-62353-2014",
        "slaterow-tilt-table, k3-fixed-plant-case, iec-62353-2014",
        "wickling-rhythm-card, k1-marrowgate-bench, iec-60601-1-ed3",
    })
    void nothingThatIsNotForTheBench(String device, String kit, String rules) throws IOException {
        Plan plan = plan(device, kit, rules);
        String sheet = BenchSheet.xhtml(plan, Diagrams.draw(plan), List.of());
        assertThat(sheet)
                .doesNotContainPattern("\\d (GBP|EUR|USD)\\b")
                .doesNotContainPattern(
                        "Would do:|[Bb]ench time|proven (fewest|least|the fewest)|at least \\d+ (s|min)\\b")
                .doesNotContain(plan.hookupsProof().argument())
                .doesNotContain(plan.timeProof().argument());
        for (Shortfall each : plan.shortfalls()) {
            assertThat(sheet).contains("Falls short: not measured today").contains(">" + each.about() + "<");
            each.additions().forEach(addition -> assertThat(sheet).doesNotContain(addition));
        }
    }

    /** Under the band that forbids it nobody starts, stops or plugs. */
    @ParameterizedTest(name = "{0} on {1} by {2}")
    @CsvSource({
        "noctuary-sleep-recorder, k1-marrowgate-bench, iec-62353-2014",
        "brindlewick-ward-monitor, k1-marrowgate-bench, iec-60601-1-ed3",
        "oddlebar-rescue-set, k1-marrowgate-bench, iec-62353-2014",
    })
    void nothingIsStartedOrPluggedUnderTheBandOfMainsOnAPart(String device, String kit, String rules)
            throws IOException {
        Plan plan = plan(device, kit, rules);
        List<Course.Group> banded = Course.of(plan).stretches().stream()
                .flatMap(stretch -> stretch.groups().stream())
                .filter(Course.Group::mains)
                .toList();
        assertThat(banded).isNotEmpty().allSatisfy(group -> {
            assertThat(group.readings()).isNotEmpty();
            assertThat(acts(group))
                    .noneMatch(step -> step.does() == Step.Act.START
                            || step.does() == Step.Act.SHUT_DOWN
                            || step.does() == Step.Act.RESTORE
                            || step.does() == Step.Act.SWITCH && step.place().isEmpty());
        });
        // What was under the band has its line all the same.
        List<Step> all = Course.of(plan).stretches().stream()
                .flatMap(stretch -> stretch.groups().stream())
                .flatMap(group -> acts(group).stream())
                .toList();
        assertThat(all)
                .containsAll(plan.steps().stream()
                        .filter(step -> step.does() == Step.Act.SHUT_DOWN)
                        .toList());
    }

    private static List<Step> acts(Course.Group group) {
        return group.lines().stream()
                .filter(Course.Act.class::isInstance)
                .map(line -> ((Course.Act) line).step())
                .toList();
    }

    @ParameterizedTest(name = "{0} on {1} by {2}")
    @CsvSource({
        "noctuary-sleep-recorder, k1-marrowgate-bench, iec-62353-2014",
        "brindlewick-ward-monitor, k1-marrowgate-bench, iec-62353-2014",
        "oddlebar-rescue-set, k1-marrowgate-bench, iec-62353-2014",
    })
    void theOutletGoesOffAndTheHookupIsStrippedBeforeTheClosingChecks(String device, String kit, String rules)
            throws IOException {
        Plan plan = plan(device, kit, rules);
        String sheet = BenchSheet.xhtml(plan, List.of(), List.of());
        int stripped = plan.steps().stream()
                .filter(step -> step.does() == Step.Act.RESTORE)
                .findFirst()
                .orElseThrow()
                .number();
        int off = sheet.lastIndexOf(" Outlet off.");
        int strip = sheet.indexOf(stripped + " Strip the hookup");
        int checks = sheet.lastIndexOf("CHECKS, not plugged in");
        assertThat(off).isPositive();
        assertThat(strip).isGreaterThan(off);
        assertThat(checks).isGreaterThan(strip);
        assertThat(sheet).doesNotContain("CHECKS<");
    }

    @Test
    void aRowSaysThatTheTouchProbeIsUsedAndWhatTheOtherEndIs() throws IOException {
        Plan plan = plan("brindlewick-ward-monitor", "k1-marrowgate-bench", "iec-60601-1-ed3");
        assertThat(BenchSheet.xhtml(plan, List.of(), List.of()))
                .contains("touch probe on Bezel screw<")
                .contains("Bezel screw to ECG out: jack\u00a04 to 5<");
    }

    private static Plan plan(String device, String kit, String rules) throws IOException {
        return plan(device, kit, rules, House.defaults());
    }

    private static Plan plan(String device, String kit, String rules, House house) throws IOException {
        Outcome outcome = Planner.plan(new Request(
                DeviceReader.read(device, sample(device)).orThrow(),
                KitReader.read(kit, sample(kit)).orThrow(),
                RuleSets.builtIn().find(rules).orElseThrow(),
                house,
                Occasion.RECURRENT,
                Optional.empty()));
        assertThat(outcome).isInstanceOf(Outcome.Planned.class);
        return ((Outcome.Planned) outcome).plan();
    }

    private static byte[] sample(String name) throws IOException {
        return Files.readAllBytes(Path.of("../samples", name + ".yaml"));
    }

    /** Earth leads that are plugged at the first reading of each visit of their hookup. */
    private static int earthLeads(Plan plan) {
        Set<String> plugged = new HashSet<>();
        String standing = "";
        int leads = 0;
        for (Step step : plan.steps()) {
            step.joint().map(Joint::to).ifPresent(to -> {
                if (step.does() == Step.Act.JOIN) {
                    plugged.add(to);
                } else {
                    plugged.remove(to);
                }
            });
            if (step.does() == Step.Act.READ && !step.hookup().orElse("").equals(standing)) {
                standing = step.hookup().orElse("");
                leads += (int) plan.hookup(standing).stream()
                        .flatMap(hookup -> hookup.earth().stream())
                        .filter(path -> plugged.contains(path.socket()))
                        .count();
            }
        }
        return leads;
    }
}
