package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.table.Connector;

/**
 * Phase 13c: what a kit would need for connections that none of its kinds of item brings to a jack.
 *
 * <p>Needs: what stands in the way, the reading that asks for most of these connections. Gives: proposals, each tried with the
 * fitting test; where none passes, what to look for, in words that promise nothing. Cost: a few tests a proposal.
 */
final class Remedies {
    /** Rated for whatever the duty asks and longer than that for nothing. */
    private static final Quantity CURRENT = Quantity.microAmperes(1_000_000);

    private final Scene scene;
    private final Trial trial;
    private final List<String> proposals = new ArrayList<>();

    private Remedies(Scene scene, Trial trial) {
        this.scene = scene;
        this.trial = trial;
    }

    /**
     * @param want the reading that asks for most of the connections, without those that something else keeps away
     * @param count how many of its connections are concerned
     */
    static List<String> of(Scene scene, Trial trial, Barrier.Block block, Want want, int count) {
        Remedies remedies = new Remedies(scene, trial);
        switch (block.kind()) {
            case MATING -> remedies.mating(block, want, count);
            case RATING -> remedies.rating(block, want, count);
            case REACH -> remedies.reach(block, want, count);
        }
        return List.copyOf(remedies.proposals);
    }

    private void mating(Barrier.Block block, Want want, int count) {
        List<String> ends = scene.connectors()
                .find(block.leaf().terminal())
                .map(Connector::mates)
                .orElse(List.of());
        Optional<String> plug = plug(want.requirement().duty());
        for (String end : ends) {
            ItemKind kind = kind(end, block.leaf().terminal());
            if (plug.isEmpty() || block.leaf().kind() == Leaf.Kind.TOUCH && kind != ItemKind.PROBE) {
                continue;
            }
            KitItem item = new KitItem(
                    end + WhatIf.NEW,
                    kind,
                    List.of(end, plug.get()),
                    0,
                    List.of(),
                    Optional.of(Quantity.of(Dimension.LENGTH, leafReach(want, block))),
                    Optional.empty(),
                    Optional.of(CURRENT),
                    Optional.of(Quantity.volts(1000)),
                    Optional.of(Quantity.of(Dimension.CAPACITANCE_PER_LENGTH, 0)),
                    count,
                    Optional.empty());
            String text = count + " " + kind.word().replace('-', ' ') + (count == 1 ? "" : "s") + " from " + end
                    + " to " + plug.get() + ", rated for the readings";
            propose(text, WhatIf.with(scene.kit(), item), want);
        }
        if (proposals.isEmpty()) {
            String on = ends.isEmpty() ? "made for " + block.leaf().terminal() : "with " + String.join(" or ", ends);
            proposals.add("items " + on + " for " + count + (count == 1 ? " connection" : " connections")
                    + ", and what leads on to a jack (" + scene.jackSocket() + ")");
        }
    }

    /** The longest that a chain of such connections must be. */
    private long leafReach(Want want, Barrier.Block block) {
        return want.requirement().all().stream()
                .mapToObj(e -> scene.leaves().get(e))
                .filter(leaf -> leaf.terminal().equals(block.leaf().terminal()))
                .mapToLong(Leaf::reach)
                .max()
                .orElse(0);
    }

    private static ItemKind kind(String end, String terminal) {
        return switch (end) {
            case "metal-spot" -> ItemKind.PROBE;
            case "metal-edge" -> ItemKind.CLIP;
            case "foil-wrap", "saline-bath", "fluid-electrode" -> ItemKind.CONTACT_AID;
            default -> ItemKind.ADAPTER;
        };
    }

    /** An end that goes into the jacks and keeps what the duty asks for. */
    private Optional<String> plug(Duty duty) {
        Bench bench = new Bench(scene.kit(), scene.connectors(), duty);
        return scene.connectors().find(scene.jackSocket()).map(Connector::mates).orElse(List.of()).stream()
                .filter(end -> bench.mates(end, scene.jackSocket()))
                .findFirst();
    }

    private void rating(Barrier.Block block, Want want, int count) {
        String volts = Barrier.volts(block.duty()).text();
        List<String> needed = new ArrayList<>(block.items());
        int many = 2 * (scene.jackCount() + scene.leaves().size());
        if (!needed.isEmpty() && trial.fits(rated(WhatIf.plenty(scene.kit(), many), needed, block), want.reading())) {
            for (String id : block.items()) {
                List<String> fewer = new ArrayList<>(needed);
                fewer.remove(id);
                if (trial.fits(rated(WhatIf.plenty(scene.kit(), many), fewer, block), want.reading())) {
                    needed = fewer;
                }
            }
            propose(
                    "'" + String.join("' and '", needed) + "' rated for " + volts + " or more instead",
                    rated(scene.kit(), needed, block),
                    want);
        }
        if (proposals.isEmpty()) {
            proposals.add("such items for " + count + (count == 1 ? " connection" : " connections")
                    + ", with shrouded ends and rated for " + volts + " or more");
        }
    }

    private Kit rated(Kit kit, List<String> ids, Barrier.Block block) {
        return WhatIf.rated(kit, ids, Barrier.volts(block.duty()));
    }

    private void reach(Barrier.Block block, Want want, int count) {
        Quantity length = Quantity.of(Dimension.LENGTH, block.reach());
        for (KitItem item : Bench.items(scene.kit())) {
            if (item.kind() == ItemKind.LEAD && item.length().isPresent()) {
                KitItem longer = WhatIf.like(item, length, item.conductor(), count);
                propose(
                        count + (count == 1 ? " lead like '" : " leads like '") + item.id() + "', " + length.text()
                                + " long or longer",
                        WhatIf.with(scene.kit(), longer),
                        want);
            }
        }
        if (proposals.isEmpty()) {
            proposals.add("leads that make " + (count == 1 ? "the chain" : count + " chains") + " " + length.text()
                    + " long");
        }
    }

    /** Lists the proposal if it does, with further pieces of the kit's own items where it needs these. */
    private void propose(String text, Kit with, Want want) {
        if (trial.fits(with, want.reading())) {
            proposals.add(text);
            return;
        }
        int many = 2 * (scene.jackCount() + want.requirement().all().cardinality());
        List<String> kinds = scene.kit().items().stream()
                .map(KitItem::id)
                .sorted(leadwright.planner.plan.NaturalOrder.IDS)
                .toList();
        Additions additions = new Additions(with, kinds, many, kit -> trial.fits(kit, want.reading()), trial::ended);
        List<java.util.Map<String, Integer>> smallest = trial.ended() ? List.of() : additions.smallest();
        if (!smallest.isEmpty()) {
            proposals.add(text + ", and " + additions.text(smallest.get(0)));
        }
    }
}
