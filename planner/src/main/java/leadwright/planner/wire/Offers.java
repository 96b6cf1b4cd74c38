package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.table.Connector;
import leadwright.planner.plan.NaturalOrder;

/**
 * Phase 13c: kinds of item that could help readings which are stopped.
 *
 * <p>Needs: the readings, each with what stands in its way. Gives: the kit's own kinds that their chains may hold; where these
 * are not enough, new kinds: what goes on a terminal and into a jack, an item of the kit with the rating that it lacks, leads
 * that are long enough, and a fan-out where chains do not all find a jack. Whether they do is for {@link Additions} to find.
 * Cost: one search of routes a reading.
 */
final class Offers {
    /** More branches than any fan-out that is sold needs to have; the least number that does is proposed. */
    private static final int BRANCHES = 24;

    private static final Quantity CURRENT = Quantity.microAmperes(1_000_000);

    private final Scene scene;
    private final Trial trial;
    private final Barrier barrier;
    private final Duty strictest;

    /** @param strictest of everything that is stopped: a new item is rated for it */
    Offers(Scene scene, Trial trial, Barrier barrier, Duty strictest) {
        this.scene = scene;
        this.trial = trial;
        this.barrier = barrier;
        this.strictest = strictest;
    }

    /** The kit's own kinds that a chain of these readings may hold: more of others cannot help. */
    List<Offer> own(List<Want> wants, List<Offer> fresh) {
        SortedSet<String> met = new TreeSet<>(NaturalOrder.IDS);
        Kit kit = scene.kit();
        for (Offer offer : fresh) {
            kit = WhatIf.with(kit, offer.item());
        }
        Kit plenty = WhatIf.plenty(kit, 2);
        for (Want want : wants) {
            Tray tray = trial.tray(plenty, want.reading());
            List<Leaf> leaves = new ArrayList<>(leaves(want));
            tray.bench().parts().stream().filter(Part::gathers).forEach(part -> {
                leaves.add(Leaf.trunk(part.out()));
                met.add(part.item().id());
            });
            for (Leaf leaf : leaves.stream().distinct().toList()) {
                for (Routes.Label label : tray.routes().from(leaf)) {
                    label.route()
                            .steps()
                            .forEach(step -> met.add(step.part().item().id()));
                }
            }
        }
        return met.stream()
                .flatMap(id -> scene.kit().item(id).stream())
                .map(Offer::own)
                .toList();
    }

    private List<Leaf> leaves(Want want) {
        return scene.connections().stream()
                .filter(each -> want.reading().demand().all().contains(each.name()))
                .map(each -> scene.leaves().get(scene.connections().indexOf(each)))
                .toList();
    }

    /**
     * New kinds for what stands in the way of these connections.
     *
     * @param instead whether also other items where the kit's own would do with a better rating
     */
    List<Offer> fresh(List<Want> wants, boolean instead) {
        Map<String, Offer> offers = new TreeMap<>(NaturalOrder.IDS);
        for (Want want : wants) {
            Duty duty = want.requirement().duty();
            for (Leaf leaf : leaves(want).stream().distinct().toList()) {
                barrier.of(leaf, duty).ifPresent(block -> add(offers, leaf, block, instead));
            }
        }
        return List.copyOf(offers.values());
    }

    private void add(Map<String, Offer> offers, Leaf leaf, Barrier.Block block, boolean instead) {
        switch (block.kind()) {
            case MATING -> contacts(offers, leaf);
            case RATING -> {
                for (String id : block.items()) {
                    KitItem item = scene.kit().item(id).orElseThrow();
                    if (weak(item)) {
                        put(offers, rated(item));
                    }
                }
                if (instead) {
                    contacts(offers, leaf);
                }
            }
            case REACH -> {}
        }
    }

    /** Leads for what is too far away. */
    List<Offer> leads(List<Want> wants) {
        SortedSet<Long> lengths = new TreeSet<>();
        Kit plenty = WhatIf.plenty(scene.kit(), 2);
        for (Want want : wants) {
            Tray tray = trial.tray(plenty, want.reading());
            for (Leaf leaf : leaves(want)) {
                if (leaf.reach() > 0) {
                    lengths.add(leaf.reach());
                    for (Routes.Label label : tray.routes().from(leaf)) {
                        lengths.add(Math.max(1, leaf.reach() - label.route().length()));
                    }
                }
            }
        }
        if (lengths.isEmpty()) {
            return List.of();
        }
        Map<String, Offer> offers = new TreeMap<>(NaturalOrder.IDS);
        List<Long> rising = List.copyOf(lengths);
        long longest = lengths.last();
        for (KitItem item : Bench.items(scene.kit())) {
            if (item.kind() == ItemKind.LEAD && item.length().isPresent() && Bench.length(item) < longest) {
                List<Offer.Ask> asked = new ArrayList<>(List.of(Offer.Ask.LENGTH));
                KitItem longer = WhatIf.like(item, item.id() + " long" + WhatIf.NEW, longest, 0);
                if (weak(item)) {
                    longer = longer.withVoltage(Barrier.volts(strictest));
                    asked.add(Offer.Ask.VOLTAGE);
                }
                List<Long> more = rising.stream()
                        .filter(each -> each > Bench.length(item))
                        .toList();
                put(offers, new Offer(Offer.Origin.NEW, longer, item.id(), asked, more));
            }
        }
        plug().ifPresent(plug -> {
            Bench bench = new Bench(scene.kit(), scene.connectors(), strictest);
            for (String socket : mates(plug)) {
                boolean has = offers.values().stream()
                        .anyMatch(each -> each.item().ends().equals(List.of(socket, plug))
                                || each.item().ends().equals(List.of(plug, socket)));
                if (!has && bench.mates(socket, plug)) {
                    put(offers, made("lead from " + socket, ItemKind.LEAD, socket, plug, longest, rising));
                }
            }
        });
        return List.copyOf(offers.values());
    }

    /** A fan-out that takes whatever goes into a jack, and goes into one. */
    List<Offer> fanOut() {
        return plug().map(plug -> {
                    KitItem item = new KitItem(
                            "fan-out" + WhatIf.NEW,
                            ItemKind.FAN_OUT,
                            List.of(plug, scene.jackSocket()),
                            BRANCHES,
                            List.of(),
                            Optional.empty(),
                            Optional.empty(),
                            Optional.of(CURRENT),
                            volts(),
                            capacitance(),
                            0,
                            Optional.empty());
                    return List.of(new Offer(Offer.Origin.NEW, item, "", asked(false), List.of()));
                })
                .orElse(List.of());
    }

    /** What goes on the terminal and leads into a jack, of its own length where the terminal is far. */
    private void contacts(Map<String, Offer> offers, Leaf leaf) {
        Bench bench = new Bench(scene.kit(), scene.connectors(), strictest);
        for (String end : mates(leaf.terminal())) {
            ItemKind kind = kind(end);
            if (!bench.mates(leaf.terminal(), end) || leaf.kind() == Leaf.Kind.TOUCH && kind != ItemKind.PROBE) {
                continue;
            }
            plug().ifPresent(plug -> {
                put(offers, made(kind.word() + " " + end, kind, end, plug, 0, List.of()));
                if (leaf.reach() > 0) {
                    ItemKind far = kind == ItemKind.ADAPTER ? ItemKind.LEAD : kind;
                    put(offers, made("long " + kind.word() + " " + end, far, end, plug, leaf.reach(), reaches(leaf)));
                }
            });
        }
    }

    /** Of connections with the same terminal, how far their chains may have to reach. */
    private List<Long> reaches(Leaf leaf) {
        return scene.leaves().stream()
                .filter(each -> each.terminal().equals(leaf.terminal()) && each.reach() > 0)
                .map(Leaf::reach)
                .distinct()
                .sorted()
                .toList();
    }

    private Offer made(String id, ItemKind kind, String from, String to, long micrometres, List<Long> lengths) {
        KitItem item = new KitItem(
                id + WhatIf.NEW,
                kind,
                List.of(from, to),
                0,
                List.of(),
                micrometres == 0 ? Optional.empty() : Optional.of(Quantity.of(Dimension.LENGTH, micrometres)),
                Optional.empty(),
                Optional.of(CURRENT),
                volts(),
                capacitance(),
                0,
                Optional.empty());
        return new Offer(Offer.Origin.NEW, item, "", asked(micrometres > 0), lengths);
    }

    private List<Offer.Ask> asked(boolean length) {
        List<Offer.Ask> asked = new ArrayList<>();
        if (length) {
            asked.add(Offer.Ask.LENGTH);
        }
        if (strictest.microvolts() > 0) {
            asked.add(Offer.Ask.VOLTAGE);
        }
        if (scene.hardCapacitance()) {
            asked.add(Offer.Ask.CAPACITANCE);
        }
        return asked;
    }

    private Offer rated(KitItem item) {
        KitItem other = WhatIf.like(item, item.id() + " rated" + WhatIf.NEW, Bench.length(item), item.branches())
                .withVoltage(Barrier.volts(strictest));
        return new Offer(Offer.Origin.NEW, other, item.id(), List.of(Offer.Ask.VOLTAGE), List.of());
    }

    private boolean weak(KitItem item) {
        return strictest.microvolts() > 0
                && item.voltage()
                        .map(has -> has.amount() < strictest.microvolts())
                        .orElse(true);
    }

    private Optional<Quantity> volts() {
        return strictest.microvolts() > 0 ? Optional.of(Barrier.volts(strictest)) : Optional.empty();
    }

    private Optional<Quantity> capacitance() {
        return scene.hardCapacitance()
                ? Optional.of(Quantity.of(Dimension.CAPACITANCE_PER_LENGTH, 0))
                : Optional.empty();
    }

    /** The longer, where a kind is offered for two distances. */
    private static void put(Map<String, Offer> offers, Offer offer) {
        offers.merge(
                offer.item().id(),
                offer,
                (one, other) -> Bench.length(one.item()) >= Bench.length(other.item()) ? one : other);
    }

    /** What joins an end: what keeps its protection first, else what only makes contact. */
    private List<String> mates(String end) {
        return scene.connectors()
                .find(end)
                .map(each -> each.mates().isEmpty() ? each.matesUnprotected() : each.mates())
                .orElse(List.of());
    }

    private static ItemKind kind(String end) {
        return switch (end) {
            case "metal-spot" -> ItemKind.PROBE;
            case "metal-edge" -> ItemKind.CLIP;
            case "foil-wrap", "saline-bath", "fluid-electrode" -> ItemKind.CONTACT_AID;
            default -> ItemKind.ADAPTER;
        };
    }

    /** An end that goes into the jacks and keeps what the duty asks for. */
    private Optional<String> plug() {
        Bench bench = new Bench(scene.kit(), scene.connectors(), strictest);
        return scene.connectors().find(scene.jackSocket()).map(Connector::mates).orElse(List.of()).stream()
                .filter(end -> bench.mates(end, scene.jackSocket()))
                .findFirst();
    }

    /** Own kinds first, then new ones, each in natural order. */
    static List<Offer> joined(List<Offer> one, List<Offer> other) {
        Map<String, Offer> all = new LinkedHashMap<>();
        one.forEach(each -> put(all, each));
        other.forEach(each -> put(all, each));
        return all.values().stream()
                .sorted(Comparator.comparing(Offer::isNew)
                        .thenComparing(each -> each.like().isEmpty())
                        .thenComparing(each -> each.item().id(), NaturalOrder.IDS))
                .toList();
    }
}
