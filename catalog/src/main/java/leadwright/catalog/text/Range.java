package leadwright.catalog.text;

import leadwright.catalog.quantity.Quantity;

/** Two amounts of one dimension, the lower one first; equal where one amount is written. */
public record Range(Quantity lowest, Quantity highest) {}
