package leadwright.planner.wire;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import leadwright.catalog.device.Device;
import leadwright.catalog.kit.EarthTest;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.kit.Tester;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.table.Connectors;
import leadwright.planner.plan.NaturalOrder;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Proposal;
import leadwright.planner.plan.Shortfall;

/**
 * Phase 3c: which earth readings the kit's leads can serve, why not the others, and what would.
 *
 * <p>Needs: device, kit, earth obligations. Gives: the most readings that one choice of leads serves ({@link LargestServed}),
 * and shortfalls for the rest, one a cause; each alternative of one serves its readings and those served already. Method: a
 * reading that fails is tried again with one thing otherwise. Cost: a few searches of leads a reading that is stopped.
 */
final class EarthShortage {
    private static final Quantity ANY_CURRENT = Quantity.of(Dimension.CURRENT, 1_000_000_000_000_000L);
    private static final int MANY = 8;

    private final Device device;
    private final Kit kit;
    private final Connectors connectors;
    private final Optional<Quantity> current;
    private final List<Obligation> earth;
    private final List<Obligation> served;
    private final List<String> uncovered = new ArrayList<>();
    private final List<Shortfall> shortfalls = new ArrayList<>();
    private final List<Offer> used = new ArrayList<>();
    private final List<Obligation> helped = new ArrayList<>();
    private boolean proven = true;

    /**
     * What keeps readings away: equal for those that the same thing would help.
     *
     * @param otherwise what would help and is no item
     */
    private record Why(String about, String because, List<String> otherwise) {}

    private record Found(Why why, List<Offer> offers) {}

    EarthShortage(Device device, Kit kit, Connectors connectors, List<Obligation> earth, Optional<Quantity> current) {
        this.device = device;
        this.kit = kit;
        this.connectors = connectors;
        this.current = current;
        this.earth = earth;
        if (earth.isEmpty() || serves(device, kit, earth)) {
            this.served = earth;
            return;
        }
        List<Obligation> reached = earth.stream()
                .filter(each -> serves(device, kit, List.of(each)))
                .toList();
        this.served = largest(reached);
        Map<Why, List<Obligation>> stopped = new LinkedHashMap<>();
        Map<Why, List<Offer>> offers = new LinkedHashMap<>();
        for (Obligation each : earth) {
            if (!served.contains(each)) {
                Found found = reached.contains(each) ? together() : found(each);
                stopped.computeIfAbsent(found.why(), key -> new ArrayList<>()).add(each);
                offers.merge(found.why(), found.offers(), Offers::joined);
                uncovered.add(each.key());
            }
        }
        stopped.forEach((why, readings) -> shortfalls.add(shortfall(why, readings, offers.get(why))));
    }

    /** Readings that one choice of leads serves. */
    List<Obligation> served() {
        return served;
    }

    /** Keys of the others. */
    List<String> uncovered() {
        return uncovered;
    }

    List<Shortfall> shortfalls() {
        return shortfalls;
    }

    /** Kinds of item that the proposals were chosen from. */
    List<Offer> used() {
        return used;
    }

    /** Whether a kit serves all readings that some proposal helps, with those that are served already. */
    boolean serves(Kit with) {
        List<Obligation> all = earth.stream()
                .filter(each -> served.contains(each) || helped.contains(each))
                .toList();
        return all.isEmpty() || serves(device, with, all);
    }

    private List<Obligation> largest(List<Obligation> reached) {
        LargestServed search = new LargestServed(reached, this::needs, set -> serves(device, kit, set));
        List<Obligation> largest = search.of(reached);
        proven = search.proven();
        return largest;
    }

    /** What a reading asks of the leads: equal ones are served together or not at all. */
    private Object needs(Obligation each) {
        EarthLead leads = leads(device, kit, List.of());
        return List.of(
                leads.terminal(each),
                leads.reach(each),
                EarthLead.reference(each),
                each.limit().map(limit -> limit.value().amount()));
    }

    private boolean serves(Device of, Kit with, List<Obligation> readings) {
        return !leads(of, with, readings).choices().isEmpty();
    }

    private EarthLead leads(Device of, Kit with, List<Obligation> readings) {
        return new EarthLead(of, with, connectors, readings, current);
    }

    private Shortfall shortfall(Why why, List<Obligation> readings, List<Offer> offers) {
        List<String> places = readings.stream()
                .flatMap(each -> each.place().stream())
                .distinct()
                .toList();
        String at = places.isEmpty() ? "" : "at " + String.join(", ", places) + ": ";
        List<Offer> own = Bench.items(kit).stream()
                .filter(item -> item.kind() != ItemKind.FAN_OUT)
                .map(Offer::own)
                .toList();
        List<Offer> kinds = offers.isEmpty() ? List.of() : Offers.joined(own, offers);
        List<Obligation> all = earth.stream()
                .filter(each -> served.contains(each) || readings.contains(each))
                .toList();
        Additions additions = new Additions(kit, kinds, MANY, List.of(more -> serves(device, more, all)), () -> false);
        List<Proposal> proposals = kinds.isEmpty() ? List.of() : additions.smallest();
        if (!proposals.isEmpty()) {
            used.addAll(kinds);
            helped.addAll(readings);
        }
        return new Shortfall(
                why.about(),
                List.of(),
                at + why.because() + has(proposals, offers) + "; not measured: " + Cause.words(readings),
                proposals.isEmpty()
                        ? why.otherwise()
                        : proposals.stream().map(Proposal::text).toList(),
                proposals,
                readings.stream().map(Obligation::key).toList());
    }

    /** Where the kit's own kinds run out, how many it has of them. */
    private String has(List<Proposal> proposals, List<Offer> offers) {
        if (proposals.isEmpty() || offers.stream().anyMatch(Offer::isNew)) {
            return "";
        }
        return proposals.get(0).pieces().stream()
                .map(each -> each.item().stock() + " " + each.item().id())
                .collect(Collectors.joining(", ", " (", ")"));
    }

    private Found together() {
        String others = proven ? "the most that one set does" : "the most that was found for one set";
        Why why = new Why(
                "earth leads",
                "no one set of earth leads goes on these points and on the others, and leads are not changed between earth"
                        + " readings; the others are " + others,
                List.of("a second plan for these points"));
        long reach = earth.stream()
                .mapToLong(leads(device, kit, List.of())::reach)
                .max()
                .orElse(1);
        List<Offer> ends = offers().ends(terminals(earth));
        List<Offer> leads =
                offers().lead(Math.max(1, reach), ends, with -> serves(device, WhatIf.plenty(with, MANY), earth));
        return new Found(why, Offers.joined(Offers.joined(ends, leads), List.of()));
    }

    private SortedSet<String> terminals(List<Obligation> readings) {
        EarthLead leads = leads(device, kit, List.of());
        SortedSet<String> terminals = new TreeSet<>(NaturalOrder.IDS);
        readings.forEach(each -> terminals.add(leads.terminal(each)));
        return terminals;
    }

    private EarthOffers offers() {
        return new EarthOffers(
                kit,
                connectors,
                leads(device, kit, List.of()).testCurrent(),
                kit.tester().earthJack().orElseThrow().socket());
    }

    private Found found(Obligation each) {
        List<Obligation> one = List.of(each);
        Tester tester = kit.tester();
        boolean second = EarthLead.reference(each).isPresent();
        boolean able = tester.earthJack().isPresent()
                && tester.earthTest()
                        .map(EarthTest::sockets)
                        .map(sockets -> !second || sockets.contains("second-jack"))
                        .orElse(false);
        if (!able) {
            return new Found(
                    new Why(
                            "earth-test sockets",
                            second
                                    ? "the tester has no second jack for the second lead of this reading"
                                    : "the tester has no earth jack with an earth test",
                            List.of("a tester whose earth test has the sockets that the reading needs")),
                    List.of());
        }
        Kit plenty = WhatIf.plenty(kit, MANY);
        if (serves(device, plenty, one)) {
            return stock();
        }
        if (serves(device, WhatIf.carrying(plenty, ANY_CURRENT), one)) {
            return rated(one);
        }
        if (serves(device, WhatIf.unlimitedNull(plenty), one)) {
            return nulling(one);
        }
        if (serves(device, WhatIf.strongSource(plenty), one)) {
            return new Found(new Why("earth leads", leads(device, kit, one).refusal(), LEAD), thicker(one));
        }
        if (serves(WhatIf.near(device), WhatIf.strongSource(plenty), one)) {
            return reach(one);
        }
        return mating(each);
    }

    private static final List<String> LEAD = List.of("a thicker lead, long enough");

    private Found stock() {
        return new Found(
                new Why("earth leads", "the kit has too few of the leads and ends that would do", List.of()),
                Bench.items(kit).stream()
                        .filter(item -> item.kind() != ItemKind.FAN_OUT)
                        .map(Offer::own)
                        .toList());
    }

    private Found rated(List<Obligation> one) {
        Quantity asked = leads(device, kit, one).testCurrent();
        List<String> weak = Bench.items(kit).stream()
                .filter(item -> item.kind() != ItemKind.FAN_OUT)
                .filter(item -> !leads(device, kit, one).carries(item))
                .map(KitItem::id)
                .toList();
        return new Found(
                new Why(
                        "earth leads",
                        "the leads and ends that reach it are not known to carry the test current of " + asked.text()
                                + " (" + String.join(", ", weak) + ")",
                        List.of("a lead and an end rated for " + asked.text() + " or more, their conductor stated")),
                offers().carrying(weak));
    }

    private Found nulling(List<Obligation> one) {
        String least = leads(device, kit, one)
                .refusedToNull()
                .map(EarthShortage::milliOhms)
                .orElse("more");
        Quantity most = kit.tester().earthTest().orElseThrow().nullUpTo().orElseThrow();
        return new Found(
                new Why(
                        "null-up-to",
                        "the leads that reach it have " + least + " at best, and the tester nulls up to " + most.text()
                                + " (null-up-to)",
                        LEAD),
                thicker(one));
    }

    private Found reach(List<Obligation> one) {
        EarthLead leads = leads(device, kit, one);
        Quantity needed = Quantity.of(Dimension.LENGTH, leads.reach(one.get(0)));
        return new Found(
                new Why(
                        "earth leads",
                        "the leads are too short: it needs " + needed.text()
                                + " (the distance and a fifth), and the longest that carries the current has "
                                + longest(leads),
                        LEAD),
                thicker(one));
    }

    private String longest(EarthLead leads) {
        long longest = kit.items().stream()
                .filter(item -> item.kind() == ItemKind.LEAD && leads.carries(item))
                .mapToLong(item -> item.length().map(Quantity::amount).orElse(0L))
                .max()
                .orElse(0);
        return Barrier.metres(longest);
    }

    private Found mating(Obligation each) {
        EarthLead leads = leads(device, kit, List.of(each));
        String terminal = leads.terminal(each);
        String socket = kit.tester().earthJack().orElseThrow().socket();
        List<Offer> ends = new ArrayList<>(offers().ends(new TreeSet<>(List.of(terminal))));
        boolean second = EarthLead.reference(each).isPresent();
        if (second && !ends.isEmpty()) {
            ends.addAll(offers().ends(new TreeSet<>(List.of("recessed-pin"))));
        }
        List<Offer> all = new ArrayList<>(ends);
        if (!ends.isEmpty()) {
            all.addAll(offers().lead(
                            Math.max(1, leads.reach(each)),
                            ends,
                            with -> serves(device, WhatIf.plenty(with, MANY), List.of(each))));
        }
        return new Found(
                new Why(
                        "earth leads",
                        "nothing in the kit that carries the current leads from " + terminal
                                + " to the tester's earth jack (" + socket + ")",
                        ends.isEmpty()
                                ? List.of("a reading at a bare point of the same metal: no end makes contact through "
                                        + terminal)
                                : List.of("a clip or probe that goes on " + terminal
                                        + ", and a lead from it to the earth jack")),
                Offers.joined(all, List.of()));
    }

    /** Leads like those in the kit, long enough, of the thinnest conductor that does; else new ones. */
    private List<Offer> thicker(List<Obligation> one) {
        EarthLead now = leads(device, kit, one);
        long needed = Math.max(now.reach(one.get(0)), 1);
        List<Offer> like =
                offers().thicker(now::carries, needed, with -> serves(device, WhatIf.plenty(with, MANY), one));
        return like.isEmpty()
                ? offers().lead(needed, List.of(), with -> serves(device, WhatIf.plenty(with, MANY), one))
                : like;
    }

    private static String milliOhms(BigDecimal microOhms) {
        return microOhms.movePointLeft(3).setScale(0, RoundingMode.CEILING).toPlainString() + " mohm";
    }
}
