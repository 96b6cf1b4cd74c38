package leadwright.planner.mistake;

import java.util.List;
import java.util.Optional;

/**
 * One slip.
 *
 * @param id {@code H1/wire-off/ecg.R}, unique in a plan
 * @param hookup in which it is made; empty where it concerns every reading
 * @param things connections, items, jacks or places that it concerns
 */
public record Slip(String id, SlipKind kind, Optional<String> hookup, List<String> things, Effect effect)
        implements Cause {
    public Slip {
        things = List.copyOf(things);
    }

    @Override
    public String words() {
        return kind.words() + (things.isEmpty() ? "" : " (" + String.join(", ", things) + ")");
    }
}
