package leadwright.catalog.table;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What is printed on a patient wire in one code, and its colour.
 *
 * @param colour colour of the wire, the main one of a two-colour wire; empty where no colour code is known
 * @param second second colour of a two-colour wire
 * @param solid single colours that the second marking practice uses for the same wire; equally right
 */
public record WireMarking(String label, Optional<String> colour, Optional<String> second, List<String> solid) {
    public WireMarking {
        solid = List.copyOf(solid);
    }

    /** For people: {@code white/red}, {@code white/red or red}, or nothing where no colour is known. */
    public String colours() {
        List<String> all = new ArrayList<>();
        colour.ifPresent(main -> all.add(second.map(other -> main + "/" + other).orElse(main)));
        all.addAll(solid);
        return String.join(" or ", all);
    }
}
