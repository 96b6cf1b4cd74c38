package leadwright.planner.audit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Predicate;

/** Draws from a seed, and remembers what it drew: two damages of the same draws on the same plan are one. */
final class Dice {
    private final Random random;
    private final List<Integer> drawn = new ArrayList<>();

    Dice(long seed) {
        // Neighbouring seeds of java.util.Random give like first draws; mixing parts them.
        this.random = new Random(seed * 0x9E3779B97F4A7C15L + 0x51ED27L);
    }

    int below(int bound) {
        int number = random.nextInt(bound);
        drawn.add(number);
        return number;
    }

    <T> Optional<T> pick(List<T> from) {
        return from.isEmpty() ? Optional.empty() : Optional.of(from.get(below(from.size())));
    }

    <T> Optional<T> pick(List<T> from, Predicate<? super T> which) {
        return pick(from.stream().filter(which).toList());
    }

    List<Integer> drawn() {
        return List.copyOf(drawn);
    }
}
