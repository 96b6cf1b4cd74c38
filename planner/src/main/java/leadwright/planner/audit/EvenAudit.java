package leadwright.planner.audit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import leadwright.catalog.device.AppliedPart;
import leadwright.planner.Plan;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.Phase;
import leadwright.planner.plan.Reading;

/**
 * Whether like subjects are read alike: what is read of one part of a type in a state, a mode, a polarity of the source and
 * by a component is read of every other that is read at all. A kit that cannot wire a subject cannot in any state.
 */
final class EvenAudit {
    private final Plan plan;
    private final Breaches breaches;

    EvenAudit(Plan plan, Breaches breaches) {
        this.plan = plan;
        this.breaches = breaches;
    }

    void run() {
        Map<String, Map<String, Set<String>>> alike = new LinkedHashMap<>();
        Map<String, String> first = new TreeMap<>();
        for (Reading reading : plan.readings()) {
            Obligation what = reading.obligation();
            if (what.phase() == Phase.ORDINARY || what.phase() == Phase.MAINS_ON_PART) {
                String subject = what.demand().key() + " " + what.place().orElse("") + " " + what.of();
                first.putIfAbsent(kind(what) + subject, reading.id());
                alike.computeIfAbsent(kind(what), key -> new LinkedHashMap<>())
                        .computeIfAbsent(subject, key -> new TreeSet<>())
                        .add(what.state().word() + ", " + what.mode()
                                + what.sourcePolarity()
                                        .map(source -> ", source " + source.word())
                                        .orElse("")
                                + what.component()
                                        .map(each -> ", " + each.word())
                                        .orElse(""));
            }
        }
        alike.forEach((kind, subjects) -> {
            Set<String> all = new TreeSet<>();
            subjects.values().forEach(all::addAll);
            subjects.forEach((subject, states) -> {
                Set<String> missing = new TreeSet<>(all);
                missing.removeAll(states);
                breaches.check(
                        missing.isEmpty(),
                        Invariant.EVEN,
                        first.get(kind + subject),
                        "is read of this subject, but not in " + missing + ", in which it is read of others");
            });
        });
    }

    /** What must agree for two readings to be alike. */
    private String kind(Obligation what) {
        List<String> types = new ArrayList<>();
        for (String name : what.demand().measured()) {
            plan.device().appliedParts().stream()
                    .filter(part -> part.connections().stream()
                            .anyMatch(each -> each.name().equals(name)))
                    .map(AppliedPart::type)
                    .map(Enum::name)
                    .filter(type -> !types.contains(type))
                    .forEach(types::add);
        }
        List<String> places = new ArrayList<>();
        for (String id : what.place().map(List::of).orElse(what.of())) {
            Optional<String> earthed = plan.device().touchPoints().stream()
                    .filter(point -> point.id().equals(id))
                    .map(point -> point.earthed().name())
                    .findFirst();
            places.add(earthed.orElse(""));
        }
        return what.quantity() + " " + types + " " + places + " " + what.method();
    }
}
