package leadwright.planner.circuit;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Circuits drawn from a seed: the same seed gives the same circuit on every machine. */
final class RandomCircuits {
    private final Random random;
    private final List<String> nodes = new ArrayList<>(List.of(Circuit.EARTH));
    private final List<Element> elements = new ArrayList<>();

    private RandomCircuits(long seed) {
        // Neighbouring seeds of java.util.Random give like first draws; mixing parts them.
        random = new Random(seed * 0x9E3779B97F4A7C15L + 0x7654321L);
    }

    /** Every node joined to earth by impedances; then more of them, and sources of both kinds. */
    static Circuit any(long seed) {
        RandomCircuits drawn = new RandomCircuits(seed);
        drawn.passive(3 + drawn.random.nextInt(9));
        drawn.sources(1 + drawn.random.nextInt(3), true);
        return new Circuit(drawn.elements);
    }

    /** The same, with sources of voltage against earth alone. */
    static Circuit fed(long seed) {
        RandomCircuits drawn = new RandomCircuits(seed);
        drawn.passive(3 + drawn.random.nextInt(9));
        drawn.sources(1 + drawn.random.nextInt(2), false);
        return new Circuit(drawn.elements);
    }

    /** Impedances alone. */
    static List<Element> passiveOnly(long seed) {
        RandomCircuits drawn = new RandomCircuits(seed);
        drawn.passive(3 + drawn.random.nextInt(9));
        return drawn.elements;
    }

    private void passive(int count) {
        for (int n = 1; n <= count; n++) {
            String node = "n" + n;
            impedance(node, nodes.get(random.nextInt(nodes.size())));
            nodes.add(node);
        }
        for (int more = random.nextInt(2 * count); more > 0; more--) {
            String from = nodes.get(random.nextInt(nodes.size()));
            String to = nodes.get(random.nextInt(nodes.size()));
            if (!from.equals(to)) {
                impedance(from, to);
            }
        }
    }

    private void impedance(String from, String to) {
        String name = "z" + elements.size();
        elements.add(
                random.nextBoolean()
                        ? new Element.Resistance(name, from, to, Math.pow(10, 9 * random.nextDouble() - 2))
                        : new Element.Capacitance(name, from, to, Math.pow(10, 6 * random.nextDouble() - 12)));
    }

    private void sources(int count, boolean floating) {
        List<String> free = new ArrayList<>(nodes.subList(1, nodes.size()));
        for (int s = 0; s < count && free.size() > 1; s++) {
            // Each source of voltage ends on a node that no other one touches, so that none can contradict another.
            String from = free.remove(random.nextInt(free.size()));
            String to = floating && random.nextBoolean() ? free.remove(random.nextInt(free.size())) : Circuit.EARTH;
            double size = 1 + 300 * random.nextDouble();
            boolean current = floating && random.nextInt(3) == 0;
            elements.add(
                    current
                            ? new Element.Current("s" + s, from, to, size * 1e-3)
                            : new Element.Voltage("s" + s, from, to, size, 360 * random.nextDouble()));
        }
    }
}
