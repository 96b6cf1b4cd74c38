package leadwright.catalog.device;

import java.util.List;
import java.util.Optional;
import leadwright.catalog.quantity.Quantity;

/**
 * A therapy output.
 *
 * @param appliedPart id of the applied part it acts through
 * @param functions ids of the functions it acts through; empty means all of the part
 * @param madeSafeBy what makes it safe, in the device file's words
 * @param waitTime time to wait after it was used
 * @param mayShare the reason why it may share a hookup with other parts
 */
public record Output(
        String id,
        String appliedPart,
        List<String> functions,
        TherapyKind kind,
        Optional<String> madeSafeBy,
        Optional<Quantity> waitTime,
        Optional<String> mayShare) {
    public Output {
        functions = List.copyOf(functions);
    }
}
