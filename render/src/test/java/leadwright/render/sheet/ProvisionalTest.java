package leadwright.render.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.house.House;
import leadwright.catalog.read.DeviceReader;
import leadwright.catalog.read.HouseReader;
import leadwright.catalog.read.KitReader;
import leadwright.catalog.rules.RuleSet;
import leadwright.catalog.table.RuleSets;
import leadwright.planner.Outcome;
import leadwright.planner.Plan;
import leadwright.planner.Planner;
import leadwright.planner.Request;
import leadwright.planner.plan.Occasion;
import leadwright.render.diagram.Diagrams;
import leadwright.render.export.PlanJson;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Documents call a result provisional while it rests on a limit that nobody confirmed, and show what the house changed. */
class ProvisionalTest {
    private static final List<String> SIGNS = List.of("Result (provisional)", "not yet confirmed, see the back");

    private static Plan plan(String rules, String house) throws IOException {
        RuleSet set = RuleSets.builtIn().find(rules).orElseThrow();
        House read = HouseReader.read("house", ("leadwright: house/1\n" + house).getBytes(StandardCharsets.UTF_8))
                .orThrow();
        Outcome outcome = Planner.plan(new Request(
                DeviceReader.read("device", bytes("brindlewick-ward-monitor")).orThrow(),
                KitReader.read("kit", bytes("k1-marrowgate-bench")).orThrow(),
                set,
                read,
                Occasion.RECURRENT,
                Optional.empty()));
        return ((Outcome.Planned) outcome).plan();
    }

    private static byte[] bytes(String sample) throws IOException {
        return Files.readAllBytes(Path.of("..", "samples", sample + ".yaml"));
    }

    private static String sheet(Plan plan) {
        return BenchSheet.xhtml(plan, Diagrams.draw(plan), List.of());
    }

    private static String confirming(List<String> limits, String edition) {
        StringBuilder house = new StringBuilder("confirmed:\n");
        limits.forEach(limit -> house.append("  - {limit: ")
                .append(limit)
                .append(", edition: \"")
                .append(edition)
                .append("\", by: A. Tester, date: 2027-01-10}\n"));
        return house.toString();
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(strings = {"iec-62353-2014", "nfpa-99-2012"})
    void aResultIsProvisionalUntilEveryLimitItRestsOnIsConfirmed(String rules) throws IOException {
        Plan before = plan(rules, "");
        List<String> limits = before.unconfirmedLimits();
        assertThat(limits).hasSizeGreaterThan(1);
        assertThat(sheet(before)).contains(SIGNS).contains(limits);

        String edition = before.rules().edition();
        Plan allButOne = plan(rules, confirming(limits.subList(1, limits.size()), edition));
        assertThat(allButOne.unconfirmedLimits()).containsExactly(limits.get(0));
        assertThat(sheet(allButOne)).contains("Result (provisional)").contains("1 limit not yet confirmed");

        Plan confirmed = plan(rules, confirming(limits, edition));
        assertThat(confirmed.unconfirmedLimits()).isEmpty();
        assertThat(sheet(confirmed)).doesNotContain(SIGNS).contains("Result: ");
        assertThat(PlanJson.of(confirmed)).contains("\"unconfirmed-limits\": [ ]");

        Plan otherEdition = plan(rules, confirming(limits, "another"));
        assertThat(sheet(otherEdition)).contains(SIGNS);
    }

    @Test
    void whatTheHouseChangedStandsOnSheetAndPlan() throws IOException {
        Plan plan = plan("iec-62353-2014", """
                tighter: [{limit: iec-62353-part-direct-cf, at-most: 40 uA, because: heart ward}]
                extra-tests: [{quantity: touch-current, because: patients sit beside it}]
                join-stricter: [{type: CF, each: connection, because: catheters}]
                methods: [alternative, direct]
                decision: guard-band
                replug-under-power: after-earth-and-touch
                """);
        List<String> changes = List.of(
                "house rules: limit iec-62353-part-direct-cf 50 uA tightened to 40 uA: heart ward",
                "house rules: also reads touch-current: patients sit beside it",
                "house rules: reads each connection of type CF parts on its own as well: catheters",
                "house rules: leakage methods in this order: alternative, direct",
                "house rules: decision rule: guard-band",
                "house rules: re-plugging under power: after-earth-and-touch");
        assertThat(plan.warnings()).containsAll(changes);
        assertThat(sheet(plan)).contains(changes);
        assertThat(PlanJson.of(plan)).contains(changes);
    }

    @Test
    void aHouseThatChangesNothingIsNotSpokenOf() throws IOException {
        assertThat(plan("iec-62353-2014", "").warnings()).noneMatch(text -> text.startsWith("house rules"));
    }
}
