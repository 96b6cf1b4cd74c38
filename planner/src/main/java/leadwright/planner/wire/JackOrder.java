package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Hookup;

/**
 * Phase 12b: the order of jacks in which the fewest wires cross, one exchange of jacks for all hookups, so that what stays
 * on its jack does so still.
 *
 * <p>Needs: hookups whose bundles stand on one jack each, the ties that must stay runs. Gives: the hookups with jacks
 * renumbered. Method: the number of crossings is a sum over pairs of jacks, by which of the two stands higher; so the least
 * for a set of jacks that stand highest depends on the set alone. Where runs are tied, a tie that has begun is ended first.
 * Cost: 2^jacks · jacks². Proof: every order that keeps the ties is looked at.
 */
final class JackOrder {
    /** More jacks than these are left as they are. */
    static final int MOST_JACKS = 16;

    private final Weights weights;
    private final boolean runs;

    JackOrder(Scene scene, Weights weights) {
        this.weights = weights;
        this.runs = scene.runs();
    }

    /** The same wiring with the fewest crossings; jacks in use are those that were. */
    List<Hookup> untangled(List<Hookup> hookups, List<Requirement> requirements, Service service) {
        List<Integer> used = used(hookups);
        boolean linked = hookups.stream()
                .flatMap(each -> each.bundles().stream())
                .anyMatch(bundle -> bundle.jacks().size() > 1);
        if (linked || used.size() < 2 || used.size() > MOST_JACKS) {
            return hookups;
        }
        List<Integer> ties = runs ? ties(hookups, requirements, service, used) : List.of();
        Optional<int[]> order = order(crossings(hookups, used), ties);
        return order.isPresent() ? renumbered(hookups, used, order.get()) : hookups;
    }

    private static List<Integer> used(List<Hookup> hookups) {
        Set<Integer> used = new TreeSet<>();
        for (Hookup hookup : hookups) {
            hookup.chains().forEach(chain -> used.add(chain.jack()));
        }
        return List.copyOf(used);
    }

    /** By pair of jacks: wires that cross when the first stands above the second. */
    private long[][] crossings(List<Hookup> hookups, List<Integer> used) {
        long[][] cost = new long[used.size()][used.size()];
        for (Hookup hookup : hookups) {
            List<Chain> chains =
                    hookup.chains().stream().filter(Weights::onPanel).toList();
            for (Chain one : chains) {
                for (Chain other : chains) {
                    if (weights.place(one.connection()) > weights.place(other.connection())) {
                        cost[used.indexOf(one.jack())][used.indexOf(other.jack())]++;
                    }
                }
            }
        }
        return cost;
    }

    /** Sets of jacks that some reading ties, in any hookup. */
    private static List<Integer> ties(
            List<Hookup> hookups, List<Requirement> requirements, Service service, List<Integer> used) {
        Set<Integer> ties = new TreeSet<>();
        for (Hookup hookup : hookups) {
            Map<String, Integer> bits = new HashMap<>();
            for (Bundle bundle : hookup.bundles()) {
                int bit = 1 << used.indexOf(bundle.jacks().get(0));
                bundle.connections().forEach(name -> bits.put(name, bit));
            }
            for (Requirement each : requirements) {
                if (service.serves(hookup, each)) {
                    for (Set<String> set : List.<Set<String>>of(
                            each.demand().measured(),
                            each.demand().against(),
                            each.demand().earthed())) {
                        int tie = 0;
                        for (String name : new HashSet<>(set)) {
                            tie |= bits.get(name);
                        }
                        ties.add(tie);
                    }
                }
            }
        }
        return ties.stream().filter(tie -> Integer.bitCount(tie) > 1).toList();
    }

    /** The cheapest order that keeps every tie a run, the first of equals; empty where none does. */
    static Optional<int[]> order(long[][] cost, List<Integer> ties) {
        int n = cost.length;
        int all = (1 << n) - 1;
        long[] least = new long[1 << n];
        byte[] last = new byte[1 << n];
        Arrays.fill(least, Long.MAX_VALUE);
        least[0] = 0;
        for (int placed = 0; placed < all; placed++) {
            if (least[placed] == Long.MAX_VALUE) {
                continue;
            }
            int next = Row.candidates(n, ties, placed);
            for (int jack = 0; jack < n; jack++) {
                if ((next >> jack & 1) == 1) {
                    long sum = least[placed];
                    for (int above = placed; above != 0; above &= above - 1) {
                        sum += cost[Integer.numberOfTrailingZeros(above)][jack];
                    }
                    if (sum < least[placed | 1 << jack]) {
                        least[placed | 1 << jack] = sum;
                        last[placed | 1 << jack] = (byte) jack;
                    }
                }
            }
        }
        if (least[all] == Long.MAX_VALUE) {
            return Optional.empty();
        }
        int[] order = new int[n];
        int placed = all;
        for (int i = n - 1; i >= 0; i--) {
            order[i] = last[placed];
            placed ^= 1 << order[i];
        }
        return Optional.of(order);
    }

    private static List<Hookup> renumbered(List<Hookup> hookups, List<Integer> used, int[] order) {
        Map<Integer, Integer> jacks = new HashMap<>();
        for (int i = 0; i < order.length; i++) {
            jacks.put(used.get(order[i]), used.get(i));
        }
        List<Hookup> renumbered = new ArrayList<>();
        hookups.forEach(each -> renumbered.add(renumbered(each, jacks)));
        return renumbered;
    }

    /** The hookup with its jacks exchanged; bundles in the order of their new jacks. */
    static Hookup renumbered(Hookup hookup, Map<Integer, Integer> jacks) {
        List<Chain> chains = hookup.chains().stream()
                .map(chain -> new Chain(
                        chain.connection(),
                        chain.items(),
                        jacks.getOrDefault(chain.jack(), chain.jack()),
                        chain.contacts()))
                .toList();
        List<Bundle> bundles = hookup.bundles().stream()
                .map(bundle -> new Bundle(
                        bundle.id(),
                        bundle.connections(),
                        bundle.jacks().stream()
                                .map(jack -> jacks.getOrDefault(jack, jack))
                                .sorted()
                                .toList(),
                        bundle.links()))
                .toList();
        return named(hookup.id(), bundles, chains, hookup);
    }

    /** Bundles in the order of their jacks, named by it. */
    static Hookup named(String id, List<Bundle> bundles, List<Chain> chains, Hookup earth) {
        List<Bundle> sorted = new ArrayList<>(bundles);
        sorted.sort(java.util.Comparator.comparingInt(bundle -> bundle.jacks().get(0)));
        List<Bundle> named = new ArrayList<>();
        for (Bundle each : sorted) {
            named.add(new Bundle(id + ".b" + (named.size() + 1), each.connections(), each.jacks(), each.links()));
        }
        return new Hookup(id, named, chains, earth.earth());
    }
}
