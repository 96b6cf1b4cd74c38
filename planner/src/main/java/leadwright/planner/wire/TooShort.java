package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.table.Connector;

/**
 * Phase 13e: a reading that the kit could take if everything stood at the tester's place.
 *
 * <p>Needs: a kit, a reading that it does not serve. Gives: nothing where distance is not the cause; else by how much which
 * chain is too short, and leads that would do. Method: the fitting test with all distances away; the longest chain that the
 * pieces at hand make for each connection; leads put behind each short chain, tried with the fitting test. Cost: a few tests.
 *
 * @param because what is too short, and by how much
 * @param leads proposals of one new kind of lead each
 */
record TooShort(String because, List<String> leads) {
    /** Rated for whatever the duty asks. */
    private static final Quantity CURRENT = Quantity.microAmperes(1_000_000);

    private static final Quantity VOLTAGE = Quantity.volts(1000);
    /** Ways of putting a lead into a chain that are tried. */
    private static final int MOST_TRIED = 24;

    TooShort {
        leads = List.copyOf(leads);
    }

    static Optional<TooShort> of(Scene scene, Trial trial, Kit kit, Want want) {
        boolean near = trial.fits(WhatIf.near(scene.device()), kit, scene.house(), want.reading());
        return near ? Optional.of(new Search(scene, trial, kit, want).found()) : Optional.empty();
    }

    private static final class Search {
        private final Scene scene;
        private final Trial trial;
        private final Kit kit;
        private final Want want;
        private final Tray tray;

        Search(Scene scene, Trial trial, Kit kit, Want want) {
            this.scene = scene;
            this.trial = trial;
            this.kit = kit;
            this.want = want;
            this.tray = trial.tray(kit, want.reading());
        }

        private Stream<Leaf> far() {
            return scene.connections().stream()
                    .filter(each -> want.reading().demand().all().contains(each.name()))
                    .map(each -> scene.leaves().get(scene.connections().indexOf(each)))
                    .filter(leaf -> leaf.reach() > 0);
        }

        TooShort found() {
            List<Leaf> far = far().toList();
            List<Leaf> alone =
                    far.stream().filter(leaf -> longest(leaf) < leaf.reach()).toList();
            Optional<Leaf> worst =
                    alone.stream().max(java.util.Comparator.comparingLong(leaf -> leaf.reach() - longest(leaf)));
            String because = worst.map(this::measured)
                    .orElse(
                            "each connection alone is within reach, but the pieces that make a chain long enough are too"
                                    + " few for all at once");
            Leaf farthest = worst.orElseGet(() -> far.stream()
                    .max(java.util.Comparator.comparingLong(Leaf::reach))
                    .orElseThrow());
            for (int count = Math.max(1, alone.size()); count <= far.size(); count++) {
                List<String> leads = leads(farthest, count);
                if (!leads.isEmpty()) {
                    return new TooShort(because, leads);
                }
            }
            return new TooShort(because, List.of());
        }

        private long longest(Leaf leaf) {
            return tray.routes().into(leaf, Socket.jack(scene.jackSocket())).stream()
                    .mapToLong(Route::length)
                    .max()
                    .orElse(0);
        }

        private String measured(Leaf leaf) {
            long longest = longest(leaf);
            return "with " + leaf.terminal() + " a chain must be " + Barrier.metres(leaf.reach())
                    + " long (the distance and a fifth, less the device's own cable), and the longest that the kit's pieces"
                    + " make is " + Barrier.metres(longest) + ": too short by "
                    + Barrier.metres(leaf.reach() - longest);
        }

        /** Leads that go on what stands on the connection and into a jack. */
        private List<String> leads(Leaf leaf, int count) {
            List<Routes.Label> starts = new ArrayList<>();
            tray.routes().from(leaf).stream()
                    .filter(each -> each.route().items() == 1)
                    .filter(each -> each.route().steps().get(0).part().item().kind() != ItemKind.FAN_OUT)
                    .forEach(starts::add);
            // Last what goes on the connection itself: a lead with foil or a clip of its own is rare.
            starts.add(new Routes.Label(leaf.terminal(), new Route(List.of(), new int[0], 0, 0)));
            List<String> plugs = mates(scene.jackSocket());
            int tried = 0;
            for (Routes.Label start : starts) {
                long least = leaf.reach() - start.route().length();
                for (String end : least > 0 ? mates(start.end()) : List.<String>of()) {
                    for (String plug : plugs) {
                        if (++tried > MOST_TRIED || trial.ended()) {
                            return List.of();
                        }
                        KitItem lead = lead(end, plug, least, count);
                        if (trial.fits(WhatIf.with(kit, lead), want.reading())) {
                            return List.of(text(start, end, plug, least, count));
                        }
                    }
                }
            }
            return List.of();
        }

        private List<String> mates(String end) {
            List<String> all =
                    scene.connectors().find(end).map(Connector::mates).orElse(List.of());
            return all.stream().filter(other -> tray.bench().mates(end, other)).toList();
        }

        private KitItem lead(String from, String to, long micrometres, int count) {
            return new KitItem(
                    "lead" + WhatIf.NEW,
                    ItemKind.LEAD,
                    List.of(from, to),
                    0,
                    List.of(),
                    Optional.of(Quantity.of(Dimension.LENGTH, micrometres)),
                    Optional.empty(),
                    Optional.of(CURRENT),
                    Optional.of(VOLTAGE),
                    Optional.of(Quantity.of(Dimension.CAPACITANCE_PER_LENGTH, 0)),
                    count,
                    Optional.empty());
        }

        private static String text(Routes.Label start, String from, String to, long least, int count) {
            String behind = start.route().steps().isEmpty()
                    ? ""
                    : ", behind " + start.route().steps().get(0).part().item().id();
            return count + (count == 1 ? " lead" : " leads") + " from " + from + " to " + to + " of at least "
                    + Barrier.metres(least) + behind + ", rated for the readings";
        }
    }
}
