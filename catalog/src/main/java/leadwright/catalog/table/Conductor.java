package leadwright.catalog.table;

import java.math.BigInteger;
import java.util.Optional;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;

/**
 * A copper conductor with its resistance at 20 °C.
 *
 * @param name as written: {@code 1.5 mm2}, {@code AWG 18}
 * @param area cross-section
 * @param perMetre resistance of one metre
 * @param tinnedPerMetre the same for tinned strands, where the table has it
 * @param basis what the value rests on
 */
public record Conductor(
        String name, Quantity area, Quantity perMetre, Optional<Quantity> tinnedPerMetre, Basis basis, Origin origin) {

    /** What a conductor's resistance rests on. */
    public enum Basis {
        /** The most that IEC 60228 allows for flexible copper; what a lead really has is usually less. */
        CLASS_5,
        /** A size outside IEC 60228, after DIN VDE 0295. */
        SMALL,
        /** Solid copper of an AWG size; strands have 2 to 4 % more (from memory). */
        AWG,
        /** No row for this area: ideal copper times the greatest ratio of a class 5 row to it. */
        COMPUTED
    }

    /** Resistance at 20 °C of one conductor of this length, rounded up to a whole microohm. */
    public Quantity resistance(Quantity length) {
        if (length.dimension() != Dimension.LENGTH) {
            throw new IllegalArgumentException(length.text() + " is not a length");
        }
        BigInteger product = BigInteger.valueOf(perMetre.amount()).multiply(BigInteger.valueOf(length.amount()));
        BigInteger[] parts = product.divideAndRemainder(BigInteger.valueOf(1_000_000));
        BigInteger up = parts[1].signum() == 0 ? parts[0] : parts[0].add(BigInteger.ONE);
        return new Quantity(Dimension.RESISTANCE, up.longValueExact());
    }
}
