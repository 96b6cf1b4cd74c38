package leadwright.catalog.kit;

import leadwright.catalog.device.SupplySystem;
import leadwright.catalog.quantity.Quantity;

/** An outlet for the device under test. */
public record Outlet(String socket, SupplySystem system, Quantity voltage, Quantity current) {}
