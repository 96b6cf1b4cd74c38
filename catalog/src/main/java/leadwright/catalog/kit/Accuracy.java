package leadwright.catalog.kit;

import leadwright.catalog.quantity.Quantity;

/** Accuracy of one function: a share of the reading and a floor. */
public record Accuracy(Quantity reading, Quantity floor) {}
