package leadwright.planner.mistake;

import java.util.List;
import java.util.Optional;

/**
 * One fault of a device.
 *
 * @param id {@code line-to-part/ecg}
 */
public record Fault(String id, FaultKind kind, List<String> things, Effect effect) implements Cause {
    public Fault {
        things = List.copyOf(things);
    }

    @Override
    public Optional<String> hookup() {
        return Optional.empty();
    }

    @Override
    public String words() {
        return kind.words() + (things.isEmpty() ? "" : " (" + String.join(", ", things) + ")");
    }
}
