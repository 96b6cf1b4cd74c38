package leadwright.catalog.readings;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.text.Located;
import leadwright.catalog.text.Place;

/**
 * What was read against one plan, by whom and when. Values that are compared with the plan keep their place in the file.
 *
 * @param file name of the file, for messages
 * @param at where the file's content begins, for messages about what it leaves out
 * @param plan the plan's fingerprint, or its first eight digits and more
 * @param occasion the word of the occasion, where stated
 * @param tester which tester of that kind, for instance its serial number
 * @param mainsVoltage line to neutral at the tester's outlet
 */
public record Readings(
        String file,
        Place at,
        Located<String> plan,
        Optional<Located<String>> occasion,
        Unit device,
        String by,
        Optional<Located<LocalDate>> date,
        Optional<String> tester,
        Optional<Located<Quantity>> mainsVoltage,
        Optional<Nulls> nulls,
        List<Taken> taken) {
    public Readings {
        taken = List.copyOf(taken);
    }

    /** The one device that was on the bench. */
    public record Unit(Optional<String> serial, Optional<String> inventory, List<String> accessories) {
        public Unit {
            accessories = List.copyOf(accessories);
        }
    }
}
