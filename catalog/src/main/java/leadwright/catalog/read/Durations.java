package leadwright.catalog.read;

import java.util.Optional;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.text.Fields;

/** Times of a device or a bench: none is longer than a day, so that no sum of them is out of hand. */
final class Durations {

    private static final Quantity DAY = Quantity.seconds(86_400);

    private Durations() {}

    static Optional<Quantity> optional(Fields fields, String key) {
        Optional<Quantity> time = fields.optionalQuantity(key, Dimension.TIME);
        if (time.isPresent() && !time.get().atMost(DAY)) {
            fields.findings().problem(fields.at(key), "'" + key + "' is longer than a day; at most 24 h is due");
        }
        return time;
    }
}
