package leadwright.planner.reach;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.table.RuleSets;
import leadwright.planner.Outcome;
import leadwright.planner.Planner;
import leadwright.planner.Request;
import leadwright.planner.SamplePlans;
import org.junit.jupiter.api.Test;

/** What a kit does for devices, and one piece more. */
class KitReportTest {
    private final List<Request> asked = new ArrayList<>();

    private Outcome plan(Request request) {
        asked.add(request);
        return Planner.plan(request);
    }

    private KitReport report(Kit kit, String... files) {
        List<KitReport.Given> given = new ArrayList<>();
        for (String file : files) {
            given.add(new KitReport.Given(file, SamplePlans.device(file)));
        }
        return KitReport.of(
                kit, given, RuleSets.builtIn().find("iec-62353-2014").orElseThrow(), House.defaults(), this::plan);
    }

    private static Kit snapPins(int stock) {
        Kit kit = SamplePlans.kit("k1-marrowgate-bench.yaml");
        List<KitItem> items = new ArrayList<>(kit.items());
        items.replaceAll(item -> item.id().equals("snap-pin") ? item.withStock(stock) : item);
        return new Kit(kit.name(), kit.tester(), items, kit.checks(), kit.connectors());
    }

    /** The card has 3 snap wires: with 2 snap pins one is missing, and one more is what helps. */
    @Test
    void the_missing_pin_is_what_one_more_of_helps() {
        int wires = (int) SamplePlans.device("wickling-rhythm-card.yaml").connections().stream()
                .filter(each -> each.terminal().equals("snap-socket"))
                .count();
        assertThat(wires).isGreaterThan(1);
        KitReport report = report(snapPins(wires - 1), "wickling-rhythm-card.yaml");
        assertThat(report.full()).isFalse();
        assertThat(report.devices().get(0).stopped()).isPositive();
        assertThat(report.more()).isNotEmpty();
        OneMore.Change best = report.more().get(0);
        assertThat(best.piece().item().id()).isEqualTo("snap-pin");
        assertThat(best.readings()).isEqualTo(report.devices().get(0).stopped());
        assertThat(best.files()).containsExactly("wickling-rhythm-card.yaml");
    }

    @Test
    void nothing_is_planned_twice() {
        report(snapPins(2), "wickling-rhythm-card.yaml", "slaterow-tilt-table.yaml");
        assertThat(asked).doesNotHaveDuplicates();
    }

    @Test
    void a_kit_that_does_all_needs_one_plan_more_to_know_it() {
        KitReport report = report(SamplePlans.kit("k3-fixed-plant-case.yaml"), "slaterow-tilt-table.yaml");
        assertThat(report.full()).isTrue();
        if (report.more().isEmpty()) {
            assertThat(asked).hasSize(2);
        }
    }
}
