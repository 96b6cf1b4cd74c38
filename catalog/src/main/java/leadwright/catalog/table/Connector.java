package leadwright.catalog.table;

import java.util.List;
import java.util.Optional;
import leadwright.catalog.quantity.Quantity;

/**
 * What a wire, an item or a device can end in.
 *
 * @param id the word used in files
 * @param name for people
 * @param family connector family, with its standard where there is one
 * @param mates ids it joins with as built
 * @param matesUnprotected ids it joins with while a protective property is lost
 * @param contact kind of joint it makes
 * @param shrouded stated for 4 mm ends only
 * @param rear connector in the back of a stackable plug, which takes one more chain
 * @param current the most that such an end is known to be rated for; an item's own marking decides below that
 * @param voltage likewise; empty means that the item's own marking alone decides
 * @param origin empty for a connector that a device or kit file defines
 */
public record Connector(
        String id,
        String name,
        String family,
        List<String> mates,
        List<String> matesUnprotected,
        ContactKind contact,
        Optional<Boolean> shrouded,
        Optional<String> rear,
        Optional<Quantity> current,
        Optional<Quantity> voltage,
        Optional<Origin> origin) {
    public Connector {
        mates = List.copyOf(mates);
        matesUnprotected = List.copyOf(matesUnprotected);
    }

    /** Whether it is a 4 mm end that can be touched while it is not fully in its socket. */
    public boolean unshrouded() {
        return shrouded.isPresent() && !shrouded.get();
    }
}
