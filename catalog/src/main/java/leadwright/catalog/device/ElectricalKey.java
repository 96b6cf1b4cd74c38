package leadwright.catalog.device;

import java.util.List;
import leadwright.catalog.quantity.Dimension;

/**
 * Keys of a device file's {@code electrical:} section: branches inside the device, each given by its capacitance or by its
 * resistance.
 */
public enum ElectricalKey {
    LINE_EARTH,
    NEUTRAL_EARTH,
    LINE_PART,
    NEUTRAL_PART,
    PART_EARTH,
    PART_PART,
    LINE_ENCLOSURE,
    NEUTRAL_ENCLOSURE,
    /** From the earth terminal to the chassis: a resistance. */
    EARTH_PATH;

    public List<Dimension> dimensions() {
        return this == EARTH_PATH
                ? List.of(Dimension.RESISTANCE)
                : List.of(Dimension.CAPACITANCE, Dimension.RESISTANCE);
    }

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
