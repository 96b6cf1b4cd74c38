package leadwright.planner.wire;

import java.nio.IntBuffer;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Phase 4b: seats for the connections of a cell in one arrangement of gathering items.
 *
 * <p>Needs: an arrangement and a cluster. Gives: the options that seat every connection. Method: socket after socket, so
 * many of each group through each route worth having; of ways that leave the same groups waiting and took the same scarce
 * pieces only the cheapest is kept. Cost: in the sizes of the groups and what they can take of scarce pieces, with a budget.
 * Proof: what comes later depends on nothing else.
 */
final class Seating {
    private static final int MOST_STATES = 60_000;

    private final Gather gather;
    private final Gather.Arrangement arrangement;
    private final Cluster cluster;
    private final int[] gatherUse;
    private boolean nothingScarce;

    /** A route of a group into a kind of socket, with what it takes of the scarce pieces. */
    private record Seat(int group, Route route, int[] use, long femtofarads, long cost) {}

    /**
     * @param left connections of each group that wait
     * @param free sockets of the present kind that are open
     * @param before what it came from by seating {@code count} on {@code seat}
     */
    private record State(
            int[] left, int free, int[] use, long femtofarads, long cost, State before, Option.Seat taken) {

        IntBuffer key() {
            int[] key = java.util.Arrays.copyOf(left, left.length + 1 + use.length);
            key[left.length] = free;
            System.arraycopy(use, 0, key, left.length + 1, use.length);
            return IntBuffer.wrap(key);
        }
    }

    Seating(Gather gather, Gather.Arrangement arrangement, Cluster cluster) {
        this.gather = gather;
        this.arrangement = arrangement;
        this.cluster = cluster;
        this.gatherUse = gather.count(arrangement.use(), arrangement.jacks());
    }

    /** Adds the options of this arrangement; returns whether all were looked at. */
    boolean into(List<Option> options) {
        if (arrangement.places() < cluster.size()) {
            return true;
        }
        int[] waiting = cluster.groups().stream().mapToInt(Cluster.Group::count).toArray();
        List<State> states = List.of(new State(waiting, 0, gatherUse, arrangement.femtofarads(), 0, null, null));
        int placesLater = arrangement.places();
        for (Map.Entry<Socket, Integer> entry : arrangement.open().entrySet()) {
            placesLater -= entry.getValue();
            states = seated(states, entry.getKey(), entry.getValue(), placesLater);
            if (states.size() > MOST_STATES) {
                return false;
            }
        }
        for (State state : states) {
            if (sum(state.left()) == 0) {
                offer(state, options);
            }
        }
        return true;
    }

    /** Whether some option takes nothing scarce beside the gathering items, so that more of those cannot help. */
    boolean free() {
        return nothingScarce && !gather.capacitance();
    }

    /** Fills one kind of socket in every way worth having. */
    private List<State> seated(List<State> from, Socket socket, int count, int placesLater) {
        List<State> states = from.stream()
                .map(state -> new State(
                        state.left(),
                        count,
                        state.use(),
                        state.femtofarads(),
                        state.cost(),
                        state.before(),
                        state.taken()))
                .toList();
        for (Seat seat : seats(socket)) {
            Map<IntBuffer, List<State>> next = new LinkedHashMap<>();
            for (State state : states) {
                int most = Math.min(state.left()[seat.group()], state.free());
                for (int taken = 0; taken <= most; taken++) {
                    State more = taken == 0 ? state : more(state, seat, socket, taken);
                    if (gather.stock().holds(more.use())) {
                        keep(next.computeIfAbsent(more.key(), key -> new ArrayList<>(1)), more);
                    }
                }
            }
            states = next.values().stream().flatMap(Collection::stream).toList();
            if (states.size() > MOST_STATES) {
                return states;
            }
        }
        return states.stream()
                .filter(state -> !socket.fill() || state.free() == 0)
                .filter(state -> sum(state.left()) <= placesLater)
                .toList();
    }

    private State more(State state, Seat seat, Socket socket, int count) {
        Leaf leaf = cluster.groups().get(seat.group()).leaf();
        int[] left = state.left().clone();
        left[seat.group()] -= count;
        int[] use = state.use().clone();
        for (int i = 0; i < use.length; i++) {
            use[i] += count * seat.use()[i];
        }
        return new State(
                left,
                state.free() - count,
                use,
                state.femtofarads() + count * seat.femtofarads(),
                state.cost() + count * seat.cost(),
                state,
                new Option.Seat(leaf, count, seat.route(), socket));
    }

    private void keep(List<State> states, State next) {
        for (State other : states) {
            if (notWorse(other, next)) {
                return;
            }
        }
        states.removeIf(other -> notWorse(next, other));
        states.add(next);
    }

    private boolean notWorse(State one, State other) {
        return one.cost() <= other.cost() && (!gather.capacitance() || one.femtofarads() <= other.femtofarads());
    }

    private List<Seat> seats(Socket socket) {
        List<Seat> all = new ArrayList<>();
        for (int group = 0; group < cluster.groups().size(); group++) {
            Leaf leaf = cluster.groups().get(group).leaf();
            List<Seat> here = new ArrayList<>();
            for (Route route : gather.routes().into(leaf, socket)) {
                if (leaf.reach() > 0 && route.length() + socket.length() < leaf.reach()) {
                    continue;
                }
                long cost = gather.priced() ? gather.cost(leaf, route, socket) : 0;
                Seat seat = new Seat(group, route, gather.stock().of(route.use()), route.femtofarads(), cost);
                if (here.stream().noneMatch(other -> beats(other, seat))) {
                    here.removeIf(other -> beats(seat, other));
                    here.add(seat);
                }
            }
            all.addAll(here);
        }
        return all;
    }

    private boolean beats(Seat one, Seat other) {
        return Routes.atMost(one.use(), other.use())
                && (!gather.priced() || one.cost() <= other.cost())
                && (!gather.capacitance() || one.femtofarads() <= other.femtofarads());
    }

    private void offer(State last, List<Option> options) {
        List<Option.Seat> seats = new ArrayList<>();
        for (State state = last; state.before() != null; state = state.before()) {
            seats.add(state.taken());
        }
        Collections.reverse(seats);
        long price = gather.priced() ? last.cost() + Option.cost(0, arrangement.items(), 0) : 0;
        nothingScarce |= java.util.Arrays.equals(last.use(), gatherUse);
        Option.Layout layout = new Option.Layout(arrangement.jacks(), arrangement.placements(), seats);
        long capped = Math.min(Option.UNKNOWN_CAPACITANCE, last.femtofarads());
        Menu.add(options, new Option(last.use(), capped, price, layout), gather.priced(), gather.capacitance());
    }

    private static int sum(int[] numbers) {
        int sum = 0;
        for (int number : numbers) {
            sum += number;
        }
        return sum;
    }
}
