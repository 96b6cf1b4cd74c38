package leadwright.catalog.kit;

import leadwright.catalog.quantity.Quantity;

/** The limited source for mains on an applied part. */
public record PartSource(Quantity voltage, Quantity shortCircuit, SourceReading reading) {}
