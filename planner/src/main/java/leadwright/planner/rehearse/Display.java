package leadwright.planner.rehearse;

import leadwright.catalog.quantity.Quantity;

/** What the tester's display says of a reading. */
public sealed interface Display {
    /** An amount. */
    record Amount(Quantity quantity) implements Display {}

    /** No path, or more than the tester reads. */
    record Open() implements Display {}
}
