package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import leadwright.planner.order.Replugging;
import leadwright.planner.plan.Hookup;
import leadwright.planner.wire.Arrangements.Arrangement;

/**
 * Phase 12d: the wiring that ranks first among all of so many hookups.
 *
 * <p>Needs: every arrangement, a wiring to begin with. Gives: the first in rank, or nothing where a budget ended. Method:
 * row after row of arrangements. A row is cut where what it costs so far, and the least that each hookup to come adds, rank no
 * better than the best. Where any jacks are tied, exchanging jacks in all hookups changes crossings alone: the first
 * arrangement of a row has its jacks in their first order, and the jacks of what ranks as well are exchanged for the fewest
 * crossings. Cost: arrangements to the power of hookups at worst, with a budget. Proof: a row is left out only when it is
 * no better. Of two hookups of a wiring with none to spare each serves something that the other does not; so what any two such
 * arrangements differ in, joints of like kinds taken for the same, is paid from each hookup to the next.
 */
final class Exact {
    private static final int MOST_REQUIREMENTS = 62;
    private static final long MOST_PAIRS = 100_000;
    private static final long MOST_LOOKS = 2_000_000;

    private final Weights weights;
    private final Replugging replugging;
    private final JackOrder jackOrder;
    private final Service service;
    private final List<Requirement> requirements;
    private final boolean anyTies;
    private final List<Arrangement> all;
    private final long[] serves;
    private final int[] first;
    private final Rank[] own;
    private final List<Hookup> row = new ArrayList<>();
    private int[][] apart;
    private int leastApart;
    private long fewestContacts;
    private List<Hookup> best;
    private Rank rank;
    private long pairs;
    private long looks;

    Exact(
            Scene scene,
            Weights weights,
            JackOrder jackOrder,
            Service service,
            List<Requirement> requirements,
            List<Arrangement> arrangements) {
        this.weights = weights;
        this.replugging = weights.replugging();
        this.jackOrder = jackOrder;
        this.service = service;
        this.requirements = requirements;
        this.anyTies = !scene.runs();
        this.all = arrangements.stream()
                .sorted(Comparator.comparingInt((Arrangement each) -> replugging.atLeast(each.hookup())))
                .toList();
        this.serves = all.stream()
                .mapToLong(each -> each.serves().isEmpty() ? 0 : each.serves().toLongArray()[0])
                .toArray();
        this.first =
                all.stream().mapToInt(each -> replugging.atLeast(each.hookup())).toArray();
        this.own =
                all.stream().map(each -> weights.of(0, List.of(each.hookup()))).toArray(Rank[]::new);
    }

    /** The hookups in the order in which they are plugged, or nothing where the budget ended. */
    Optional<List<Hookup>> best(List<Hookup> begin, Rank beginRank) {
        int hookups = begin.size();
        long size = all.size();
        if (requirements.size() > MOST_REQUIREMENTS || hookups > 1 && size * size > MOST_LOOKS / 4) {
            return Optional.empty();
        }
        best = begin;
        rank = beginRank;
        fewestContacts =
                java.util.Arrays.stream(own).mapToLong(Rank::contacts).min().orElse(0);
        if (hookups > 1) {
            fillApart();
        }
        next(-1, (1L << requirements.size()) - 1, hookups, new Rank(0, 0, 0, 0, 0));
        return ended() ? Optional.empty() : Optional.of(best);
    }

    /** Seconds of the first in rank, from each hookup to the next. */
    long seconds() {
        return rank.seconds();
    }

    private void fillApart() {
        int n = serves.length;
        apart = new int[n][n];
        leastApart = Integer.MAX_VALUE;
        for (int a = 0; a < n; a++) {
            for (int b = 0; b < n; b++) {
                boolean each = (serves[a] & ~serves[b]) != 0 && (serves[b] & ~serves[a]) != 0;
                apart[a][b] = each
                        ? replugging.atLeast(all.get(a).hookup(), all.get(b).hookup())
                        : -1;
                leastApart = each ? Math.min(leastApart, apart[a][b]) : leastApart;
            }
        }
    }

    private boolean ended() {
        return pairs > MOST_PAIRS || looks > MOST_LOOKS;
    }

    private void next(int before, long open, int hookups, Rank so) {
        for (int each = 0; each < serves.length; each++) {
            looks++;
            long left = open & ~serves[each];
            boolean useless = left == open || hookups == 1 && left != 0;
            if (useless || (before < 0 ? anyTies && !all.get(each).canonical() : apart[before][each] < 0)) {
                continue;
            }
            pairs++;
            if (ended()) {
                return;
            }
            long hope = so.seconds() + (before < 0 ? first[each] : apart[before][each]);
            if (cut(hope, so, each, hookups - 1)) {
                continue;
            }
            Hookup hookup = all.get(each).hookup();
            long seconds = so.seconds()
                    + (before < 0
                            ? replugging.first(hookup)
                            : replugging.between(all.get(before).hookup(), hookup));
            if (cut(seconds, so, each, hookups - 1)) {
                continue;
            }
            row.add(hookup);
            if (hookups == 1) {
                offer(seconds);
            } else {
                next(each, left, hookups - 1, plus(seconds, so, own[each]));
            }
            row.remove(row.size() - 1);
        }
    }

    private static Rank plus(long seconds, Rank so, Rank own) {
        return new Rank(
                seconds,
                so.contacts() + own.contacts(),
                Math.max(so.pieces(), own.pieces()),
                0,
                so.crossings() + own.crossings());
    }

    /** Whether no row that begins so ranks better than the best. */
    private boolean cut(long seconds, Rank so, int each, int toCome) {
        Rank sum = plus(seconds, so, own[each]);
        Rank hope = new Rank(
                seconds + (toCome == 0 ? 0 : (long) toCome * leastApart),
                sum.contacts() + toCome * fewestContacts,
                sum.pieces(),
                0,
                anyTies ? 0 : sum.crossings());
        return hope.compareTo(rank) >= 0;
    }

    private void offer(long seconds) {
        Rank as = weights.of(seconds, row);
        Rank hope = new Rank(seconds, as.contacts(), as.pieces(), as.micrometres(), anyTies ? 0 : as.crossings());
        if (hope.compareTo(rank) >= 0) {
            return;
        }
        List<Hookup> now = anyTies ? jackOrder.untangled(List.copyOf(row), requirements, service) : List.copyOf(row);
        Rank next = weights.of(seconds, now);
        if (next.compareTo(rank) < 0) {
            best = now;
            rank = next;
        }
    }
}
