package leadwright.planner.rehearse;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import leadwright.catalog.quantity.Quantity;
import leadwright.planner.mistake.Cause;

/**
 * A practice sheet: the readings of a device that was good last time, as they look now, and what may be the cause.
 *
 * @param seed from which it was made
 * @param rows what is on the sheet, in the plan's order
 * @param choices causes offered; exactly one of them explains all rows. Empty cause: nothing is wrong
 * @param answer place of that one among the choices
 * @param alike further causes of this plan that would give the same readings and are not among the choices
 */
public record Practice(long seed, List<Row> rows, List<Optional<Cause>> choices, int answer, List<Cause> alike) {
    public Practice {
        rows = List.copyOf(rows);
        choices = List.copyOf(choices);
        alike = List.copyOf(alike);
    }

    /**
     * A reading.
     *
     * @param reading id
     * @param before what it was when the device was good
     * @param now what it is
     */
    public record Row(String reading, Quantity before, Quantity now) {}

    /** Letter of a choice. */
    public static String letter(int place) {
        return String.valueOf((char) ('A' + place));
    }

    /** Letter of the right one. */
    public String right() {
        return letter(answer);
    }

    /** Readings by id. */
    public Map<String, Row> byReading() {
        return rows.stream().collect(java.util.stream.Collectors.toMap(Row::reading, each -> each));
    }
}
