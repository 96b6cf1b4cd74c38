package leadwright.planner.wire;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import leadwright.catalog.kit.Kit;

/**
 * Phase 13e: a reading that the kit could take if everything stood at the tester's place.
 *
 * <p>Needs: a kit, a reading that it does not serve. Gives: nothing where distance is not the cause; else by how much which
 * chain is too short. Method: the fitting test with all distances away; the longest chain that the
 * pieces at hand make for each connection. Cost: one test.
 */
final class TooShort {
    private TooShort() {}

    static Optional<String> of(Scene scene, Trial trial, Kit kit, Want want) {
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

        String found() {
            List<Leaf> far = far().toList();
            List<Leaf> alone =
                    far.stream().filter(leaf -> longest(leaf) < leaf.reach()).toList();
            Optional<Leaf> worst =
                    alone.stream().max(java.util.Comparator.comparingLong(leaf -> leaf.reach() - longest(leaf)));
            return worst.map(this::measured)
                    .orElse(
                            "each connection alone is within reach, but the pieces that make a chain long enough are too"
                                    + " few for all at once");
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
    }
}
