package leadwright.planner.audit;

import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.Earthed;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.rules.RuleSet;
import leadwright.planner.Plan;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.Phase;
import leadwright.planner.plan.Reading;

/** Whether a plan opens a conductor, or puts mains on a part, of a class I device of which no earth is read. */
final class EarthKnownAudit {
    private final Plan plan;
    private final RuleSet rules;
    private final Breaches breaches;

    EarthKnownAudit(Plan plan, RuleSet rules, Breaches breaches) {
        this.plan = plan;
        this.rules = rules;
        this.breaches = breaches;
    }

    void run() {
        List<TouchPoint> points = points();
        if (!asked() || points.isEmpty() || plan.readings().stream().anyMatch(reading -> reads(reading, points))) {
            return;
        }
        for (Reading reading : plan.readings()) {
            Obligation what = reading.obligation();
            breaches.check(
                    what.state().fault() == Fault.NONE && what.phase() != Phase.MAINS_ON_PART,
                    Invariant.EARTH_KNOWN,
                    reading.id(),
                    "opens a conductor or puts mains on a part, and no earth was read");
        }
        breaches.check(plan.partial(), Invariant.EARTH_KNOWN, "plan", "is called whole although no earth is read");
        breaches.check(
                plan.warnings().stream().anyMatch(text -> text.contains("with another tester the same day")),
                Invariant.EARTH_KNOWN,
                "plan",
                "does not warn that the earth has to be read elsewhere first");
    }

    /** Whether the rule set asks for the earth resistance of a device of this class, and its maker allows it. */
    private boolean asked() {
        Device device = plan.device();
        SupplyConnection connection = device.supply().connection();
        Protection own = device.adapter()
                .filter(adapter -> connection == SupplyConnection.EXTERNAL_ADAPTER)
                .map(adapter -> adapter.protection())
                .orElse(device.protection());
        return connection != SupplyConnection.NONE
                && own == Protection.CLASS_1
                && device.forbids().stream().noneMatch(each -> each.test().equals(QuantityKind.EARTH_RESISTANCE.word()))
                && rules.tests(QuantityKind.EARTH_RESISTANCE).stream()
                        .anyMatch(row -> row.scope().classes().isEmpty()
                                || row.scope().classes().contains(Protection.CLASS_1));
    }

    /** The parts that are stated to be earthed; where none is, those that may be. */
    private List<TouchPoint> points() {
        List<TouchPoint> stated = which(Earthed.YES);
        return stated.isEmpty() ? which(Earthed.UNKNOWN) : stated;
    }

    private List<TouchPoint> which(Earthed earthed) {
        return plan.device().touchPoints().stream()
                .filter(point -> point.earthed() == earthed)
                .toList();
    }

    private static boolean reads(Reading reading, List<TouchPoint> points) {
        return reading.obligation().quantity() == QuantityKind.EARTH_RESISTANCE
                && points.stream()
                        .anyMatch(point -> reading.obligation().place().equals(Optional.of(point.id())));
    }
}
