package leadwright.planner.wire;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
import leadwright.planner.plan.Shortfall;

/**
 * Phase 3c: which earth readings the kit's leads can serve, and why not the others.
 *
 * <p>Needs: device, kit, earth obligations. Gives: readings that one choice of leads serves together, and shortfalls for the
 * rest, one a cause. Method: each reading on its own; then, beginning with each in turn, the others are added while one
 * choice of leads still serves them, and the largest such set is taken. A reading that fails is tried again with one thing
 * otherwise. Cost: readings², only where not all are served at once. Proof: none is claimed for the largest set.
 */
final class EarthShortage {
    private static final Quantity ANY_CURRENT = Quantity.of(Dimension.CURRENT, 1_000_000_000_000_000L);
    private static final int MANY = 8;
    /** Usual sizes of leads, thin ones first. */
    private static final List<String> CONDUCTORS =
            List.of("0.75 mm2", "1 mm2", "1.5 mm2", "2.5 mm2", "4 mm2", "6 mm2", "10 mm2", "16 mm2");

    private final Device device;
    private final Kit kit;
    private final Connectors connectors;
    private final Optional<Quantity> current;
    private final List<Obligation> served;
    private final List<String> uncovered = new ArrayList<>();
    private final List<Shortfall> shortfalls = new ArrayList<>();

    /** What keeps readings away: equal for those that the same thing would help. */
    private record Cause(String about, String because, List<String> additions) {}

    EarthShortage(Device device, Kit kit, Connectors connectors, List<Obligation> earth, Optional<Quantity> current) {
        this.device = device;
        this.kit = kit;
        this.connectors = connectors;
        this.current = current;
        if (earth.isEmpty() || serves(device, kit, earth)) {
            this.served = earth;
            return;
        }
        List<Obligation> reached = earth.stream()
                .filter(each -> serves(device, kit, List.of(each)))
                .toList();
        this.served = largest(reached);
        Map<Cause, List<Obligation>> stopped = new LinkedHashMap<>();
        for (Obligation each : earth) {
            if (!served.contains(each)) {
                Cause cause = reached.contains(each) ? together() : cause(each);
                stopped.computeIfAbsent(cause, key -> new ArrayList<>()).add(each);
                uncovered.add(each.key());
            }
        }
        stopped.forEach((cause, readings) -> shortfalls.add(shortfall(cause, readings)));
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

    private List<Obligation> largest(List<Obligation> reached) {
        List<Obligation> largest = List.of();
        for (Obligation first : reached) {
            if (largest.contains(first)) {
                continue;
            }
            List<Obligation> set = new ArrayList<>(List.of(first));
            for (Obligation each : reached) {
                if (each != first) {
                    set.add(each);
                    if (!serves(device, kit, set)) {
                        set.remove(set.size() - 1);
                    }
                }
            }
            if (set.size() > largest.size()) {
                largest = reached.stream().filter(set::contains).toList();
            }
        }
        return largest;
    }

    private boolean serves(Device of, Kit with, List<Obligation> readings) {
        return !leads(of, with, readings).choices().isEmpty();
    }

    private EarthLead leads(Device of, Kit with, List<Obligation> readings) {
        return new EarthLead(of, with, connectors, readings, current);
    }

    private Shortfall shortfall(Cause cause, List<Obligation> readings) {
        List<String> places = readings.stream()
                .flatMap(each -> each.place().stream())
                .distinct()
                .toList();
        String at = places.isEmpty() ? "" : "at " + String.join(", ", places) + ": ";
        return new Shortfall(
                cause.about(),
                List.of(),
                at + cause.because() + "; not measured: " + Shortage.words(readings),
                cause.additions());
    }

    private static Cause together() {
        return new Cause(
                "earth leads",
                "no one set of earth leads goes on these points and on the others, and leads are not changed between earth"
                        + " readings",
                List.of("a clip or probe that goes on all of them, or a second plan for these points"));
    }

    private Cause cause(Obligation each) {
        List<Obligation> one = List.of(each);
        Tester tester = kit.tester();
        boolean second = EarthLead.reference(each).isPresent();
        boolean able = tester.earthJack().isPresent()
                && tester.earthTest()
                        .map(EarthTest::sockets)
                        .map(sockets -> !second || sockets.contains("second-jack"))
                        .orElse(false);
        if (!able) {
            return new Cause(
                    "earth-test sockets",
                    second
                            ? "the tester has no second jack for the second lead of this reading"
                            : "the tester has no earth jack with an earth test",
                    List.of("a tester whose earth test has the sockets that the reading needs"));
        }
        if (serves(device, WhatIf.plenty(kit, MANY), one)) {
            return stock(one);
        }
        Kit plenty = WhatIf.plenty(kit, MANY);
        if (serves(device, WhatIf.carrying(plenty, ANY_CURRENT), one)) {
            return rated(one);
        }
        if (serves(device, WhatIf.unlimitedNull(plenty), one)) {
            return nulling(one);
        }
        if (serves(device, WhatIf.strongSource(plenty), one)) {
            return driving(one);
        }
        if (serves(WhatIf.near(device), WhatIf.strongSource(plenty), one)) {
            return reach(one);
        }
        return mating(each);
    }

    private Cause stock(List<Obligation> one) {
        List<String> ids =
                kit.items().stream().map(KitItem::id).sorted(NaturalOrder.IDS).toList();
        Additions additions = new Additions(kit, ids, MANY, more -> serves(device, more, one), () -> false);
        List<Map<String, Integer>> smallest = additions.smallest();
        String has = smallest.get(0).keySet().stream()
                .map(id -> kit.item(id).orElseThrow().stock() + " " + id)
                .collect(Collectors.joining(", "));
        return new Cause(
                String.join(", ", smallest.get(0).keySet()),
                "the kit has too few of the leads and ends that would do (" + has + ")",
                smallest.stream().map(additions::text).toList());
    }

    private Cause rated(List<Obligation> one) {
        Quantity asked = leads(device, kit, one).testCurrent();
        List<String> weak = kit.items().stream()
                .filter(item -> item.kind() != ItemKind.FAN_OUT)
                .filter(item -> !leads(device, kit, one).carries(item))
                .map(KitItem::id)
                .sorted(NaturalOrder.IDS)
                .toList();
        return new Cause(
                "earth leads",
                "the leads and ends that reach it are not known to carry the test current of " + asked.text() + " ("
                        + String.join(", ", weak) + ")",
                List.of("a lead and an end rated for " + asked.text() + " or more, their conductor stated"));
    }

    private Cause nulling(List<Obligation> one) {
        String least = leads(device, kit, one)
                .refusedToNull()
                .map(EarthShortage::milliOhms)
                .orElse("more");
        Quantity most = kit.tester().earthTest().orElseThrow().nullUpTo().orElseThrow();
        return new Cause(
                "null-up-to",
                "the leads that reach it have " + least + " at best, and the tester nulls up to " + most.text()
                        + " (null-up-to)",
                thicker(one));
    }

    private Cause driving(List<Obligation> one) {
        return new Cause("earth leads", leads(device, kit, one).refusal(), thicker(one));
    }

    private Cause reach(List<Obligation> one) {
        EarthLead leads = leads(device, kit, one);
        Quantity needed = Quantity.of(Dimension.LENGTH, leads.reach(one.get(0)));
        return new Cause(
                "earth leads",
                "the leads are too short: it needs " + needed.text()
                        + " (the distance and a fifth), and the longest that" + " carries the current has "
                        + longest(leads),
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

    private Cause mating(Obligation each) {
        String terminal = leads(device, kit, List.of(each)).terminal(each);
        String socket = kit.tester().earthJack().orElseThrow().socket();
        return new Cause(
                "earth leads",
                "nothing in the kit that carries the current leads from " + terminal + " to the tester's earth jack ("
                        + socket + ")",
                List.of("a clip or probe that goes on " + terminal + ", and a lead from it to the earth jack"));
    }

    /** Leads like those in the kit, long enough, of the thinnest conductor that does. */
    private List<String> thicker(List<Obligation> one) {
        EarthLead now = leads(device, kit, one);
        Quantity needed = Quantity.of(Dimension.LENGTH, Math.max(now.reach(one.get(0)), 1));
        List<String> proposals = new ArrayList<>();
        for (KitItem item : Bench.items(kit)) {
            if (item.kind() != ItemKind.LEAD || item.length().isEmpty() || !now.carries(item)) {
                continue;
            }
            for (String conductor : CONDUCTORS) {
                KitItem lead = WhatIf.like(item, needed, Optional.of(conductor), 1);
                if (serves(device, WhatIf.with(kit, lead), one)) {
                    proposals.add("1 lead like '" + item.id() + "', " + needed.text() + " long, of " + conductor
                            + " or thicker");
                    break;
                }
            }
        }
        return proposals.isEmpty() ? List.of("a thicker lead, long enough") : proposals.subList(0, 1);
    }

    private static String milliOhms(BigDecimal microOhms) {
        return microOhms.movePointLeft(3).setScale(0, RoundingMode.CEILING).toPlainString() + " mohm";
    }
}
