package leadwright.planner.audit;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.EarthPoint;
import leadwright.catalog.kit.EarthTest;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.EarthTestRow;
import leadwright.catalog.rules.RuleSet;
import leadwright.catalog.table.Conductors;
import leadwright.catalog.table.Connectors;
import leadwright.planner.Plan;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;

/** Whether the earth lead mates, reaches every place it must reach, and carries the test current. */
final class EarthAudit {
    private final Plan plan;
    private final RuleSet rules;
    private final Connectors connectors;
    private final Breaches breaches;

    EarthAudit(Plan plan, RuleSet rules, Connectors connectors, Breaches breaches) {
        this.plan = plan;
        this.rules = rules;
        this.connectors = connectors;
        this.breaches = breaches;
    }

    void path(Hookup hookup, EarthPath path) {
        String where = hookup.id() + " earth lead";
        List<KitItem> items = new ArrayList<>();
        path.items()
                .forEach(instance -> plan.kit()
                        .item(instance.substring(0, Math.max(0, instance.lastIndexOf('/'))))
                        .ifPresent(items::add));
        if (items.size() != path.items().size() || items.isEmpty()) {
            breaches.add(Invariant.EARTH_PATH, where, "has no items or unknown ones");
            return;
        }
        List<KitItem> fromDevice = new ArrayList<>(items);
        java.util.Collections.reverse(fromDevice);
        for (String surface : surfaces(path)) {
            new ChainMating(connectors)
                    .fault(surface, fromDevice, socket(path))
                    .ifPresent(what -> breaches.add(Invariant.EARTH_PATH, where, what));
        }
        carries(items, where);
        if (path.pole().equals("part")) {
            reach(hookup, items, where);
            driven(hookup, where);
        }
    }

    /** Every item states that it carries what is set on the tester. */
    private void carries(List<KitItem> items, String where) {
        Optional<Quantity> set = testCurrent();
        if (set.isEmpty()) {
            breaches.add(
                    Invariant.RATING,
                    where,
                    "serves earth readings for which the tester has no current that is enough");
            return;
        }
        for (KitItem item : items) {
            breaches.check(
                    item.current().filter(rated -> rated.atLeast(set.get())).isPresent(),
                    Invariant.RATING,
                    where,
                    item.id() + " does not state that it carries " + set.get().text());
        }
    }

    /** The source drives the test current through all leads with the path at its limit, and a two-wire test nulls them. */
    private void driven(Hookup hookup, String where) {
        Optional<EarthTest> test = plan.kit().tester().earthTest();
        Optional<Quantity> set = testCurrent();
        if (test.isEmpty() || set.isEmpty()) {
            return;
        }
        // Micro-ohms of copper at its greatest; what states no conductor has next to none, or only a small current.
        BigDecimal leads = hookup.earth().stream()
                .flatMap(path -> path.items().stream())
                .flatMap(instance -> plan.kit().item(instance.substring(0, instance.lastIndexOf('/'))).stream())
                .map(EarthAudit::copper)
                .reduce(BigDecimal.ZERO, BigDecimal::add);
        long limit = earthReadings()
                .flatMap(what -> what.limit().stream())
                .mapToLong(each -> each.value().amount())
                .max()
                .orElse(0);
        // Micro-ohms by nano-amperes are 1e-15 V, and the open-circuit voltage counts in 1e-6 V.
        BigDecimal microvolts = leads.add(BigDecimal.valueOf(limit))
                .multiply(BigDecimal.valueOf(set.get().amount()))
                .movePointLeft(9);
        breaches.check(
                microvolts.compareTo(BigDecimal.valueOf(test.get().openCircuit().amount())) <= 0,
                Invariant.EARTH_SOURCE,
                where,
                "the source of " + test.get().openCircuit().text() + " does not drive "
                        + set.get().text() + " through leads and path");
        boolean nulls = !test.get().wiring().equals("two-wire")
                || test.get()
                        .nullUpTo()
                        .map(most -> leads.compareTo(BigDecimal.valueOf(most.amount())) <= 0)
                        .orElse(true);
        breaches.check(nulls, Invariant.EARTH_SOURCE, where, "the leads have more than the tester can null");
    }

    private static BigDecimal copper(KitItem item) {
        return item.conductor()
                .flatMap(size -> Conductors.builtIn().find(size))
                .flatMap(conductor -> item.length()
                        .map(length -> BigDecimal.valueOf(conductor.perMetre().amount())
                                .multiply(BigDecimal.valueOf(length.amount()))
                                .movePointLeft(6)))
                .orElse(BigDecimal.ZERO);
    }

    /** The smallest of the tester's currents that is as much as every row of the rule set asks for on this device. */
    private Optional<Quantity> testCurrent() {
        return plan.kit().tester().earthTest().stream()
                .flatMap(test -> test.currents().stream())
                .filter(current -> rules.earthTest().stream().allMatch(row -> enough(current, row)))
                .min(Quantity::compareTo);
    }

    private boolean enough(Quantity current, EarthTestRow row) {
        boolean multiple = row.factorOfRated().isEmpty()
                || plan.device().supply().current().isEmpty()
                || BigDecimal.valueOf(current.amount())
                                .compareTo(row.factorOfRated()
                                        .get()
                                        .multiply(BigDecimal.valueOf(plan.device()
                                                .supply()
                                                .current()
                                                .get()
                                                .amount())))
                        >= 0;
        return current.atLeast(row.atLeast()) && multiple;
    }

    private String socket(EarthPath path) {
        String jackSocket =
                plan.kit().tester().jacks().map(jacks -> jacks.socket()).orElse("lab-4mm-socket-recessed");
        return plan.kit().tester().earthJack().map(jack -> jack.socket()).orElse(jackSocket);
    }

    /** What the lead's end goes on, at every place that it serves. */
    private List<String> surfaces(EarthPath path) {
        if (path.pole().equals("part")) {
            return places().stream()
                    .map(place -> surface(plan.device(), place))
                    .distinct()
                    .toList();
        }
        return earthReadings()
                .flatMap(what -> what.earthSubject().stream())
                .flatMap(subject -> switch (subject) {
                    case PLUG_TO_PART -> Stream.<String>empty();
                    case INLET_TO_PART, CORD -> Stream.of("recessed-pin");
                    case REFERENCE_TO_PART -> Stream.of("metal");
                })
                .distinct()
                .toList();
    }

    private List<String> places() {
        return earthReadings().flatMap(what -> what.place().stream()).distinct().toList();
    }

    private Stream<Obligation> earthReadings() {
        return plan.readings().stream().map(Reading::obligation).filter(what -> what.phase() == Obligation.Phase.EARTH);
    }

    /** The earth of the cord's connector is neither a touch point nor an earth point: bare metal. */
    private static String surface(Device device, String place) {
        Optional<String> touched = device.touchPoints().stream()
                .filter(point -> point.id().equals(place))
                .map(point -> point.surface().word())
                .findFirst();
        Optional<String> stud = device.earthPoints().stream()
                .filter(point -> point.id().equals(place))
                .map(EarthPoint::terminal)
                .findFirst();
        return touched.or(() -> stud).orElse("metal");
    }

    /** All leads of the path's hookup together span the farthest point, with a fifth to spare. */
    private void reach(Hookup hookup, List<KitItem> items, String where) {
        long length = hookup.earth().stream()
                .flatMap(path -> path.items().stream())
                .flatMap(instance -> plan.kit().item(instance.substring(0, instance.lastIndexOf('/'))).stream())
                .mapToLong(item -> item.length().map(Quantity::amount).orElse(0L))
                .sum();
        for (String place : places()) {
            long distance = distance(plan.device(), place, 0);
            breaches.check(
                    5 * length >= 6 * distance,
                    Invariant.REACH,
                    where,
                    "leads of " + length / 1000 + " mm do not reach " + place + " at " + distance / 1000 + " mm");
        }
    }

    /** Routed distance of a touch or earth point in micrometres, over the points it counts from. */
    static long distance(Device device, String place, int depth) {
        if (depth > device.touchPoints().size() + device.earthPoints().size()) {
            return 0;
        }
        return device.touchPoints().stream()
                .filter(point -> point.id().equals(place))
                .findFirst()
                .map(point -> onward(device, point.distance(), point.from(), depth))
                .or(() -> device.earthPoints().stream()
                        .filter(point -> point.id().equals(place))
                        .findFirst()
                        .map(point -> onward(device, point.distance(), point.from(), depth)))
                .orElse(0L);
    }

    private static long onward(Device device, Optional<Quantity> own, Optional<String> from, int depth) {
        return own.map(Quantity::amount).orElse(0L)
                + from.map(next -> distance(device, next, depth + 1)).orElse(0L);
    }
}
