package leadwright.catalog.kit;

import leadwright.catalog.quantity.Quantity;

/** The tester's own mains plug. */
public record Inlet(String plug, Quantity current) {}
