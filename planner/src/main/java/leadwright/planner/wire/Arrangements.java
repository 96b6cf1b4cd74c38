package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import leadwright.catalog.table.ContactKind;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;

/**
 * Phase 12c: every way to plug a hookup together that serves something.
 *
 * <p>Needs: scene, bench, test of service. Gives: hookups with what each serves; like items are not told apart, jacks are.
 * Method: connection after connection is left out or plugged into a jack, a free end of an item in place, or a new item,
 * which is then plugged in the same way. Cost: exponential, with a budget: what needs more is not given at all. Proof: in a
 * finished hookup the place of each connection, in the order of the panel, and of each item, in the order in which it is met
 * from them, is one of these choices. Bundles that stand on several jacks are not made.
 */
final class Arrangements {
    private static final int MOST_STEPS = 20_000;
    static final int MOST_CONNECTIONS = 8;

    private final Scene scene;
    private final Service service;
    private final Bench bench;
    private final EarthLead earthLead;
    private final List<Requirement> requirements;
    private final BitSet[] apart;
    private final int most;
    private final int[] left;
    private final boolean[] jackTaken;
    private final List<Placed> items = new ArrayList<>();
    private final Object[] into;
    private final long[] gained;
    private final BitSet present = new BitSet();
    private final Set<String> seen = new HashSet<>();
    private final List<Arrangement> found = new ArrayList<>();
    private final long seconds;
    private final boolean whole;
    private final BitSet needed = new BitSet();
    private final Handling handling;
    private final long plug;
    /** By connection: what it and those after it take at least, where none is left out. */
    private final long[] toCome;

    private long joined;
    private int steps;

    /**
     * A hookup that serves something.
     *
     * @param serves positions of the requirements
     * @param canonical whether its jacks are the first ones, in the order of the panel
     */
    record Arrangement(Hookup hookup, BitSet serves, boolean canonical) {}

    /** An item in place, by which of its inlets are taken and where it goes itself. */
    private static final class Placed {
        private final Part part;
        private final boolean[] taken;
        private Object into = "";
        /** Micrometres that a chain gains where this item goes. */
        private long gained;

        Placed(Part part) {
            this.part = part;
            this.taken = new boolean[part.inlets().size()];
        }
    }

    private Arrangements(
            Scene scene,
            Fit fit,
            EarthLead earthLead,
            Service service,
            List<Requirement> requirements,
            long seconds,
            int hookups,
            int most) {
        this.seconds = seconds;
        this.whole = hookups == 1;
        requirements.forEach(each -> needed.or(each.all()));
        this.handling = new Handling(scene.connectors(), scene.house().times());
        this.plug = handling.join(ContactKind.LAB_4MM);
        this.scene = scene;
        this.service = service;
        this.bench = fit.tray(Duty.ORDINARY).bench();
        this.earthLead = earthLead;
        this.requirements = requirements;
        this.apart = Therapy.apart(scene);
        this.most = most;
        this.left = bench.stock();
        this.jackTaken = new boolean[scene.jackCount()];
        this.into = new Object[scene.connections().size()];
        this.gained = new long[into.length];
        this.toCome = new long[into.length + 1];
        for (int e = into.length - 1; e >= 0; e--) {
            toCome[e] = toCome[e + 1]
                    + (whole && needed.get(e) ? least(scene.leaves().get(e)) : 0);
        }
    }

    /**
     * All of them; empty where there are more than so many, or more than the budget allows to find.
     *
     * @param seconds what takes longer to set up is left out: whatever stands in a hookup has been joined at some time
     * @param hookups one must serve everything
     */
    static List<Arrangement> of(
            Scene scene,
            Fit fit,
            EarthLead earthLead,
            Service service,
            List<Requirement> requirements,
            long seconds,
            int hookups,
            int most) {
        if (scene.connections().size() > MOST_CONNECTIONS) {
            return List.of();
        }
        Arrangements all = new Arrangements(scene, fit, earthLead, service, requirements, seconds, hookups, most);
        all.connection(0);
        return all.ended() ? List.of() : List.copyOf(all.found);
    }

    private boolean ended() {
        return steps > MOST_STEPS || found.size() > most;
    }

    private void connection(int e) {
        if (ended()) {
            return;
        }
        if (joined + toCome[e] > seconds) {
            return;
        }
        if (e == into.length) {
            finish();
            return;
        }
        if (!apart[e].intersects(present)) {
            present.set(e);
            plug(e, scene.leaves().get(e), null);
            present.clear(e);
        }
        if (!whole || !needed.get(e)) {
            connection(e + 1);
        }
    }

    /** Plugs the leaf, or the item, in every way; then comes the next connection. */
    private void plug(int e, Leaf leaf, Placed item) {
        steps++;
        for (int jack = 0; jack < jackTaken.length && !ended(); jack++) {
            Socket socket = Socket.jack(scene.jackSocket());
            boolean mates = item == null ? bench.takes(leaf, socket) : bench.mates(item.part.out(), socket.end());
            if (!jackTaken[jack] && mates) {
                long more = item == null ? plug : 0;
                jackTaken[jack] = true;
                joined += more;
                put(e, item, jack + 1, 0);
                connection(e + 1);
                joined -= more;
                jackTaken[jack] = false;
            }
        }
        for (int i = 0; i < items.size() && !ended(); i++) {
            Placed other = items.get(i);
            if (other != item && !leadsTo(other, item)) {
                enter(e, leaf, item, other, false);
            }
        }
        for (Part part : bench.parts()) {
            if (left[part.piece()] > 0 && !ended()) {
                left[part.piece()]--;
                Placed placed = new Placed(part);
                items.add(placed);
                enter(e, leaf, item, placed, true);
                items.remove(items.size() - 1);
                left[part.piece()]++;
            }
        }
    }

    private void enter(int e, Leaf leaf, Placed item, Placed other, boolean fresh) {
        List<Part.Inlet> inlets = other.part.inlets();
        for (int i = 0; i < inlets.size(); i++) {
            Part.Inlet inlet = inlets.get(i);
            boolean free = !other.taken[i] && first(other, i);
            boolean joins =
                    item == null ? bench.takes(leaf, other.part, inlet) : bench.mates(item.part.out(), inlet.end());
            if (free && joins) {
                long more = (fresh ? plug : 0) + (item == null ? contact(leaf, other.part) : 0);
                other.taken[i] = true;
                joined += more;
                put(e, item, other, inlet.length());
                if (!fresh) {
                    connection(e + 1);
                } else if (joined + toCome[e + 1] <= seconds) {
                    plug(e, leaf, other);
                }
                joined -= more;
                other.taken[i] = false;
            }
        }
    }

    /** Least seconds for one connection: it goes into a jack or an item in place, or into an item of its own. */
    private long least(Leaf leaf) {
        long least = bench.takes(leaf, Socket.jack(scene.jackSocket())) ? plug : Long.MAX_VALUE;
        for (Part part : bench.parts()) {
            if (part.inlets().stream().anyMatch(inlet -> bench.takes(leaf, part, inlet))) {
                least = Math.min(least, contact(leaf, part) + (part.gathers() ? 0 : plug));
            }
        }
        return least == Long.MAX_VALUE ? 0 : least;
    }

    /** Least seconds of joining an item to a terminal; the touch probe is not joined. */
    private long contact(Leaf leaf, Part part) {
        if (leaf.kind() == Leaf.Kind.TOUCH) {
            return 0;
        }
        long least = Long.MAX_VALUE;
        for (String end : part.item().ends()) {
            least = Math.min(least, handling.join(scene.connectors().joint(leaf.terminal(), end)));
        }
        return least;
    }

    /** Of free ends that are alike the first stands for all. */
    private static boolean first(Placed item, int at) {
        for (int i = 0; i < at; i++) {
            if (!item.taken[i]
                    && item.part.inlets().get(i).equals(item.part.inlets().get(at))) {
                return false;
            }
        }
        return true;
    }

    private void put(int e, Placed item, Object target, long length) {
        if (item == null) {
            into[e] = target;
            gained[e] = length;
        } else {
            item.into = target;
            item.gained = length;
        }
    }

    /** Whether what is plugged into the one would come, through it, into the other again. */
    private static boolean leadsTo(Placed from, Placed wanted) {
        Object at = from;
        while (at instanceof Placed placed) {
            if (placed == wanted) {
                return true;
            }
            at = placed.into;
        }
        return false;
    }

    private void finish() {
        steps++;
        boolean some = false;
        for (Requirement each : requirements) {
            some |= contains(present, each.all()) && pure(each);
        }
        if (!some || !reaches()) {
            return;
        }
        Hookup hookup = hookup();
        if (!seen.add(hookup.chains().toString())) {
            return;
        }
        BitSet serves = new BitSet();
        for (int r = 0; r < requirements.size(); r++) {
            serves.set(r, service.serves(hookup, requirements.get(r)));
        }
        if (!serves.isEmpty() && (!whole || serves.cardinality() == requirements.size())) {
            found.add(new Arrangement(hookup, serves, canonical(hookup)));
        }
    }

    /** Whether no jack has a member of one of its sets together with what is not in that set. */
    private boolean pure(Requirement requirement) {
        int[] role = new int[jackTaken.length + 1];
        java.util.Arrays.fill(role, -1);
        for (int e = present.nextSetBit(0); e >= 0; e = present.nextSetBit(e + 1)) {
            Object at = into[e];
            while (at instanceof Placed placed) {
                at = placed.into;
            }
            int jack = (Integer) at;
            int own = requirement.role()[e];
            if (role[jack] >= 0 && role[jack] != own) {
                return false;
            }
            role[jack] = own;
        }
        return true;
    }

    private static boolean contains(BitSet set, BitSet part) {
        BitSet missing = (BitSet) part.clone();
        missing.andNot(set);
        return missing.isEmpty();
    }

    private boolean reaches() {
        for (int e = present.nextSetBit(0); e >= 0; e = present.nextSetBit(e + 1)) {
            long needed = scene.leaves().get(e).reach();
            if (needed > 0) {
                long length = gained[e];
                Object at = into[e];
                while (at instanceof Placed placed) {
                    length += placed.gained;
                    at = placed.into;
                }
                if (length < needed) {
                    return false;
                }
            }
        }
        return true;
    }

    private Hookup hookup() {
        Map<Placed, String> names = new HashMap<>();
        int[] count = new int[bench.items().size()];
        List<Chain> chains = new ArrayList<>();
        Map<Integer, List<String>> bundles = new TreeMap<>();
        for (int e = present.nextSetBit(0); e >= 0; e = present.nextSetBit(e + 1)) {
            List<String> chain = new ArrayList<>();
            Object at = into[e];
            while (at instanceof Placed placed) {
                chain.add(names.computeIfAbsent(placed, key -> key.part.item().id() + "/" + ++count[key.part.piece()]));
                at = placed.into;
            }
            int jack = (Integer) at;
            chains.add(new Chain(scene.name(e), chain, jack, chain.size() + 1));
            bundles.computeIfAbsent(jack, key -> new ArrayList<>()).add(scene.name(e));
        }
        List<Bundle> named = new ArrayList<>();
        bundles.forEach((jack, members) -> named.add(new Bundle("", members, List.of(jack), List.of())));
        return new Hookup("", named, chains, earth(count));
    }

    /** The earth lead in every hookup that has pieces for it. */
    private List<EarthPath> earth(int[] count) {
        for (EarthLead.Choice choice : earthLead.choices()) {
            if (Routes.atMost(choice.use(), left)) {
                return Build.earth(
                        choice, part -> bench.items().get(part.piece()).id() + "/" + ++count[part.piece()]);
            }
        }
        return List.of();
    }

    private static boolean canonical(Hookup hookup) {
        int next = 1;
        Set<Integer> met = new HashSet<>();
        for (Chain chain : hookup.chains()) {
            if (met.add(chain.jack()) && chain.jack() != next++) {
                return false;
            }
        }
        return true;
    }
}
