package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.table.Connector;
import leadwright.catalog.table.Connectors;
import leadwright.catalog.table.Mating;
import leadwright.planner.plan.NaturalOrder;

/**
 * Phase 2: the kit as the readings of a hookup allow it to be used.
 *
 * <p>Needs: scene, duty. Gives: the items in every way of using them, and what mates with what. Method: an item without
 * the voltage rating is left out; bare ends and joints that lose a protective property are left out for insulation and for
 * a source that is not limited to 3.5 mA, and may not stay free where they are allowed with one that is. Cost: linear in
 * the items.
 */
final class Bench {
    /** Formats: bare ends only with a source limited to 3.5 mA. */
    private static final Quantity LIMITED_SOURCE = Quantity.microAmperes(3500);

    private static final List<String> REACHING_ENDS = List.of("metal-edge", "metal-spot");

    private final Connectors connectors;
    private final Duty duty;
    private final Map<String, Map<String, Boolean>> mating = new HashMap<>();
    private final boolean bareAllowed;
    private final List<KitItem> items;
    private final List<Part> parts;

    Bench(Kit kit, Connectors connectors, Duty duty) {
        this.connectors = connectors;
        this.duty = duty;
        boolean limited = kit.tester()
                .partSource()
                .map(source -> source.shortCircuit().atMost(LIMITED_SOURCE))
                .orElse(false);
        this.bareAllowed = !duty.insulation() && (!duty.mains() || limited);
        this.items = items(kit);
        List<Part> all = new ArrayList<>();
        for (int piece = 0; piece < items.size(); piece++) {
            if (usable(items.get(piece))) {
                all.addAll(parts(piece, items.get(piece)));
            }
        }
        this.parts = List.copyOf(all);
    }

    /** Kinds of item in the kit in natural order: their positions are the piece numbers. */
    static List<KitItem> items(Kit kit) {
        return kit.items().stream()
                .sorted(Comparator.comparing(KitItem::id, NaturalOrder.IDS))
                .toList();
    }

    List<KitItem> items() {
        return items;
    }

    List<Part> parts() {
        return parts;
    }

    int[] stock() {
        return items.stream().mapToInt(KitItem::stock).toArray();
    }

    /** Whether the duty lets this item into a chain at all. */
    boolean usable(KitItem item) {
        if (duty.microvolts() > 0
                && item.voltage()
                        .map(rated -> rated.amount() < duty.microvolts())
                        .orElse(true)) {
            return false;
        }
        return bareAllowed || item.ends().stream().noneMatch(this::bare);
    }

    /** Whether the two ends join in this duty. It is asked of few pairs, very often. */
    boolean mates(String one, String other) {
        return mating.computeIfAbsent(one, key -> new HashMap<>()).computeIfAbsent(other, key -> joins(one, other));
    }

    private boolean joins(String one, String other) {
        Mating mating = connectors.mates(one, other);
        if (mating == Mating.NO || tooWeak(one) || tooWeak(other)) {
            return false;
        }
        return bareAllowed || (mating == Mating.YES && !bare(one) && !bare(other));
    }

    /** Whether a terminal takes this end of an item; a clip or probe also reaches what it lists. */
    boolean takes(Leaf leaf, Part part, Part.Inlet inlet) {
        if (leaf.kind() == Leaf.Kind.TOUCH && part.item().kind() != ItemKind.PROBE) {
            return false;
        }
        return mates(leaf.terminal(), inlet.end()) || inlet.also().contains(leaf.terminal());
    }

    /** Whether a terminal itself goes into an open socket. */
    boolean takes(Leaf leaf, Socket socket) {
        if (leaf.kind() == Leaf.Kind.TOUCH && !socket.probe()) {
            return false;
        }
        return mates(leaf.terminal(), socket.end()) || socket.also().contains(leaf.terminal());
    }

    private boolean bare(String end) {
        return connectors.find(end).map(Connector::unshrouded).orElse(false);
    }

    private boolean tooWeak(String end) {
        return connectors
                .find(end)
                .flatMap(Connector::voltage)
                .map(rated -> rated.amount() < duty.microvolts())
                .orElse(false);
    }

    private List<Part> parts(int piece, KitItem item) {
        String first = item.ends().get(0);
        String second = item.ends().get(1);
        if (item.kind() == ItemKind.FAN_OUT) {
            Part.Inlet branch = inlet(item, second, false);
            boolean fill = duty.mains() && bare(second);
            Part.Inlet filled = new Part.Inlet(branch.end(), branch.also(), branch.length(), fill, false);
            List<Part.Inlet> inlets = new ArrayList<>(Collections.nCopies(item.branches(), filled));
            rear(first).ifPresent(end -> inlets.add(rearInlet(end, 0)));
            return List.of(part(piece, item, first, inlets));
        }
        List<Part> ways = new ArrayList<>();
        ways.add(part(piece, item, second, inlets(item, first, second)));
        if (!first.equals(second)) {
            ways.add(part(piece, item, first, inlets(item, second, first)));
        }
        return ways;
    }

    private List<Part.Inlet> inlets(KitItem item, String in, String out) {
        List<Part.Inlet> inlets = new ArrayList<>();
        inlets.add(inlet(item, in, false));
        rear(in).ifPresent(end -> inlets.add(rearInlet(end, length(item))));
        rear(out).ifPresent(end -> inlets.add(rearInlet(end, 0)));
        return inlets;
    }

    private Part.Inlet rearInlet(String end, long length) {
        return new Part.Inlet(end, List.of(), length, duty.mains() && bare(end), true);
    }

    private Part.Inlet inlet(KitItem item, String end, boolean fill) {
        List<String> also = REACHING_ENDS.contains(end) ? item.also() : List.of();
        return new Part.Inlet(end, also, length(item), fill, false);
    }

    private Optional<String> rear(String end) {
        return connectors.find(end).flatMap(Connector::rear);
    }

    private static Part part(int piece, KitItem item, String out, List<Part.Inlet> inlets) {
        return new Part(piece, item, out, List.copyOf(inlets), Capacitance.of(item), Capacitance.known(item));
    }

    /** Micrometres; 0 where it states none. */
    static long length(KitItem item) {
        return item.length().map(Quantity::amount).orElse(0L);
    }
}
