package leadwright.catalog.readings;

import leadwright.catalog.quantity.Quantity;

/** What the tester showed. */
public sealed interface Shown {

    /** As the person wrote it. */
    String text();

    /** A value; less than zero only for a resistance, after nulling. */
    record Value(Quantity amount, String text) implements Shown {}

    /** More than the tester can show. */
    record Above(Quantity amount, String text) implements Shown {}

    /** Less than the tester can show. */
    record Below(Quantity amount, String text) implements Shown {}

    /** A resistance test that found no path. */
    record NoPath() implements Shown {
        @Override
        public String text() {
            return "open";
        }
    }
}
