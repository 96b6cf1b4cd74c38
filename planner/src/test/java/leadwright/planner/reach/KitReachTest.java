package leadwright.planner.reach;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.quantity.Quantity;
import leadwright.planner.SamplePlans;
import leadwright.planner.wire.KitChains.Use;
import leadwright.planner.wire.KitChains.Way;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What kits reach by themselves, counted by hand. */
class KitReachTest {
    private static final String K1 = "k1-marrowgate-bench.yaml";

    private static Optional<Way> way(KitReach reach, String terminal, Use use) {
        return reach.terminals().stream()
                .filter(each -> each.word().equals(terminal))
                .flatMap(each -> Optional.ofNullable(each.ways().get(use)).stream())
                .findFirst();
    }

    /** 6 jacks, 7 fan-outs of 8 pins, 2 of 10 sockets, 2 single pins: 7 x 8 + 2, and jacks and branches enough for all nine. */
    @Test
    void the_marrowgate_bench_has_58_touch_proof_places() {
        KitReach reach = KitReach.of(SamplePlans.kit(K1));
        assertThat(way(reach, "tp15-socket", Use.ORDINARY).orElseThrow().atOnce())
                .isEqualTo(58);
        assertThat(way(reach, "snap-socket", Use.INSULATION).orElseThrow().atOnce())
                .as("as many as there are snap pins")
                .isEqualTo(12);
        assertThat(way(reach, "snap-socket", Use.ORDINARY).orElseThrow().items())
                .containsExactly("snap-pin");
        assertThat(reach.beyond()).contains("tp20-socket").doesNotContain("tp15-socket");
    }

    /** Common practice, no source: k jacks with an m-way fan-out on each take k x m wires. */
    @ParameterizedTest(name = "{0} jacks")
    @ValueSource(ints = {1, 2, 3, 6})
    void k_jacks_with_an_m_way_fan_out_on_each_take_k_times_m_wires(int jacks) {
        Kit k1 = SamplePlans.kitWith(K1, "jacks: {count: 6,", "jacks: {count: " + jacks + ",");
        List<KitItem> items = k1.items().stream()
                .filter(item -> item.id().equals("comb"))
                .map(item -> item.withStock(jacks))
                .toList();
        Kit kit = new Kit(k1.name(), k1.tester(), items, k1.checks(), k1.connectors());
        assertThat(way(KitReach.of(kit), "tp15-socket", Use.ORDINARY)
                        .orElseThrow()
                        .atOnce())
                .isEqualTo(jacks * 8);
    }

    /** A lead of 20 m and 1.5 mm2 cannot take 25 A from 6 V; the reel of 25 m and 2.5 mm2 can. */
    @Test
    void the_earth_lead_reaches_as_far_as_its_source_drives() {
        KitReach reach = KitReach.of(SamplePlans.kit("k3-fixed-plant-case.yaml"));
        assertThat(reach.earth())
                .extracting(KitReach.Earth::current)
                .containsExactly(Quantity.microAmperes(200_000), Quantity.microAmperes(25_000_000));
        Kit near = without(SamplePlans.kit("k3-fixed-plant-case.yaml"), "reel");
        assertThat(KitReach.of(near).earth().get(0).lead()).contains(20_000_000L);
        assertThat(KitReach.of(near).earth().get(1).lead()).contains(6_000_000L);
        assertThat(KitReach.of(without(near, "lead-far", "lead-near"))
                        .earth()
                        .get(0)
                        .lead())
                .isEmpty();
    }

    @Test
    void a_use_that_the_tester_has_not_is_absent() {
        KitReach reach = KitReach.of(SamplePlans.kit("k3-fixed-plant-case.yaml"));
        assertThat(reach.terminals()).allSatisfy(each -> assertThat(each.ways()).containsOnlyKeys(Use.ORDINARY));
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(strings = {"k1-marrowgate-bench.yaml", "k2-round-trolley.yaml", "k3-fixed-plant-case.yaml"})
    void one_piece_more_never_reaches_less(String file) {
        Kit kit = SamplePlans.kit(file);
        KitReach base = KitReach.of(kit);
        for (KitItem more : kit.items()) {
            List<KitItem> items = new ArrayList<>(kit.items());
            items.replaceAll(item -> item.equals(more) ? item.withStock(item.stock() + 1) : item);
            KitReach with = KitReach.of(new Kit(kit.name(), kit.tester(), items, kit.checks(), kit.connectors()));
            for (KitReach.Terminal terminal : base.terminals()) {
                for (Map.Entry<Use, Way> each : terminal.ways().entrySet()) {
                    Way way = way(with, terminal.word(), each.getKey()).orElseThrow();
                    assertThat(way.atOnce())
                            .as(terminal.word() + " " + each.getKey() + " with 1 more " + more.id())
                            .isGreaterThanOrEqualTo(each.getValue().atOnce());
                    assertThat(way.longest())
                            .isGreaterThanOrEqualTo(each.getValue().longest());
                }
            }
            for (int n = 0; n < base.earth().size(); n++) {
                assertThat(with.earth().get(n).lead().orElse(0L))
                        .isGreaterThanOrEqualTo(base.earth().get(n).lead().orElse(0L));
            }
        }
    }

    private static Kit without(Kit kit, String... ids) {
        List<KitItem> items = kit.items().stream()
                .filter(item -> !List.of(ids).contains(item.id()))
                .toList();
        return new Kit(kit.name(), kit.tester(), items, kit.checks(), kit.connectors());
    }
}
