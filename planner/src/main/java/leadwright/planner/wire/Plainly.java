package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Phase 6c: a fitting in items from numbers of places.
 *
 * <p>Needs: an answer of phase 6a. Gives: an option a cell. Method: the fan-outs of a cell from the jacks outwards, largest
 * first, so that chains are short; combs next; then every leaf by the ways that were counted. Cost: linear in the places.
 */
final class Plainly {
    private final Tray tray;
    private final PlainKit kit;
    private final List<Leaf> leaves;
    private final int[][] counts;
    private final String jackSocket;
    private final int jackCount;

    Plainly(Tray tray, PlainKit kit, List<Leaf> leaves, int[][] counts, String jackSocket, int jackCount) {
        this.tray = tray;
        this.kit = kit;
        this.leaves = leaves;
        this.counts = counts;
        this.jackSocket = jackSocket;
        this.jackCount = jackCount;
    }

    Fit.Fitting fitting(Places.Answer found, List<Integer> row) {
        Shelf.Shares shares = new Frugal(kit.gains(), found.places(), found.shares(), jackCount).shares();
        Places.Answer answer = new Places.Answer(found.combs(), found.places(), shares, found.uses());
        List<PlainKit.Fan> fans = new ArrayList<>();
        for (PlainKit.Fan fan : kit.fans()) {
            for (int piece = 0; piece < fan.stock(); piece++) {
                fans.add(fan);
            }
        }
        int[][] waysLeft =
                Arrays.stream(answer.uses().taken()).map(int[]::clone).toArray(int[][]::new);
        List<Option> options = new ArrayList<>();
        for (int cell = 0; cell < counts.length; cell++) {
            List<PlainKit.Fan> own = new ArrayList<>();
            for (int fan = 0; fan < fans.size(); fan++) {
                if (answer.shares().owner()[fan] == cell) {
                    own.add(fans.get(fan));
                }
            }
            options.add(option(cell, own, answer.combs()[cell], answer.shares().jacks()[cell], waysLeft));
        }
        int earth = answer.uses().earth();
        return new Fit.Fitting(
                options, earth < 0 ? Optional.empty() : Optional.of(tray.earth().get(earth)), row, false);
    }

    private Option option(int cell, List<PlainKit.Fan> fans, int[] combs, int jacks, int[][] waysLeft) {
        List<Socket> open = new ArrayList<>();
        for (int jack = 0; jack < jacks; jack++) {
            open.add(Socket.jack(jackSocket));
        }
        List<Option.Placement> placements = new ArrayList<>();
        fans.forEach(fan -> place(fan.part(), fan.trunk(), open, placements));
        List<Option.Seat> seats = new ArrayList<>();
        int[] waiting = counts[cell].clone();
        for (int c = 0; c < combs.length; c++) {
            PlainKit.Comb comb = kit.combs().get(c);
            for (int piece = 0; piece < combs[c]; piece++) {
                Socket branch = place(comb.part(), comb.trunk(), open, placements);
                int here = Math.min(waiting[comb.leaf()], comb.branches());
                waiting[comb.leaf()] -= here;
                open.removeIf(branch::equals);
                if (here > 0) {
                    seats.add(new Option.Seat(leaves.get(comb.leaf()), here, comb.seat(), branch));
                }
            }
        }
        for (int leaf = 0; leaf < waiting.length; leaf++) {
            for (; waiting[leaf] > 0; waiting[leaf]--) {
                seats.add(seat(leaf, open, waysLeft));
            }
        }
        Option.Layout layout = new Option.Layout(jacks, placements, seats);
        return new Option(new int[tray.stock().limits().length], 0, 0, 0, layout);
    }

    /** Puts an item into the first end that takes it; returns the kind of end that its branches are. */
    private Socket place(Part part, Route counted, List<Socket> open, List<Option.Placement> placements) {
        Leaf trunk = Leaf.trunk(part.out());
        for (int at = 0; at < open.size(); at++) {
            Optional<Route> way = way(trunk, open.get(at), tray.stock().of(counted.use()));
            if (way.isPresent()) {
                Option.Placement placement = new Option.Placement(part, way.get(), open.remove(at));
                placements.add(placement);
                Socket branch = Gather.opened(placement, part.inlets().get(0), 0, false);
                part.inlets().forEach(inlet -> open.add(branch));
                return branch;
            }
        }
        throw new IllegalStateException("no place for " + part.item().id());
    }

    private Option.Seat seat(int leaf, List<Socket> open, int[][] waysLeft) {
        for (int way = 0; way < waysLeft[leaf].length; way++) {
            if (waysLeft[leaf][way] == 0) {
                continue;
            }
            int[] use = tray.stock().of(kit.routes().get(leaf).get(way).use());
            for (int at = 0; at < open.size(); at++) {
                Optional<Route> route = way(leaves.get(leaf), open.get(at), use);
                if (route.isPresent()) {
                    waysLeft[leaf][way]--;
                    return new Option.Seat(leaves.get(leaf), 1, route.get(), open.remove(at));
                }
            }
        }
        throw new IllegalStateException("no place for " + leaves.get(leaf));
    }

    /** The way into this end that takes these scarce pieces, of those the one of fewest items. */
    private Optional<Route> way(Leaf leaf, Socket socket, int[] use) {
        return tray.routes().into(leaf, socket).stream()
                .filter(route ->
                        route.steps().stream().noneMatch(step -> step.part().gathers()))
                .filter(route -> Arrays.equals(tray.stock().of(route.use()), use))
                .min(Comparator.comparingInt(Route::items));
    }
}
