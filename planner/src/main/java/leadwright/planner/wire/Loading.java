package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.Limit;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.NaturalOrder;
import leadwright.planner.plan.Obligation;

/**
 * Phase 11b: what the leads themselves pass when mains is put on an applied part.
 *
 * <p>Needs: scene, finished hookups and who may take which reading. Gives: one warning for readings whose leads take more than
 * the house's share of the limit, in the worst hookup that may take them; one for items that state no capacitance. Method:
 * the sum over the measured chains' items. Cost: readings × chains. A hard limit of the house is kept by phase 6, not here.
 */
final class Loading {
    private final Scene scene;
    private final Map<String, String> heavy = new LinkedHashMap<>();
    private final Set<String> unknown = new TreeSet<>(NaturalOrder.IDS);
    private final Set<String> concerned = new TreeSet<>(NaturalOrder.IDS);

    private Loading(Scene scene) {
        this.scene = scene;
    }

    static List<String> warnings(
            Scene scene, Service service, List<Hookup> hookups, Map<String, List<String>> takenIn) {
        Loading loading = new Loading(scene);
        for (Requirement each : scene.requirements()) {
            if (each.duty().mains()) {
                List<Rated> rated = hookups.stream()
                        .filter(hookup -> takenIn.getOrDefault(each.keys().get(0), List.of())
                                .contains(hookup.id()))
                        .map(hookup -> service.rated(hookup, each.duty()))
                        .toList();
                loading.look(each, rated);
            }
        }
        return loading.texts();
    }

    private void look(Requirement requirement, List<Rated> hookups) {
        long most = 0;
        Set<String> silent = new TreeSet<>(NaturalOrder.IDS);
        for (Rated hookup : hookups) {
            most = Math.max(most, hookup.knownFemtofarads(requirement));
            silent.addAll(hookup.unknownCapacitance(requirement));
        }
        unknown.addAll(silent);
        for (Obligation reading : readings(requirement)) {
            if (!silent.isEmpty()) {
                concerned.add(subject(reading));
            }
            if (reading.limit()
                    .filter(limit -> limit.bound() == Limit.Bound.AT_MOST)
                    .isPresent()) {
                Limit limit = reading.limit().get();
                if (most > Capacitance.most(scene.device(), requirement.duty(), limit, scene.house())) {
                    long passes = Capacitance.nanoamperes(scene.device(), requirement.duty(), most);
                    heavy.putIfAbsent(
                            subject(reading),
                            microamperes(passes) + " of " + limit.value().text());
                }
            }
        }
    }

    private List<Obligation> readings(Requirement requirement) {
        Set<String> keys = Set.copyOf(requirement.keys());
        return scene.obligations().stream()
                .filter(each -> keys.contains(each.key()))
                .toList();
    }

    private static String subject(Obligation reading) {
        return String.join(" and ", reading.of());
    }

    /** Rounded up to a tenth of a microampere: the leads are not made to look lighter. */
    private static String microamperes(long nanoamperes) {
        return Quantity.of(Dimension.CURRENT, (nanoamperes + 99) / 100 * 100).text();
    }

    private List<String> texts() {
        List<String> texts = new ArrayList<>();
        if (!heavy.isEmpty()) {
            List<String> each = new ArrayList<>();
            heavy.forEach((subject, passes) -> each.add(subject + " " + passes));
            texts.add("with mains on an applied part the leads alone pass more than "
                    + scene.house().capacitanceShare().text() + " of the limit, by their capacitance ("
                    + String.join(", ", each) + "): read the background with these leads in place and off the device"
                    + " before each such reading, and write it beside it; it is not subtracted");
        }
        if (!unknown.isEmpty()) {
            texts.add("no capacitance is stated for " + String.join(", ", unknown)
                    + ": what these pass with mains on an applied part is not known and not taken for nothing; read the"
                    + " background with the leads off the device (" + String.join(", ", concerned) + ")");
        }
        return texts;
    }
}
