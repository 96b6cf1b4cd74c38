package leadwright.catalog.rules;

import java.util.List;

/**
 * A test that is left out for a device with all of the traits, with the reason that a person can show.
 *
 * @param test a quantity word, or a test in words
 */
public record NotDoneRow(String test, List<Trait> when, String because, Basis basis) {
    public NotDoneRow {
        when = List.copyOf(when);
    }
}
