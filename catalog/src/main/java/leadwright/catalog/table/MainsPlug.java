package leadwright.catalog.table;

import java.util.List;
import leadwright.catalog.device.SupplySystem;
import leadwright.catalog.quantity.Quantity;

/**
 * A wall plug; the same word names the socket made for it.
 *
 * @param currents rated currents; several where the word covers a family
 * @param fits which of its own family's sockets a plug goes into
 * @param polarised whether it goes in one way round only; if not, both polarities are always taken
 * @param enters sockets that it goes into
 */
public record MainsPlug(
        String id,
        String name,
        List<Quantity> currents,
        Fits fits,
        Quantity voltage,
        boolean earth,
        boolean polarised,
        List<SupplySystem> systems,
        List<String> enters,
        Origin origin) {
    public MainsPlug {
        currents = List.copyOf(currents);
        systems = List.copyOf(systems);
        enters = List.copyOf(enters);
    }

    /** Which sockets of a family a plug of that family goes into. */
    public enum Fits {
        /** Of the same current only. */
        EQUAL,
        /** Of the same or a higher current. */
        EQUAL_OR_HIGHER
    }
}
