package leadwright.catalog.rules;

import java.util.List;

/**
 * A quantity that a rule set asks for, and the states in which it is read.
 *
 * @param scope devices, parts and methods that it is asked for; its conditions and components are those read
 * @param polarities of the tester's outlet; empty means that the outlet is off
 * @param sourcePolarities of the source that puts mains on a part; empty where there is none
 * @param started whether the device is switched on
 * @param functionalEarthOpenToo whether it is also read with the functional earth of the cord open, which is no fault
 * @param switchedOffToo whether it is also read with the device switched off at its own switch while it is plugged in
 * @param earthedParts when parts that are earthed in normal use are read, for touch current
 */
public record TestRow(
        QuantityKind quantity,
        Scope scope,
        List<Polarity> polarities,
        List<Polarity> sourcePolarities,
        boolean started,
        boolean functionalEarthOpenToo,
        boolean switchedOffToo,
        EarthedParts earthedParts,
        Basis basis) {
    public TestRow {
        polarities = List.copyOf(polarities);
        sourcePolarities = List.copyOf(sourcePolarities);
    }
}
