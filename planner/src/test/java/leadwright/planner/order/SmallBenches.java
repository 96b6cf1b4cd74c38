package leadwright.planner.order;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import leadwright.catalog.device.Battery;
import leadwright.catalog.device.Device;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.MainsState.Fault;

/** Small benches drawn from a seed: at most three hookups, four mains states and eight readings beside the earth's. */
final class SmallBenches {
    private final Random random;
    private final Bench bench = new Bench();

    private SmallBenches(long seed) {
        // Neighbouring seeds give like first draws; mixing parts them.
        random = new Random(seed * 0x9E3779B97F4A7C15L + 77);
    }

    static Bench of(long seed) {
        return new SmallBenches(seed).draw();
    }

    private boolean chance(int percent) {
        return random.nextInt(100) < percent;
    }

    private <T> T pick(List<T> from) {
        return from.get(random.nextInt(from.size()));
    }

    private Bench draw() {
        bench.part("ecg", "snap-socket", "R", "L");
        bench.part("eeg", "tp15-socket", "1", "2");
        bench.part("cuff", "skin-surface", "c");
        bench.point("clamp", 500).point("plate", 1300);
        bench.battery = chance(40) ? Battery.BACKS_UP : Battery.NONE;
        bench.toleratesCut = java.util.Optional.of(chance(50));
        bench.startUp = pick(List.of(0, 1, 4, 20, 75));
        bench.shutDown = pick(List.of(0, 1, 5, 30));
        bench.underPower = chance(35);
        bench.earthRest = chance(50) ? AtRest.OPEN : AtRest.EARTHED;
        if (chance(20)) {
            bench.modes.put("heating", pick(List.of(0, 3, 40)));
        }
        boolean therapy = chance(20);
        if (therapy) {
            bench.part("pace", "snap-socket", "p").therapy.put("pace", pick(List.of(0, 10)));
        }
        boolean earth = chance(40);
        int count = 1 + random.nextInt(3);
        for (int h = 0; h < count; h++) {
            String id = List.of("A", "B", "C").get(h);
            boolean carries = earth && (h == 0 || chance(50));
            bench.hookup(id, carries, therapy && h == count - 1 ? new String[] {"pace.p"} : wires());
        }
        if (earth) {
            String in = String.join(
                    ",",
                    bench.hookups.stream()
                            .filter(hookup -> !hookup.earth().isEmpty())
                            .map(Hookup::id)
                            .toList());
            for (String place : chance(50) ? List.of("clamp") : List.of("clamp", "plate")) {
                bench.add(
                        QuantityKind.EARTH_RESISTANCE,
                        MainsState.OFF,
                        "off",
                        in,
                        List.of(),
                        java.util.Optional.of(place),
                        java.util.Optional.empty());
            }
        }
        readings();
        return bench;
    }

    private String[] wires() {
        List<String> all = new ArrayList<>(List.of("ecg.R", "ecg.L", "eeg.1", "eeg.2", "cuff.c"));
        java.util.Collections.shuffle(all, random);
        List<String> wires = new ArrayList<>(all.subList(0, 1 + random.nextInt(3)));
        if (chance(15)) {
            wires.set(wires.size() - 1, Device.TOUCH_PROBE);
        }
        return wires.toArray(new String[0]);
    }

    private void readings() {
        List<MainsState> states = new ArrayList<>(List.of(MainsState.values()));
        states.remove(MainsState.INSTALLED_ON);
        states.remove(MainsState.ISOLATED);
        java.util.Collections.shuffle(states, random);
        states = states.subList(0, 2 + random.nextInt(3));
        int wanted = 3 + random.nextInt(6);
        while (drawn() < wanted) {
            one(pick(states), wanted - drawn());
        }
    }

    private int drawn() {
        return (int) bench.wanted.stream()
                .filter(each -> each.quantity() != QuantityKind.EARTH_RESISTANCE)
                .count();
    }

    private void one(MainsState state, int room) {
        Hookup hookup = pick(bench.hookups);
        String wire = pick(hookup.chains()).connection();
        List<String> offering = bench.hookups.stream()
                .filter(each -> each.chainOf(wire).isPresent() && (each == hookup || chance(70)))
                .map(Hookup::id)
                .toList();
        String in = String.join(",", offering);
        String mode = state == MainsState.OFF
                ? (bench.battery == Battery.NONE || chance(60) ? "off" : "on")
                : !bench.modes.isEmpty() && chance(40) ? "heating" : "on";
        boolean noFault = state.fault() == Fault.NONE && state != MainsState.OFF;
        int kind = random.nextInt(100);
        if (wire.equals(Device.TOUCH_PROBE)) {
            if (state != MainsState.OFF || bench.battery != Battery.NONE) {
                String place = pick(List.of("clamp", "plate"));
                bench.add(
                        QuantityKind.TOUCH_CURRENT,
                        state,
                        "on",
                        in,
                        List.of(wire),
                        java.util.Optional.of(place),
                        java.util.Optional.empty());
            }
        } else if (kind < 25) {
            List<String> any = bench.hookups.stream()
                    .filter(each -> chance(70))
                    .map(Hookup::id)
                    .toList();
            if (state != MainsState.OFF || bench.battery != Battery.NONE) {
                bench.touch(
                        state, any.isEmpty() ? hookup.id() : String.join(",", any), pick(List.of("clamp", "plate")));
            }
        } else if (kind < 40 && noFault && room >= 2) {
            bench.mains(state, in, wire);
        } else if (kind < 50 && state == MainsState.OFF) {
            bench.read(QuantityKind.INSULATION_RESISTANCE, state, "off", in, wire);
        } else {
            QuantityKind quantity = chance(70) ? QuantityKind.PATIENT_LEAKAGE : QuantityKind.PATIENT_AUXILIARY;
            bench.read(quantity, state, mode, in, wire);
        }
    }
}
