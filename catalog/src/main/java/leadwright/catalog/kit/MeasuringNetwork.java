package leadwright.catalog.kit;

import leadwright.catalog.device.Words;

/** Body-simulating networks, by their standard. */
public enum MeasuringNetwork {
    IEC_60601,
    IEC_60990;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
