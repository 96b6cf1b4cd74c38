package leadwright.planner.wire;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.EarthPoint;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.kit.EarthTest;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.table.Conductor;
import leadwright.catalog.table.Conductors;
import leadwright.catalog.table.Connectors;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.EarthSubject;

/**
 * Phase 3b: the leads of the earth readings.
 *
 * <p>Needs: kit, device, earth obligations. Gives: every choice of leads worth having: one path from the earth jack whose
 * end goes on every point, and for readings with two leads one from the second jack. Method: routes of phase 3 over items
 * that state the test current; pairs filtered by reach, by what the source can drive and by what it can null. Cost: in the
 * pairs of routes. Proof: all routes worth having are looked at.
 */
final class EarthLead {
    private static final Quantity SMALL = Quantity.of(Dimension.CURRENT, 1_000_000_000L);
    private static final String EARTH_JACK = "earth-jack";
    private static final String SECOND_JACK = "second-jack";
    /** The earth pin of an inlet and the earth contact of a coupler lie in a recess. */
    private static final String RECESSED = "recessed-pin";

    private final Kit kit;
    private final Device device;
    private final Optional<Quantity> current;
    /** The least resistance of leads and path that the source could not drive its current through; in uohm. */
    private Optional<BigDecimal> tooMuch = Optional.empty();
    /** The least resistance of leads that a two-wire tester could not null; in uohm. */
    private Optional<BigDecimal> tooMuchToNull = Optional.empty();

    private final List<Obligation> obligations;
    private final Bench bench;
    private final Routes routes;
    private final List<Choice> choices;

    /** @param current what is set on the tester; empty for the smallest that it has */
    EarthLead(Device device, Kit kit, Connectors connectors, List<Obligation> obligations, Optional<Quantity> current) {
        this.kit = kit;
        this.current = current;
        this.device = device;
        this.obligations = List.copyOf(obligations);
        this.bench = new Bench(kit, connectors, Duty.ORDINARY);
        this.routes = new Routes(bench, part -> carries(part.item()));
        this.choices = obligations.isEmpty() ? List.of() : search();
    }

    /** One lead: a pole, the first point it goes to, and its items from the point to the tester. */
    record Lead(String pole, String point, String socket, Route route) {}

    /** @param use pieces taken, by piece number */
    record Choice(List<Lead> leads, int[] use, int items) {

        /** As an option counts, without contacts: nothing of it stands in a chain. */
        long cost() {
            int probes = leads.stream().mapToInt(each -> each.route().probes()).sum();
            return Option.cost(0, 0, items, probes);
        }

        /** Micrometres of all its items. */
        long lead() {
            return leads.stream().mapToLong(each -> each.route().lead()).sum();
        }
    }

    List<Choice> choices() {
        return choices;
    }

    int[] mostUse() {
        int[] most = new int[bench.items().size()];
        for (Choice choice : choices) {
            for (int piece = 0; piece < most.length; piece++) {
                most[piece] = Math.max(most[piece], choice.use()[piece]);
            }
        }
        return most;
    }

    boolean carries(KitItem item) {
        // What a rated conductor of no stated size puts into the loop is unknown: harmless only with a small current.
        boolean known = item.length().isEmpty()
                || item.conductor().isPresent()
                || testCurrent().atMost(SMALL);
        return known
                && item.kind() != ItemKind.FAN_OUT
                && item.current().map(rated -> rated.atLeast(testCurrent())).orElse(false);
    }

    /** What is set; else the smallest test current that the tester has. */
    Quantity testCurrent() {
        return current.isPresent()
                ? current.get()
                : test().currents().stream().min(Comparator.naturalOrder()).orElseThrow();
    }

    private EarthTest test() {
        return kit.tester().earthTest().orElseThrow();
    }

    private List<Choice> search() {
        if (kit.tester().earthTest().isEmpty() || kit.tester().earthJack().isEmpty()) {
            return List.of();
        }
        Set<String> references = new LinkedHashSet<>();
        Set<String> terminals = new LinkedHashSet<>();
        long one = 0;
        long two = 0;
        for (Obligation each : obligations) {
            terminals.add(terminal(each));
            Optional<String> reference = reference(each);
            reference.ifPresent(references::add);
            if (reference.isPresent()) {
                two = Math.max(two, reach(each));
            } else {
                one = Math.max(one, reach(each));
            }
        }
        String socket = kit.tester().earthJack().orElseThrow().socket();
        String point = obligations.get(0).place().orElse("earth");
        List<Lead> parts = leads("part", point, EARTH_JACK, socket, terminals, Math.max(one, two));
        List<Choice> found = new ArrayList<>();
        if (!references.isEmpty() && !test().sockets().contains(SECOND_JACK)) {
            return List.of();
        }
        if (references.isEmpty()) {
            for (Lead lead : parts) {
                offer(found, List.of(lead), one, two);
            }
            return List.copyOf(found);
        }
        Set<String> ends = new LinkedHashSet<>();
        references.forEach(each -> ends.add(each.equals("reference-earth") ? "metal" : RECESSED));
        String first = references.iterator().next();
        for (Lead part : parts) {
            for (Lead reference : leads("reference", first, SECOND_JACK, socket, ends, two)) {
                offer(found, List.of(part, reference), one, two);
            }
        }
        return List.copyOf(found);
    }

    /** Where the second lead goes, for readings that need one. */
    static Optional<String> reference(Obligation each) {
        EarthSubject subject = each.earthSubject().orElse(EarthSubject.PLUG_TO_PART);
        return switch (subject) {
            case PLUG_TO_PART -> Optional.empty();
            case INLET_TO_PART -> Optional.of("inlet-earth");
            case CORD -> Optional.of("cord-earth");
            case REFERENCE_TO_PART -> Optional.of("reference-earth");
        };
    }

    private List<Lead> leads(String pole, String point, String from, String socket, Set<String> terminals, long reach) {
        List<Lead> leads = new ArrayList<>();
        Leaf leaf = new Leaf(Leaf.Kind.SURFACE, terminals.iterator().next(), reach);
        for (Route route : routes.into(leaf, Socket.jack(socket))) {
            if (!route.steps().isEmpty() && goesOnAll(route, terminals)) {
                leads.add(new Lead(pole, point, from, route));
            }
        }
        return leads;
    }

    private boolean goesOnAll(Route route, Set<String> terminals) {
        Route.Step end = route.steps().get(0);
        return terminals.stream()
                .allMatch(terminal -> bench.takes(
                        new Leaf(Leaf.Kind.SURFACE, terminal, 0),
                        end.part(),
                        end.part().inlets().get(end.inlet())));
    }

    private void offer(List<Choice> found, List<Lead> leads, long one, long two) {
        int[] use = new int[bench.items().size()];
        int items = 0;
        long length = 0;
        for (Lead lead : leads) {
            items += lead.route().items();
            length += lead.route().length();
            for (int piece = 0; piece < use.length; piece++) {
                use[piece] += lead.route().use()[piece];
            }
        }
        boolean reaches = leads.get(0).route().length() >= one && length >= two;
        if (reaches && Routes.atMost(use, bench.stock()) && drivable(leads)) {
            found.add(new Choice(leads, use, items));
        }
    }

    /** The source drives its current through the leads, and a two-wire tester can null them. */
    private boolean drivable(List<Lead> leads) {
        BigDecimal microOhm = BigDecimal.ZERO;
        for (Lead lead : leads) {
            for (Route.Step step : lead.route().steps()) {
                microOhm = microOhm.add(microOhm(step.part().item()));
            }
        }
        // The path under test counts with its limit: the source must still drive the current where it just passes.
        BigDecimal loop = microOhm.add(BigDecimal.valueOf(greatestLimit()));
        // uV against uohm * nA / 1e9.
        BigDecimal drop =
                loop.multiply(BigDecimal.valueOf(testCurrent().amount())).movePointLeft(9);
        if (drop.compareTo(BigDecimal.valueOf(test().openCircuit().amount())) > 0) {
            tooMuch = Optional.of(tooMuch.map(loop::min).orElse(loop));
            return false;
        }
        if (!test().wiring().equals("two-wire") || test().nullUpTo().isEmpty()) {
            return true;
        }
        if (microOhm.compareTo(BigDecimal.valueOf(test().nullUpTo().get().amount())) <= 0) {
            return true;
        }
        tooMuchToNull = Optional.of(tooMuchToNull.map(microOhm::min).orElse(microOhm));
        return false;
    }

    /** The least resistance, in uohm, of leads that were refused for it alone: no null takes it away. */
    Optional<BigDecimal> refusedToNull() {
        return tooMuchToNull;
    }

    private long greatestLimit() {
        return obligations.stream()
                .flatMap(each -> each.limit().stream())
                .mapToLong(limit -> limit.value().amount())
                .max()
                .orElse(0);
    }

    /** Why there is no choice, in numbers. */
    String refusal() {
        if (kit.tester().earthTest().isEmpty() || kit.tester().earthJack().isEmpty()) {
            return "the tester has no earth jack with an earth test";
        }
        if (tooMuch.isPresent()) {
            BigDecimal milliOhm = tooMuch.get().movePointLeft(3).setScale(0, RoundingMode.CEILING);
            BigDecimal volts = tooMuch.get()
                    .multiply(BigDecimal.valueOf(testCurrent().amount()))
                    .movePointLeft(15)
                    .setScale(1, RoundingMode.CEILING);
            return "the earth test's source cannot drive " + testCurrent().text()
                    + " through the whole loop: the leads that reach, with "
                    + Quantity.of(Dimension.RESISTANCE, greatestLimit()).text() + " for the path at its limit, have "
                    + milliOhm.toPlainString() + " mohm at best, which takes " + volts.toPlainString() + " V of "
                    + test().openCircuit().text();
        }
        return "no leads rated " + testCurrent().text()
                + " or more that reach and go on every earth point, as often as the kit has them";
    }

    /** Greatest resistance of an item's conductor; 0 where it states none: clips and adapters have next to none. */
    private static BigDecimal microOhm(KitItem item) {
        if (item.conductor().isEmpty() || item.length().isEmpty()) {
            return BigDecimal.ZERO;
        }
        Optional<Conductor> conductor =
                Conductors.builtIn().find(item.conductor().get());
        return conductor
                .map(each -> BigDecimal.valueOf(each.perMetre().amount())
                        .multiply(BigDecimal.valueOf(item.length().get().amount()))
                        .movePointLeft(6))
                .orElse(BigDecimal.ZERO);
    }

    String terminal(Obligation each) {
        String place = each.place().orElse("");
        Optional<String> surface = device.touchPoints().stream()
                .filter(point -> point.id().equals(place))
                .map(point -> point.surface().word())
                .findFirst();
        Optional<String> stud = device.earthPoints().stream()
                .filter(point -> point.id().equals(place))
                .map(EarthPoint::terminal)
                .findFirst();
        return surface.or(() -> stud).orElse("metal");
    }

    /** Distance and a fifth; a distance counted from another point adds to that point's own. */
    long reach(Obligation each) {
        long distance = distance(each.place().orElse(""), 0);
        return (distance * 6 + 4) / 5;
    }

    private long distance(String place, int hops) {
        if (hops > device.touchPoints().size() + device.earthPoints().size()) {
            return 0;
        }
        for (TouchPoint point : device.touchPoints()) {
            if (point.id().equals(place)) {
                return distance(point.distance(), point.from(), hops);
            }
        }
        for (EarthPoint point : device.earthPoints()) {
            if (point.id().equals(place)) {
                return distance(point.distance(), point.from(), hops);
            }
        }
        return 0;
    }

    private long distance(Optional<Quantity> own, Optional<String> from, int hops) {
        return own.map(Quantity::amount).orElse(0L)
                + from.map(point -> distance(point, hops + 1)).orElse(0L);
    }
}
