package leadwright.planner.order;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import leadwright.catalog.device.Battery;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.MainsState.Fault;

/**
 * Benches drawn from a seed on which most readings are of like electrodes: the same ones of each, in the same hookups, so that
 * which is which makes no difference. One electrode in three draws is treated otherwise than the rest.
 */
final class LikeBenches {
    private LikeBenches() {}

    static Bench of(long seed) {
        Random random = new Random(seed * 0x9E3779B97F4A7C15L + 5);
        Bench bench = new Bench();
        List<String> like = new ArrayList<>();
        int count = 2 + random.nextInt(3);
        String[] ids = new String[count];
        for (int e = 0; e < count; e++) {
            ids[e] = String.valueOf(e + 1);
            like.add("eeg." + ids[e]);
        }
        bench.part("eeg", "tp15-socket", ids);
        bench.part("cuff", "skin-surface", "c");
        bench.battery = random.nextInt(100) < 40 ? Battery.BACKS_UP : Battery.NONE;
        bench.toleratesCut = java.util.Optional.of(random.nextBoolean());
        bench.startUp = List.of(0, 4, 20).get(random.nextInt(3));
        bench.shutDown = List.of(0, 5).get(random.nextInt(2));
        bench.underPower = random.nextInt(100) < 30;
        int hookups = 2 + random.nextInt(2);
        for (int h = 0; h < hookups; h++) {
            List<String> wires = new ArrayList<>(like);
            if (random.nextInt(3) > 0) {
                wires.add("cuff.c");
            }
            bench.hookup(List.of("A", "B", "C").get(h), false, wires.toArray(new String[0]));
        }
        List<MainsState> states = new ArrayList<>(List.of(
                MainsState.NORMAL, MainsState.REVERSED, MainsState.NORMAL_SUPPLY_OPEN, MainsState.REVERSED_EARTH_OPEN));
        Collections.shuffle(states, random);
        int odd = random.nextInt(3) == 0 ? random.nextInt(count) : -1;
        for (MainsState state : states.subList(0, 2)) {
            String in = in(random, hookups);
            for (int e = 0; e < count; e++) {
                if (e != odd || random.nextBoolean()) {
                    bench.read(QuantityKind.PATIENT_LEAKAGE, state, "on", in, like.get(e));
                }
            }
            if (state.fault() == Fault.NONE && random.nextBoolean()) {
                String with = in(random, hookups);
                like.forEach(wire -> bench.mains(state, with, wire));
            }
        }
        String wire = like.get(random.nextInt(count));
        bench.read(QuantityKind.PATIENT_AUXILIARY, states.get(0), "on", in(random, hookups), wire);
        return bench;
    }

    private static String in(Random random, int hookups) {
        List<String> in = new ArrayList<>();
        for (int h = 0; h < hookups; h++) {
            if (random.nextInt(4) > 0) {
                in.add(List.of("A", "B", "C").get(h));
            }
        }
        return in.isEmpty() ? "A" : String.join(",", in);
    }
}
