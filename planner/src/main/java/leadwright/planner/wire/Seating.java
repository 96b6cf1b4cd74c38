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
 * <p>Needs: an arrangement and a cluster. Gives: the options that seat every connection. Method: bank after bank of
 * sockets that serve alike, so many of each group through each route worth having; of ways that leave the same groups waiting and took the same scarce
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
    private long seen;

    /** A route of a group into a kind of socket, with what it takes of the scarce pieces. */
    private record Seat(int group, Route route, int[] use, long femtofarads, long cost, long micrometres) {}

    /**
     * Kinds of socket that seat the same groups by the same routes at the same cost, so that it makes no difference which of
     * them is taken.
     *
     * @param seats best ways of taking one of them
     */
    private record Bank(Map<Socket, Integer> sockets, List<Seat> seats, boolean fill) {
        int count() {
            return sockets.values().stream().mapToInt(Integer::intValue).sum();
        }

        boolean serves(int group) {
            return seats.stream().anyMatch(seat -> seat.group() == group);
        }
    }

    /** So many on a seat of a bank. */
    private record Taken(Seat seat, Bank bank, int count) {}

    /**
     * @param left connections of each group that wait
     * @param free sockets of the present bank that are open
     * @param before what it came from by seating {@code count} on {@code seat}
     */
    private record State(
            int[] left, int free, int[] use, long femtofarads, long cost, long micrometres, State before, Taken taken) {

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
        List<State> states = List.of(new State(waiting, 0, gatherUse, arrangement.femtofarads(), 0, 0, null, null));
        List<Bank> banks = banks();
        for (int bank = 0; bank < banks.size(); bank++) {
            states = seated(states, banks.get(bank), banks.subList(bank + 1, banks.size()));
            seen += states.size();
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

    /** How many ways of seating were looked at. */
    long states() {
        return seen;
    }

    /** Whether some option takes nothing scarce at all, jacks apart. */
    boolean takesNothing() {
        return free() && sum(gatherUse) == arrangement.jacks();
    }

    /** Sockets of the arrangement, those together that serve alike; one that must be filled stands alone. */
    private List<Bank> banks() {
        List<Bank> banks = new ArrayList<>();
        for (Map.Entry<Socket, Integer> entry : arrangement.open().entrySet()) {
            List<Seat> seats = seats(entry.getKey());
            boolean fill = entry.getKey().fill();
            Map<Socket, Integer> like = banks.stream()
                    .filter(bank -> !bank.fill() && !fill && alike(bank.seats(), seats))
                    .map(Bank::sockets)
                    .findFirst()
                    .orElseGet(() -> {
                        banks.add(new Bank(new LinkedHashMap<>(), seats, fill));
                        return banks.get(banks.size() - 1).sockets();
                    });
            like.put(entry.getKey(), entry.getValue());
        }
        return banks;
    }

    private static boolean alike(List<Seat> some, List<Seat> others) {
        if (some.size() != others.size()) {
            return false;
        }
        for (int i = 0; i < some.size(); i++) {
            Seat one = some.get(i);
            Seat other = others.get(i);
            if (one.group() != other.group()
                    || !one.route().equals(other.route())
                    || one.cost() != other.cost()
                    || one.micrometres() != other.micrometres()) {
                return false;
            }
        }
        return true;
    }

    /** Fills one bank in every way worth having. */
    private List<State> seated(List<State> from, Bank bank, List<Bank> later) {
        int count = bank.count();
        List<State> states = from.stream()
                .map(state -> new State(
                        state.left(),
                        count,
                        state.use(),
                        state.femtofarads(),
                        state.cost(),
                        state.micrometres(),
                        state.before(),
                        state.taken()))
                .toList();
        int[] room = room(later);
        for (int s = 0; s < bank.seats().size(); s++) {
            Seat seat = bank.seats().get(s);
            int group = seat.group();
            boolean last = bank.seats().subList(s + 1, bank.seats().size()).stream()
                    .noneMatch(other -> other.group() == group);
            Map<IntBuffer, List<State>> next = new LinkedHashMap<>();
            for (State state : states) {
                int most = Math.min(state.left()[group], state.free());
                // What finds no room later must be seated now.
                int least = last ? Math.max(0, state.left()[group] - room[group]) : 0;
                for (int taken = least; taken <= most; taken++) {
                    State more = taken == 0 ? state : more(state, seat, bank, taken);
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
        int placesLater = later.stream().mapToInt(Bank::count).sum();
        return states.stream()
                .filter(state -> !bank.fill() || state.free() == 0)
                .filter(state -> sum(state.left()) <= placesLater)
                .toList();
    }

    /** Sockets in these banks for each group. */
    private int[] room(List<Bank> banks) {
        int[] room = new int[cluster.groups().size()];
        for (Bank bank : banks) {
            for (int group = 0; group < room.length; group++) {
                room[group] += bank.serves(group) ? bank.count() : 0;
            }
        }
        return room;
    }

    private State more(State state, Seat seat, Bank bank, int count) {
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
                state.micrometres() + count * seat.micrometres(),
                state,
                new Taken(seat, bank, count));
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
        return Option.atMost(one.cost(), one.micrometres(), other.cost(), other.micrometres())
                && (!gather.capacitance() || one.femtofarads() <= other.femtofarads());
    }

    private List<Seat> seats(Socket socket) {
        List<Seat> all = new ArrayList<>();
        for (int group = 0; group < cluster.groups().size(); group++) {
            Leaf leaf = cluster.groups().get(group).leaf();
            List<Seat> here = new ArrayList<>();
            for (Route route : gather.routes().into(leaf, socket)) {
                // An item that stands in two jacks itself is not written as a link, and so not used as one.
                boolean itself = leaf.kind() == Leaf.Kind.LINK && route.items() == 0;
                if (itself || leaf.reach() > 0 && route.length() + socket.length() < leaf.reach()) {
                    continue;
                }
                long cost = gather.priced() ? gather.cost(leaf, route, socket) : 0;
                long length = gather.priced() ? route.lead() : 0;
                Seat seat = new Seat(group, route, gather.stock().of(route.use()), route.femtofarads(), cost, length);
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
                && (!gather.priced() || Option.atMost(one.cost(), one.micrometres(), other.cost(), other.micrometres()))
                && (!gather.capacitance() || one.femtofarads() <= other.femtofarads());
    }

    private void offer(State last, List<Option> options) {
        List<Taken> taken = new ArrayList<>();
        for (State state = last; state.before() != null; state = state.before()) {
            taken.add(state.taken());
        }
        Collections.reverse(taken);
        List<Option.Seat> seats = seats(taken);
        long price = gather.priced() ? last.cost() + Option.cost(0, 0, arrangement.items(), 0) : 0;
        long length = gather.priced() ? last.micrometres() + arrangement.lead() : 0;
        nothingScarce |= java.util.Arrays.equals(last.use(), gatherUse);
        Option.Layout layout = new Option.Layout(arrangement.jacks(), arrangement.placements(), seats);
        long capped = Math.min(Option.UNKNOWN_CAPACITANCE, last.femtofarads());
        Menu.add(options, new Option(last.use(), capped, price, length, layout), gather.priced(), gather.capacitance());
    }

    /** Gives every seat its sockets, in the order of the bank. */
    private List<Option.Seat> seats(List<Taken> taken) {
        List<Option.Seat> seats = new ArrayList<>();
        Map<Socket, Integer> open = new LinkedHashMap<>(arrangement.open());
        for (Taken each : taken) {
            Leaf leaf = cluster.groups().get(each.seat().group()).leaf();
            int left = each.count();
            for (Socket socket : each.bank().sockets().keySet()) {
                int here = Math.min(left, open.get(socket));
                if (here > 0) {
                    seats.add(new Option.Seat(leaf, here, each.seat().route(), socket));
                    open.merge(socket, -here, Integer::sum);
                    left -= here;
                }
            }
        }
        return seats;
    }

    private static int sum(int[] numbers) {
        int sum = 0;
        for (int number : numbers) {
            sum += number;
        }
        return sum;
    }
}
