package leadwright.planner.wire;

import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import leadwright.catalog.device.Device;
import leadwright.planner.order.Replugging;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Hookup;

/**
 * Phase 12a: the rank of a row of hookups.
 *
 * <p>Needs: scene, test of service, seconds of plugging. Gives: {@link Rank}. Method: what a hookup adds by itself is
 * counted once and kept. Cost: linear in the chains; seconds as {@link Replugging} counts them.
 */
final class Weights {
    /** Stands for a demand that a hookup does not serve. */
    private static final long NOT_SERVED = Long.MAX_VALUE;

    private final Scene scene;
    private final Service service;
    private final Replugging replugging;
    private final Walk walk;
    private final boolean staged;
    private final boolean earth;
    private final List<Requirement> mains;
    private final Map<String, Integer> panel = new HashMap<>();
    private final Map<String, Integer> pieceOf = new HashMap<>();
    private final Map<Hookup, Own> known = new IdentityHashMap<>();

    /**
     * What a hookup adds by itself.
     *
     * @param pieces items in use, by piece number
     * @param micrometres by demand that puts mains on a part
     */
    private record Own(long contacts, int[] pieces, long[] micrometres, long crossings) {}

    Weights(Scene scene, Service service, List<Requirement> requirements) {
        this.scene = scene;
        this.service = service;
        this.replugging = new Replugging(scene.device(), scene.kit(), scene.house(), scene.connectors());
        this.walk = new Walk(this, service, requirements);
        this.earth = requirements.stream().anyMatch(Requirement::earth);
        this.staged = Walk.matters(requirements);
        this.mains = requirements.stream().filter(each -> each.duty().mains()).toList();
        scene.connections().forEach(each -> panel.put(each.name(), panel.size()));
        Bench.items(scene.kit()).forEach(each -> pieceOf.put(each.id(), pieceOf.size()));
    }

    Replugging replugging() {
        return replugging;
    }

    /** Whether the order of the readings may bring the bench back to a hookup. */
    boolean walks(List<Hookup> row) {
        boolean some = row.size() > 1 && row.size() <= Walk.MOST_HOOKUPS;
        return some
                && (staged
                        || earth && row.stream().anyMatch(each -> each.earth().isEmpty()));
    }

    /** Seconds in the order given, or of the best walk where readings have an order of their own. */
    long seconds(List<Hookup> row) {
        if (walks(row)) {
            return walk.seconds(row);
        }
        long seconds = 0;
        for (int i = 0; i < row.size(); i++) {
            seconds += i == 0 ? replugging.first(row.get(0)) : replugging.between(row.get(i - 1), row.get(i));
        }
        return seconds;
    }

    /** No more than {@link #seconds}, found quickly. */
    long atLeast(List<Hookup> row) {
        if (walks(row)) {
            return 0;
        }
        long seconds = 0;
        for (int i = 0; i < row.size(); i++) {
            seconds += i == 0 ? replugging.atLeast(row.get(0)) : replugging.atLeast(row.get(i - 1), row.get(i));
        }
        return seconds;
    }

    Rank of(List<Hookup> row) {
        return of(seconds(row), row);
    }

    /** Rank of the hookups with these seconds. */
    Rank of(long seconds, List<Hookup> hookups) {
        long contacts = 0;
        long crossings = 0;
        int[] pieces = new int[pieceOf.size()];
        long[] micrometres = new long[mains.size()];
        Arrays.fill(micrometres, NOT_SERVED);
        for (Hookup hookup : hookups) {
            Own own = known.computeIfAbsent(hookup, this::own);
            contacts += own.contacts();
            crossings += own.crossings();
            for (int piece = 0; piece < pieces.length; piece++) {
                pieces[piece] = Math.max(pieces[piece], own.pieces()[piece]);
            }
            for (int r = 0; r < micrometres.length; r++) {
                micrometres[r] = Math.min(micrometres[r], own.micrometres()[r]);
            }
        }
        long length =
                Arrays.stream(micrometres).filter(each -> each != NOT_SERVED).sum();
        return new Rank(seconds, contacts, Arrays.stream(pieces).sum(), length, crossings);
    }

    private Own own(Hookup hookup) {
        long contacts = 0;
        Set<String> instances = new HashSet<>();
        for (Chain chain : hookup.chains()) {
            contacts += chain.contacts();
            instances.addAll(chain.items());
        }
        hookup.bundles().forEach(bundle -> instances.addAll(bundle.links()));
        int[] pieces = new int[pieceOf.size()];
        for (String each : instances) {
            pieces[pieceOf.get(each.substring(0, each.lastIndexOf('/')))]++;
        }
        long[] micrometres = new long[mains.size()];
        for (int r = 0; r < micrometres.length; r++) {
            boolean served = service.serves(hookup, mains.get(r));
            micrometres[r] =
                    served ? service.rated(hookup, mains.get(r).duty()).measuredMicrometres(mains.get(r)) : NOT_SERVED;
        }
        return new Own(contacts, pieces, micrometres, crossings(hookup.chains()));
    }

    /** Pairs of wires that cross; the touch probe has no place on the panel. */
    long crossings(List<Chain> chains) {
        long crossings = 0;
        for (Chain one : chains) {
            for (Chain other : chains) {
                if (crosses(one, other)) {
                    crossings++;
                }
            }
        }
        return crossings;
    }

    boolean crosses(Chain upper, Chain lower) {
        return upper.jack() > lower.jack()
                && onPanel(upper)
                && onPanel(lower)
                && panel.get(upper.connection()) < panel.get(lower.connection());
    }

    static boolean onPanel(Chain chain) {
        return !chain.connection().equals(Device.TOUCH_PROBE);
    }

    /** Place of a connection on the panel, from the top. */
    int place(String connection) {
        return panel.get(connection);
    }

    int jacks() {
        return scene.jackCount();
    }
}
