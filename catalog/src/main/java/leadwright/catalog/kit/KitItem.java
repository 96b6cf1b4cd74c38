package leadwright.catalog.kit;

import java.util.List;
import java.util.Optional;
import leadwright.catalog.quantity.Quantity;

/**
 * A kind of item in the bench kit; {@link #stock()} instances named {@code id/1}, {@code id/2} …
 *
 * <p>A fan-out has a trunk and equal branches; every other item has two ends.
 *
 * @param ends connector words: two for all but a fan-out, for which they are trunk and branch
 * @param branches number of branches of a fan-out, 0 otherwise
 * @param also further terminals that a clip or probe reaches
 * @param voltage empty means: not for mains on an applied part or insulation
 * @param capacitance per metre; empty counts as unknown, never as zero
 */
public record KitItem(
        String id,
        ItemKind kind,
        List<String> ends,
        int branches,
        List<String> also,
        Optional<Quantity> length,
        Optional<String> conductor,
        Optional<Quantity> current,
        Optional<Quantity> voltage,
        Optional<Quantity> capacitance,
        int stock,
        Optional<String> price) {
    public KitItem {
        ends = List.copyOf(ends);
        also = List.copyOf(also);
    }

    /** The same item with another stock. */
    public KitItem withStock(int other) {
        return new KitItem(
                id, kind, ends, branches, also, length, conductor, current, voltage, capacitance, other, price);
    }

    /** The same item rated for another voltage. */
    public KitItem withVoltage(Quantity rated) {
        return new KitItem(
                id,
                kind,
                ends,
                branches,
                also,
                length,
                conductor,
                current,
                Optional.of(rated),
                capacitance,
                stock,
                price);
    }

    /** The same item with another conductor that is rated for this current. */
    public KitItem withConductor(String other, Quantity rated) {
        return new KitItem(
                id,
                kind,
                ends,
                branches,
                also,
                length,
                Optional.of(other),
                Optional.of(rated),
                voltage,
                capacitance,
                stock,
                price);
    }
}
