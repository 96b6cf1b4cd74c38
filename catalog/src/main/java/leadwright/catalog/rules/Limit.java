package leadwright.catalog.rules;

import java.util.List;
import leadwright.catalog.quantity.Quantity;

/**
 * A limit as it applies to one reading.
 *
 * @param id unique within its rule set; house files refer to it
 * @param bound whether the value is a ceiling or a floor
 * @param clause clause or table, as printed
 * @param mark the weakest mark among what the value rests on
 * @param sources keys of the catalog's source list
 * @param confirmed whether the house has confirmed it
 */
public record Limit(
        String id, Bound bound, Quantity value, String clause, Mark mark, List<String> sources, boolean confirmed) {
    public Limit {
        sources = List.copyOf(sources);
    }

    /** Ceiling or floor. */
    public enum Bound {
        AT_MOST,
        AT_LEAST;

        /** The plan's key: {@code at-most} or {@code at-least}. */
        public String word() {
            return leadwright.catalog.device.Words.of(this);
        }
    }

    /** Whether the document must call a verdict that rests on it provisional. */
    public boolean unconfirmed() {
        return mark == Mark.C && !confirmed;
    }
}
