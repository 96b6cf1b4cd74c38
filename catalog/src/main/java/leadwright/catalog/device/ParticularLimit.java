package leadwright.catalog.device;

import java.util.Optional;
import leadwright.catalog.quantity.Quantity;

/**
 * A limit from the device's own instructions or its particular standard.
 *
 * @param quantity quantity word
 * @param of subject: an applied part, touch point or port id; empty for the device
 */
public record ParticularLimit(String quantity, Optional<String> of, Quantity atMost, String source) {}
