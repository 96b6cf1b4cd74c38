package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Phase 8: how many hookups are needed at least.
 *
 * <p>Needs: fitting test, twins, requirements none of which follows from another. Gives: bounds with their argument.
 * Method: for a family of requirements the most that one hookup takes, found by an exhaustive search that tries twins once;
 * the family divided by it, rounded up. Families: all; those that measure one connection alone; those told apart only by
 * twins. And families of which no two share a hookup. Cost: small for families of twins, whose members are tried in one
 * order; each search has a budget and a search that ends early gives no bound. Proof: each hookup takes at most that many.
 */
final class Bounds {
    private static final int MOST_CASES = 30_000;

    private final Scene scene;
    private final Fit fit;
    private final Twins twins;
    private final List<Requirement> core;

    Bounds(Scene scene, Fit fit, Twins twins, List<Requirement> core) {
        this.scene = scene;
        this.fit = fit;
        this.twins = twins;
        this.core = core;
    }

    /**
     * A lower bound.
     *
     * @param family what it counts
     * @param perHookup most of the family that one hookup takes
     */
    record Bound(int hookups, String argument, List<Requirement> family, int perHookup) {}

    /** The best bound found; stops at one that is known to be reached. */
    Bound best(int reached) {
        Bound best = one();
        List<List<Requirement>> families = new ArrayList<>();
        families.add(alone());
        families.addAll(told());
        families.add(core);
        for (List<Requirement> family : families) {
            if (best.hookups() >= reached) {
                return best;
            }
            if (family.size() > best.hookups()) {
                best = better(best, counted(family));
            }
        }
        if (best.hookups() < reached) {
            best = better(best, strangers());
        }
        return best;
    }

    private static Bound better(Bound one, Bound other) {
        return other.hookups() > one.hookups() ? other : one;
    }

    private Bound one() {
        return new Bound(1, "There cannot be fewer than one.", List.of(), Integer.MAX_VALUE);
    }

    /** For each connection that some requirement measures alone, the requirement that asks for most beside it. */
    private List<Requirement> alone() {
        Map<Integer, Requirement> byConnection = new LinkedHashMap<>();
        for (Requirement each : core) {
            BitSet measured = each.with(Requirement.MEASURED);
            if (measured.cardinality() == 1) {
                byConnection.merge(
                        measured.nextSetBit(0),
                        each,
                        (one, other) -> other.all().cardinality() > one.all().cardinality() ? other : one);
            }
        }
        return List.copyOf(byConnection.values());
    }

    /** Requirements that an exchange of twins makes of one another. */
    private List<List<Requirement>> told() {
        List<List<Requirement>> families = new ArrayList<>();
        BitSet placed = new BitSet();
        Draft nothing = Draft.empty(scene.connections().size());
        for (Requirement each : core) {
            if (placed.get(each.index())) {
                continue;
            }
            Map<Integer, Requirement> family = new LinkedHashMap<>();
            List<Requirement> open = new ArrayList<>(List.of(each));
            while (!open.isEmpty()) {
                Requirement next = open.remove(open.size() - 1);
                if (family.put(next.index(), next) == null) {
                    open.addAll(twins.equivalents(next, nothing));
                }
            }
            family.keySet().forEach(placed::set);
            families.add(List.copyOf(family.values()));
        }
        families.sort(Comparator.comparingInt((List<Requirement> family) -> -family.size()));
        return families;
    }

    /** Most of a family that one hookup takes, and what follows. */
    private Bound counted(List<Requirement> family) {
        Most search = new Most(family);
        int most = search.run();
        if (most == 0) {
            return one();
        }
        int hookups = (family.size() + most - 1) / most;
        return new Bound(hookups, argument(family, most, search.cases, hookups), family, most);
    }

    private String argument(List<Requirement> family, int most, int cases, int hookups) {
        int jacks = scene.jackCount();
        String sum = family.size() + "/" + most + " rounded up = " + hookups;
        boolean single =
                family.stream().allMatch(each -> each.with(Requirement.MEASURED).cardinality() == 1);
        long distinct = family.stream()
                .map(each -> each.with(Requirement.MEASURED))
                .distinct()
                .count();
        if (single && distinct == family.size() && most == jacks) {
            return family.size() + " connections must each stand alone on one of " + jacks + " jacks, so " + sum + ".";
        }
        if (single && distinct == family.size() && most == jacks - 1) {
            return family.size()
                    + " connections must each stand alone, and what they are read against takes at least one of the "
                    + jacks + " jacks, so " + sum + ".";
        }
        return "Of " + family.size() + " demands" + (single ? " that each measure one connection alone" : "")
                + " no hookup takes more than " + most + " (" + cases + " cases looked at), so " + sum + ".";
    }

    /** Requirements of which no two share a hookup. */
    private Bound strangers() {
        List<Requirement> family = new ArrayList<>();
        Draft nothing = Draft.empty(scene.connections().size());
        for (Requirement each : core) {
            boolean stranger = family.stream().allMatch(other -> fit.fits(nothing.with(other), each) == Verdict.NO);
            if (stranger) {
                family.add(each);
            }
        }
        return new Bound(
                family.size(),
                family.size() + " demands of which no two can share a hookup need a hookup each.",
                family,
                1);
    }

    /** The most members of a family that fit one hookup. */
    private final class Most {
        private final List<Requirement> family;
        private final boolean[] out;
        private int best;
        private int cases;

        Most(List<Requirement> family) {
            this.family = family;
            this.out = new boolean[scene.requirements().size()];
        }

        /** 0 where the budget ended first. */
        int run() {
            extend(Draft.empty(scene.connections().size()), 0, 0);
            return cases > MOST_CASES ? 0 : Math.max(best, 1);
        }

        private void extend(Draft draft, int from, int count) {
            best = Math.max(best, count);
            List<Requirement> closed = new ArrayList<>();
            int left = family.size() - from;
            for (int i = from; i < family.size() && count + left > best && cases <= MOST_CASES; i++, left--) {
                Requirement each = family.get(i);
                if (out[each.index()]) {
                    continue;
                }
                cases++;
                if (fit.fits(draft, each) != Verdict.NO) {
                    extend(draft.with(each), i + 1, count + 1);
                }
                // Without this one, its twins as seen from here lead to nothing new.
                for (Requirement twin : twins.equivalents(each, draft)) {
                    if (!out[twin.index()]) {
                        out[twin.index()] = true;
                        closed.add(twin);
                    }
                }
            }
            closed.forEach(each -> out[each.index()] = false);
        }
    }
}
