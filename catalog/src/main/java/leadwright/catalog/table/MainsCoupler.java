package leadwright.catalog.table;

import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.Protection;
import leadwright.catalog.quantity.Quantity;

/**
 * An appliance inlet of IEC 60320 with the cord ends that go into it.
 *
 * @param inlet the word used in device files, such as {@code iec-60320-c14}
 * @param connector the cord end made for it
 * @param protection class I where it has an earth pin, class II where it has none
 * @param current rated current of the standard
 * @param currentNorthAmerica the rating listed there
 * @param pinCelsius highest pin temperature, °C
 * @param accepts every cord end that goes in, over-rated ones included
 */
public record MainsCoupler(
        String inlet,
        String connector,
        String name,
        Protection protection,
        Quantity current,
        Optional<Quantity> currentNorthAmerica,
        Quantity voltage,
        int pinCelsius,
        List<String> accepts,
        Origin origin) {
    public MainsCoupler {
        accepts = List.copyOf(accepts);
    }
}
