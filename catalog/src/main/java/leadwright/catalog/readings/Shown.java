package leadwright.catalog.readings;

import leadwright.catalog.quantity.Quantity;

/** What the tester showed. */
public sealed interface Shown {

    /** As a person writes it. */
    String text();

    /** A value; less than zero only for a resistance, after nulling. */
    record Value(Quantity amount) implements Shown {
        @Override
        public String text() {
            return amount.text();
        }
    }

    /** More than the tester can show. */
    record Above(Quantity amount) implements Shown {
        @Override
        public String text() {
            return "> " + amount.text();
        }
    }

    /** Less than the tester can show. */
    record Below(Quantity amount) implements Shown {
        @Override
        public String text() {
            return "< " + amount.text();
        }
    }

    /** A resistance test that found no path. */
    record NoPath() implements Shown {
        @Override
        public String text() {
            return "open";
        }
    }
}
