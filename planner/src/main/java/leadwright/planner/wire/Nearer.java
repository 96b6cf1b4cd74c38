package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Hookup;

/**
 * Phase 12f: a wiring that ranks better, by small changes.
 *
 * <p>Needs: a row of hookups that serves everything. Gives: one as long that ranks no worse. Method: one hookup after the
 * other is changed: two of its jacks exchanged, two of its connections exchanged where their terminals are alike, so that
 * one stands where the neighbour has it, or a connection taken out that need not be there; what serves all that the hookup alone served, and makes the
 * row rank better, stays. Cost: a budget of changes weighed. Proof: none of being the best; each change is checked.
 */
final class Nearer {
    private final Scene scene;
    private final Weights weights;
    private final Service service;
    private final List<Requirement> requirements;
    private final boolean fixedEnds;
    private final int most;
    private int left;

    /**
     * @param fixedEnds whether a branch that is freed might lie bare, so that nothing is taken out
     * @param most budget of changes weighed
     */
    Nearer(Scene scene, Weights weights, Service service, List<Requirement> requirements, boolean fixedEnds, int most) {
        this.scene = scene;
        this.weights = weights;
        this.service = service;
        this.requirements = requirements;
        this.fixedEnds = fixedEnds;
        this.most = most;
    }

    List<Hookup> settle(List<Hookup> begin) {
        List<Hookup> row = new ArrayList<>(begin);
        for (boolean clearing : new boolean[] {false, true}) {
            left = most;
            settle(row, clearing);
        }
        return List.copyOf(row);
    }

    private void settle(List<Hookup> row, boolean clearing) {
        boolean better = true;
        while (better && left > 0) {
            better = false;
            for (int at = 0; at < row.size() && left > 0; at++) {
                better |= improve(row, at, clearing);
            }
        }
    }

    private boolean improve(List<Hookup> row, int at, boolean clearing) {
        boolean better = false;
        Optional<Hookup> next = change(row, at, clearing);
        while (next.isPresent()) {
            row.set(at, next.get());
            better = true;
            next = change(row, at, clearing);
        }
        return better;
    }

    /** The first change that makes the row rank better. */
    private Optional<Hookup> change(List<Hookup> row, int at, boolean clearing) {
        Hookup now = row.get(at);
        List<Requirement> own = own(row, at);
        Rank rank = weights.of(row);
        for (Change change : clearing ? clearer(now) : changes(row, at, own)) {
            Hookup each = changed(now, change);
            List<Hookup> changed = new ArrayList<>(row);
            changed.set(at, each);
            if (left <= 0) {
                return Optional.empty();
            }
            if (weights.atLeast(changed) <= rank.seconds()
                    && own.stream().allMatch(requirement -> service.serves(each, requirement))) {
                left--;
                if (weights.of(changed).compareTo(rank) < 0) {
                    return Optional.of(each);
                }
            }
        }
        return Optional.empty();
    }

    /** Requirements that this hookup alone serves. */
    private List<Requirement> own(List<Hookup> row, int at) {
        return requirements.stream()
                .filter(each -> service.serves(row.get(at), each))
                .filter(each -> row.stream().noneMatch(other -> other != row.get(at) && service.serves(other, each)))
                .toList();
    }

    /** Changes that may keep a joint which one of the neighbours has. */
    private Set<Change> changes(List<Hookup> row, int at, List<Requirement> own) {
        Set<Change> all = new LinkedHashSet<>();
        Hookup now = row.get(at);
        if (now.bundles().stream().anyMatch(bundle -> bundle.jacks().size() > 1)) {
            return all;
        }
        if (!fixedEnds) {
            Set<String> needed = new HashSet<>();
            own.forEach(each -> needed.addAll(each.demand().all()));
            now.chains().stream()
                    .filter(chain -> !needed.contains(chain.connection()))
                    .forEach(chain -> all.add(new Without(chain.connection())));
        }
        for (int other : new int[] {at - 1, at + 1}) {
            if (other >= 0 && other < row.size()) {
                towards(now, row.get(other), all);
            }
        }
        return all;
    }

    /** Changes by which fewer wires of the hookup cross. */
    private Set<Change> clearer(Hookup now) {
        Set<Change> all = new LinkedHashSet<>();
        if (now.bundles().stream().anyMatch(bundle -> bundle.jacks().size() > 1)) {
            return all;
        }
        for (int one = 1; one <= scene.jackCount(); one++) {
            for (int other = one + 1; other <= scene.jackCount(); other++) {
                all.add(new Jacks(one, other));
            }
        }
        for (Chain one : now.chains()) {
            for (Chain other : now.chains()) {
                if (weights.crosses(one, other) && likeLeaves(one, other)) {
                    all.add(new Places(one.connection(), other.connection()));
                }
            }
        }
        long crossings = weights.crossings(now.chains());
        all.removeIf(change -> weights.crossings(changed(now, change).chains()) >= crossings);
        return all;
    }

    /** What has another place in the neighbour is put there. */
    private void towards(Hookup now, Hookup neighbour, Set<Change> all) {
        Map<String, Chain> there = new HashMap<>();
        neighbour.chains().forEach(chain -> there.put(chain.connection(), chain));
        for (Chain chain : now.chains()) {
            Chain wanted = there.get(chain.connection());
            if (wanted != null && wanted.jack() != chain.jack()) {
                all.add(new Jacks(Math.min(chain.jack(), wanted.jack()), Math.max(chain.jack(), wanted.jack())));
                now.chains().stream()
                        .filter(other -> other.jack() == wanted.jack() && likeLeaves(chain, other))
                        .findFirst()
                        .ifPresent(other -> all.add(new Places(chain.connection(), other.connection())));
            }
        }
        Map<Integer, String> tops = tops(neighbour);
        tops(now)
                .forEach((jack, top) -> tops.forEach((other, like) -> {
                    if (like.equals(top) && !other.equals(jack) && !top.equals(tops.get(jack))) {
                        all.add(new Jacks(Math.min(jack, other), Math.max(jack, other)));
                    }
                }));
    }

    private boolean likeLeaves(Chain one, Chain other) {
        return scene.leaves()
                .get(weights.place(one.connection()))
                .equals(scene.leaves().get(weights.place(other.connection())));
    }

    /** Kind of the item in each jack. */
    private static Map<Integer, String> tops(Hookup hookup) {
        Map<Integer, String> tops = new TreeMap<>();
        for (Chain chain : hookup.chains()) {
            if (!chain.items().isEmpty()) {
                String last = chain.items().get(chain.items().size() - 1);
                tops.put(chain.jack(), last.substring(0, last.lastIndexOf('/')));
            }
        }
        return tops;
    }

    private sealed interface Change {}

    private record Without(String connection) implements Change {}

    private record Jacks(int one, int other) implements Change {}

    private record Places(String one, String other) implements Change {}

    private static Hookup changed(Hookup hookup, Change change) {
        if (change instanceof Jacks jacks) {
            return JackOrder.renumbered(hookup, Map.of(jacks.one(), jacks.other(), jacks.other(), jacks.one()));
        }
        if (change instanceof Places places) {
            return exchanged(
                    hookup,
                    hookup.chainOf(places.one()).orElseThrow(),
                    hookup.chainOf(places.other()).orElseThrow());
        }
        return without(hookup, hookup.chainOf(((Without) change).connection()).orElseThrow());
    }

    private static Hookup without(Hookup hookup, Chain chain) {
        List<Chain> chains =
                hookup.chains().stream().filter(each -> each != chain).toList();
        return rebundled(hookup, chains);
    }

    private static Hookup exchanged(Hookup hookup, Chain one, Chain other) {
        List<Chain> chains = new ArrayList<>();
        for (Chain each : hookup.chains()) {
            Chain from = each == one ? other : each == other ? one : each;
            chains.add(new Chain(each.connection(), from.items(), from.jack(), from.contacts()));
        }
        return rebundled(hookup, chains);
    }

    /** Bundles are what goes to one jack. */
    private static Hookup rebundled(Hookup hookup, List<Chain> chains) {
        Map<Integer, List<String>> members = new TreeMap<>();
        for (Chain each : chains) {
            members.computeIfAbsent(each.jack(), key -> new ArrayList<>()).add(each.connection());
        }
        List<Bundle> bundles = new ArrayList<>();
        members.forEach((jack, names) -> bundles.add(new Bundle("", names, List.of(jack), List.of())));
        return JackOrder.named(hookup.id(), bundles, chains, hookup);
    }
}
