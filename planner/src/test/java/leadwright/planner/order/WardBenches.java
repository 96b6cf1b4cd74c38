package leadwright.planner.order;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.Supplier;
import leadwright.catalog.device.Battery;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.MainsState.Fault;

/**
 * Benches of ordinary size drawn from a seed: one to six hookups, two to four mains states (six in one draw of four), ten to
 * sixty readings in each hookup and state. Most readings are one hookup's alone; of the others, some may be taken in a few
 * hookups that share a wire, and touch readings wherever the probe comes to.
 */
public final class WardBenches {
    private static final List<MainsState> FOUR = List.of(
            MainsState.NORMAL, MainsState.NORMAL_SUPPLY_OPEN, MainsState.REVERSED, MainsState.REVERSED_SUPPLY_OPEN);
    private static final List<MainsState> EARTH_OPEN =
            List.of(MainsState.NORMAL_EARTH_OPEN, MainsState.REVERSED_EARTH_OPEN);
    private static final List<QuantityKind> KINDS =
            List.of(QuantityKind.PATIENT_LEAKAGE, QuantityKind.PATIENT_AUXILIARY, QuantityKind.LEAD_TO_LEAD);

    private final Random random;
    private final Bench bench = new Bench();
    private final Map<String, String> takenIn = new TreeMap<>();

    private WardBenches(long seed) {
        // Neighbouring seeds give like first draws; mixing parts them.
        random = new Random(seed * 0x9E3779B97F4A7C15L + 4711);
    }

    /** The order on one bench, to be worked out as often as it is asked for. */
    public static Supplier<Ordering> ordering(long seed) {
        return of(seed)::order;
    }

    static Bench of(long seed) {
        return new WardBenches(seed).draw();
    }

    private boolean chance(int percent) {
        return random.nextInt(100) < percent;
    }

    private <T> T pick(List<T> from) {
        return from.get(random.nextInt(from.size()));
    }

    private Bench draw() {
        bench.part("ecg", "snap-socket", "R", "L", "F", "N", "C1", "C2", "C3", "C4", "C5", "C6");
        bench.part("eeg", "tp15-socket", "1", "2", "3", "4", "5", "6", "7", "8");
        bench.part("cuff", "skin-surface", "c");
        bench.point("clamp", 500).point("plate", 1300);
        bench.battery = chance(35) ? Battery.BACKS_UP : Battery.NONE;
        bench.toleratesCut = Optional.of(chance(70));
        bench.startUp = pick(List.of(5, 30, 75, 120));
        bench.shutDown = pick(List.of(0, 5, 20));
        bench.underPower = chance(30);
        if (chance(20)) {
            bench.modes.put("heating", pick(List.of(3, 40)));
        }
        int count = 1 + random.nextInt(6);
        for (int h = 0; h < count; h++) {
            bench.hookup("H" + h, false, wires());
        }
        List<MainsState> states = new ArrayList<>(FOUR);
        if (chance(25)) {
            states.addAll(EARTH_OPEN);
        } else {
            states = states.subList(0, 2 + 2 * random.nextInt(2));
        }
        for (Hookup hookup : bench.hookups) {
            subjects(hookup, states);
        }
        if (chance(60)) {
            for (MainsState state : states) {
                bench.touch(state, every(), "clamp").touch(state, every(), "plate");
            }
        }
        if (chance(40)) {
            mains(states);
        }
        return bench;
    }

    private String every() {
        return String.join(",", bench.hookups.stream().map(Hookup::id).toList());
    }

    private String[] wires() {
        List<String> all = new ArrayList<>(List.of("cuff.c"));
        List.of("R", "L", "F", "N", "C1", "C2", "C3", "C4", "C5", "C6").forEach(each -> all.add("ecg." + each));
        for (int e = 1; e <= 8; e++) {
            all.add("eeg." + e);
        }
        Collections.shuffle(all, random);
        return all.subList(0, 4 + random.nextInt(4)).toArray(new String[0]);
    }

    /** Ten to sixty subjects, of one wire or of two tied, each read in nearly all states. */
    private void subjects(Hookup hookup, List<MainsState> states) {
        List<String> wires = hookup.chains().stream().map(Chain::connection).toList();
        int count = 10 + random.nextInt(51);
        for (int s = 0; s < count; s++) {
            String wire = pick(wires);
            String other = pick(wires);
            boolean pair = !wire.equals(other) && chance(50);
            String demand = wire.compareTo(other) < 0 ? wire + " " + other : other + " " + wire;
            String in = takenIn.computeIfAbsent(pair ? demand : wire, key -> pair ? hookup.id() : hookupsOf(key));
            QuantityKind kind = pick(KINDS);
            String mode = !bench.modes.isEmpty() && chance(40) ? "heating" : "on";
            for (MainsState state : states) {
                if (chance(90)) {
                    bench.read(kind, state, mode, in, pair ? new String[] {wire, other} : new String[] {wire});
                }
            }
        }
    }

    /** What one wire gives is read in one hookup that has it, or in whichever of them. */
    private String hookupsOf(String wire) {
        List<String> offering = bench.hookups.stream()
                .filter(each -> each.chainOf(wire).isPresent())
                .map(Hookup::id)
                .toList();
        return chance(50) ? pick(offering) : String.join(",", offering);
    }

    private void mains(List<MainsState> states) {
        for (Hookup hookup : bench.hookups) {
            for (Chain chain : hookup.chains()) {
                if (chance(30)) {
                    String in = takenIn.computeIfAbsent(chain.connection(), this::hookupsOf);
                    states.stream()
                            .filter(state -> state.fault() == Fault.NONE)
                            .forEach(state -> bench.mains(state, in, chain.connection()));
                }
            }
        }
    }
}
