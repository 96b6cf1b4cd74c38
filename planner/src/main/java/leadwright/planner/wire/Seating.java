package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Phase 4b: seats for the connections of a cell in one arrangement of gathering items.
 *
 * <p>Needs: an arrangement and a cluster. Gives: the options that seat every connection. Method: group by group, all ways
 * to divide the group among its (socket, route) pairs; a pair that takes no less than another of the same socket is dropped
 * first. Cost: in the divisions, few where few pieces are scarce.
 */
final class Seating {
    private static final int MOST_DIVISIONS = 200_000;

    private final Gather gather;
    private final Gather.Arrangement arrangement;
    private final Cluster cluster;
    private final List<Socket> sockets;
    private final int[] free;
    private final List<List<Seat>> seats = new ArrayList<>();
    private final List<Option.Seat> taken = new ArrayList<>();
    private final int[] use;
    private final int gatherUse;
    private int divisions;
    private boolean nothingScarce;

    /** A route into an open socket, with what it takes of the scarce pieces. */
    private record Seat(int socket, Route route, int[] use, long femtofarads, long cost) {}

    Seating(Gather gather, Gather.Arrangement arrangement, Cluster cluster) {
        this.gather = gather;
        this.arrangement = arrangement;
        this.cluster = cluster;
        this.sockets = List.copyOf(arrangement.open().keySet());
        this.free = sockets.stream().mapToInt(arrangement.open()::get).toArray();
        this.use = gather.count(arrangement.use(), arrangement.jacks());
        this.gatherUse = sum(use);
    }

    /** Adds the options of this arrangement; returns whether all were looked at. */
    boolean into(List<Option> options) {
        if (arrangement.places() < cluster.size()) {
            return true;
        }
        for (Cluster.Group group : cluster.groups()) {
            List<Seat> worthHaving = seats(group.leaf());
            if (worthHaving.isEmpty()) {
                return true;
            }
            seats.add(worthHaving);
        }
        divide(0, 0, cluster.groups().get(0).count(), arrangement.femtofarads(), 0, options);
        return divisions <= MOST_DIVISIONS;
    }

    /** Whether some option takes nothing scarce beside the gathering items, so that more of those cannot help. */
    boolean free() {
        return nothingScarce && !gather.capacitance();
    }

    private List<Seat> seats(Leaf leaf) {
        List<Seat> all = new ArrayList<>();
        for (int s = 0; s < sockets.size(); s++) {
            Socket socket = sockets.get(s);
            List<Seat> here = new ArrayList<>();
            for (Route route : gather.routes().into(leaf, socket)) {
                if (leaf.reach() > 0 && route.length() + socket.length() < leaf.reach()) {
                    continue;
                }
                int probes = leaf.kind() == Leaf.Kind.SURFACE ? route.probes() : 0;
                // A link is a lead of its own, no chain: its contacts count as any other's.
                long cost =
                        gather.priced() ? Option.cost(route.items() + 1 + socket.depth(), route.items(), probes) : 0;
                Seat seat = new Seat(s, route, gather.stock().of(route.use()), route.femtofarads(), cost);
                if (here.stream().noneMatch(other -> beats(other, seat))) {
                    here.removeIf(other -> beats(seat, other));
                    here.add(seat);
                }
            }
            all.addAll(here);
        }
        // Those that take nothing scarce first: their options beat the others early.
        all.sort(Comparator.comparingInt((Seat seat) -> sum(seat.use())).thenComparingLong(Seat::cost));
        return all;
    }

    private boolean beats(Seat one, Seat other) {
        return Routes.atMost(one.use(), other.use())
                && (!gather.priced() || one.cost() <= other.cost())
                && (!gather.capacitance() || one.femtofarads() <= other.femtofarads());
    }

    private void divide(int group, int seat, int left, long femtofarads, long cost, List<Option> options) {
        if (left == 0) {
            if (group + 1 < cluster.groups().size()) {
                divide(group + 1, 0, cluster.groups().get(group + 1).count(), femtofarads, cost, options);
            } else {
                offer(femtofarads, cost, options);
            }
            return;
        }
        List<Seat> choices = seats.get(group);
        if (seat == choices.size() || divisions > MOST_DIVISIONS) {
            return;
        }
        Seat choice = choices.get(seat);
        int most = Math.min(left, free[choice.socket()]);
        for (int count = most; count >= 0; count--) {
            divisions++;
            add(choice, count);
            if (gather.stock().holds(use)) {
                taken.add(new Option.Seat(
                        cluster.groups().get(group).leaf(), count, choice.route(), sockets.get(choice.socket())));
                divide(
                        group,
                        seat + 1,
                        left - count,
                        femtofarads + count * choice.femtofarads(),
                        cost + count * choice.cost(),
                        options);
                taken.remove(taken.size() - 1);
            }
            add(choice, -count);
        }
    }

    private void add(Seat seat, int count) {
        free[seat.socket()] -= count;
        for (int i = 0; i < use.length; i++) {
            use[i] += count * seat.use()[i];
        }
    }

    private void offer(long femtofarads, long cost, List<Option> options) {
        for (int s = 0; s < free.length; s++) {
            if (free[s] > 0 && sockets.get(s).fill()) {
                return;
            }
        }
        List<Option.Seat> seated =
                taken.stream().filter(seat -> seat.count() > 0).toList();
        long price = gather.priced() ? cost + Option.cost(0, arrangement.items(), 0) : 0;
        nothingScarce |= sum(use) == gatherUse;
        Option.Layout layout = new Option.Layout(arrangement.jacks(), arrangement.placements(), seated);
        long capped = Math.min(Option.UNKNOWN_CAPACITANCE, femtofarads);
        Menu.add(options, new Option(use.clone(), capped, price, layout), gather.priced(), gather.capacitance());
    }

    private static int sum(int[] numbers) {
        int sum = 0;
        for (int number : numbers) {
            sum += number;
        }
        return sum;
    }
}
