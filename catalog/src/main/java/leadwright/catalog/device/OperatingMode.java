package leadwright.catalog.device;

import leadwright.catalog.quantity.Quantity;

/**
 * An operating mode in which the device must also be read.
 *
 * @param reach time to bring the device into it
 */
public record OperatingMode(String id, String name, Quantity reach) {}
