package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.table.Connector;
import leadwright.catalog.table.Connectors;

/**
 * New kinds of item that could help earth readings: what goes on a point, leads that are long and thick enough, items like the
 * kit's that carry the test current.
 */
final class EarthOffers {
    /** Usual sizes of leads, thin ones first. */
    private static final List<String> CONDUCTORS =
            List.of("0.75 mm2", "1 mm2", "1.5 mm2", "2.5 mm2", "4 mm2", "6 mm2", "10 mm2", "16 mm2");
    /** Of an item of which none is stated. */
    private static final String USUAL = "2.5 mm2";

    private static final String TIP = "metal-spot";

    private final Kit kit;
    private final Connectors connectors;
    private final Quantity current;
    private final String socket;

    /**
     * @param current the test current
     * @param socket of the earth jack
     */
    EarthOffers(Kit kit, Connectors connectors, Quantity current, String socket) {
        this.kit = kit;
        this.connectors = connectors;
        this.current = current;
        this.socket = socket;
    }

    /** Items like these that carry the test current. */
    List<Offer> carrying(List<String> ids) {
        List<Offer> offers = new ArrayList<>();
        for (String id : ids) {
            KitItem item = kit.item(id).orElseThrow();
            boolean lead = item.length().isPresent();
            KitItem better = renamed(item, id + " carrying")
                    .withConductor(item.conductor().orElse(USUAL), current);
            offers.add(new Offer(
                    Offer.Origin.NEW,
                    lead ? better : unlike(better),
                    id,
                    lead ? List.of(Offer.Ask.CURRENT, Offer.Ask.CONDUCTOR) : List.of(Offer.Ask.CURRENT),
                    List.of()));
        }
        return offers;
    }

    private static KitItem renamed(KitItem item, String id) {
        return WhatIf.like(item, id + WhatIf.NEW, Bench.length(item), item.branches());
    }

    /** A clip has no conductor of its own. */
    private static KitItem unlike(KitItem item) {
        return new KitItem(
                item.id(),
                item.kind(),
                item.ends(),
                item.branches(),
                item.also(),
                item.length(),
                Optional.empty(),
                item.current(),
                item.voltage(),
                item.capacitance(),
                item.stock(),
                item.price());
    }

    /** A lead like one of the kit's that carry the current, long enough, of the thinnest conductor that does. */
    List<Offer> thicker(Predicate<KitItem> carries, long micrometres, Predicate<Kit> does) {
        for (KitItem item : Bench.items(kit)) {
            if (item.kind() == ItemKind.LEAD && item.length().isPresent() && carries.test(item)) {
                Quantity length = Quantity.of(Dimension.LENGTH, micrometres);
                for (String conductor : CONDUCTORS) {
                    KitItem lead = WhatIf.like(item, length, Optional.of(conductor), 1);
                    if (does.test(WhatIf.with(kit, lead))) {
                        return List.of(new Offer(
                                Offer.Origin.NEW,
                                renamed(lead, item.id() + " long"),
                                item.id(),
                                List.of(Offer.Ask.LENGTH, Offer.Ask.CONDUCTOR),
                                List.of()));
                    }
                }
            }
        }
        return List.of();
    }

    /** What goes on all of these terminals; empty where that is bare of any contact for an earth reading. */
    List<Offer> ends(Set<String> terminals) {
        List<Offer> offers = new ArrayList<>();
        Set<String> ends = new LinkedHashSet<>();
        for (String terminal : terminals) {
            ends.addAll(mates(terminal));
        }
        ends.add(TIP);
        for (String end : ends) {
            List<String> also = terminals.stream()
                    .filter(terminal -> !mates(terminal).contains(end))
                    .toList();
            boolean reaches = end.equals(TIP) || end.equals("metal-edge");
            if (also.isEmpty() || reaches && also.stream().allMatch(each -> mayReach(each, end))) {
                ItemKind kind = switch (end) {
                    case TIP -> ItemKind.PROBE;
                    case "metal-edge" -> ItemKind.CLIP;
                    default -> ItemKind.ADAPTER;
                };
                String id = kind.word() + " " + end + (also.isEmpty() ? "" : " " + String.join(" ", also));
                offers.add(made(id, kind, List.of(socket, end), also, Optional.empty(), Optional.empty()));
            }
        }
        return offers;
    }

    /** A tip goes into a recess; no end reads through paint. */
    private boolean mayReach(String terminal, String end) {
        return end.equals(TIP)
                        && connectors.find(terminal).isPresent()
                        && mates(terminal).isEmpty()
                ? terminal.equals("recessed-pin")
                : mates(terminal).contains(end);
    }

    /** Ends that make contact for an earth reading. */
    private List<String> mates(String terminal) {
        return connectors.find(terminal).map(Connector::mates).orElse(List.of()).stream()
                .filter(end -> !end.equals("foil-wrap") && !end.equals("saline-bath") && !end.equals("fluid-electrode"))
                .toList();
    }

    /** A lead from the earth jack to what goes on a point, of the thinnest conductor that does with these. */
    List<Offer> lead(long micrometres, List<Offer> ends, Predicate<Kit> does) {
        Optional<String> plug = connectors.find(socket).map(Connector::mates).orElse(List.of()).stream()
                .findFirst();
        if (plug.isEmpty()) {
            return List.of();
        }
        Kit with = kit;
        for (Offer end : ends) {
            with = WhatIf.with(with, end.item().withStock(2));
        }
        for (String conductor : CONDUCTORS) {
            Offer lead = made(
                    "earth lead",
                    ItemKind.LEAD,
                    List.of(plug.get(), plug.get()),
                    List.of(),
                    Optional.of(Quantity.of(Dimension.LENGTH, micrometres)),
                    Optional.of(conductor));
            if (does.test(WhatIf.with(with, lead.item().withStock(2)))) {
                return List.of(lead);
            }
        }
        return List.of();
    }

    private Offer made(
            String id,
            ItemKind kind,
            List<String> ends,
            List<String> also,
            Optional<Quantity> length,
            Optional<String> conductor) {
        KitItem item = new KitItem(
                id + WhatIf.NEW,
                kind,
                ends,
                0,
                also,
                length,
                conductor,
                Optional.of(current),
                Optional.empty(),
                Optional.empty(),
                0,
                Optional.empty());
        List<Offer.Ask> asked = new ArrayList<>();
        if (length.isPresent()) {
            asked.add(Offer.Ask.LENGTH);
            asked.add(Offer.Ask.CONDUCTOR);
        }
        asked.add(Offer.Ask.CURRENT);
        if (!also.isEmpty()) {
            asked.add(Offer.Ask.ALSO);
        }
        return new Offer(Offer.Origin.NEW, item, "", asked, List.of());
    }
}
