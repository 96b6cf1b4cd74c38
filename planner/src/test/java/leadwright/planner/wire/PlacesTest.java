package leadwright.planner.wire;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.PartType;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.Ties;
import leadwright.catalog.table.Connectors;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.Obligation;
import org.junit.jupiter.api.Test;

/** The fitting test by numbers of places against the one that looks at every arrangement of items. */
class PlacesTest {
    private static final int SEEDS = 400;

    /** A device of snap and touch-proof wires, a kit of adapters, fan-outs and combs, and one to four demands that cut it up. */
    private record Case(Device device, Kit kit, List<Obligation> obligations) {
        static Case draw(long seed) {
            Random random = new Random(seed * 0x9E3779B97F4A7C15L + 7);
            int snaps = 1 + random.nextInt(6);
            int pins = 1 + random.nextInt(6);
            Device device = Rig.device(
                    Rig.part("a", PartType.CF, "snap-socket", snaps), Rig.part("b", PartType.BF, "tp15-socket", pins));
            Kit kit = Rig.kit(
                    1 + random.nextInt(4),
                    Ties.ANY,
                    Rig.item("snap", ItemKind.ADAPTER, "snap-stud", Rig.PLUG, Math.max(1, snaps - random.nextInt(2))),
                    Rig.item("pin", ItemKind.ADAPTER, "tp15-pin", Rig.PLUG, 1 + random.nextInt(pins)),
                    Rig.fanOut("fan", Rig.PLUG, Rig.SOCKET, 2 + random.nextInt(4), 1 + random.nextInt(3)),
                    Rig.fanOut("wide", Rig.PLUG, Rig.SOCKET, 3 + random.nextInt(5), 1),
                    Rig.fanOut("rail", Rig.PLUG, "snap-stud", 2 + random.nextInt(3), random.nextInt(3)),
                    Rig.fanOut("comb", Rig.PLUG, "tp15-pin", 2 + random.nextInt(4), 1 + random.nextInt(2)));
            List<String> names = new ArrayList<>(Rig.names(device));
            List<Obligation> obligations = new ArrayList<>();
            int demands = 1 + random.nextInt(4);
            for (int i = 0; i < demands; i++) {
                Collections.shuffle(names, random);
                int measured = 1 + random.nextInt(names.size());
                int against = random.nextInt(names.size() - measured + 1);
                obligations.add(Rig.reading(
                        "d" + i,
                        Demand.of(names.subList(0, measured), names.subList(measured, measured + against), List.of())));
            }
            return new Case(device, kit, obligations);
        }

        Verdict verdict(boolean byPlaces) {
            Scene scene = Scene.of(device, kit, House.defaults(), Connectors.builtIn(), obligations);
            EarthLead none = new EarthLead(device, kit, Connectors.builtIn(), List.of(), Optional.empty());
            Fit fit = new Fit(scene, none, Gather.MOST_ARRANGEMENTS, byPlaces);
            return fit.fits(Draft.of(scene, scene.requirements()));
        }
    }

    @Test
    void numbers_of_places_tell_the_same_as_every_arrangement_on_seeds_1_to_400() {
        List<Verdict> verdicts = new ArrayList<>();
        for (int seed : IntStream.rangeClosed(1, SEEDS).toArray()) {
            Case each = Case.draw(seed);
            Verdict verdict = each.verdict(true);
            assertThat(verdict).as("seed " + seed).isEqualTo(each.verdict(false));
            verdicts.add(verdict);
        }
        assertThat(verdicts).filteredOn(Verdict.YES::equals).hasSizeGreaterThan(60);
        assertThat(verdicts).filteredOn(Verdict.NO::equals).hasSizeGreaterThan(60);
    }
}
