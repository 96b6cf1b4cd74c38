package leadwright.catalog.kit;

import java.util.List;
import java.util.Optional;
import leadwright.catalog.quantity.Quantity;

/**
 * The earth-resistance function.
 *
 * @param currents test currents, as listed
 * @param source ac or dc
 * @param wiring {@code two-wire} or {@code four-wire}
 * @param nullUpTo largest lead resistance it can null
 * @param sockets places it measures between: {@code earth-jack}, {@code outlet-earth}, {@code second-jack}
 */
public record EarthTest(
        List<Quantity> currents,
        Component source,
        Quantity openCircuit,
        String wiring,
        Optional<Quantity> nullUpTo,
        List<String> sockets) {
    public EarthTest {
        currents = List.copyOf(currents);
        sockets = List.copyOf(sockets);
    }
}
