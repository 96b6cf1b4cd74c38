package leadwright.planner.foresee;

/**
 * Values taken where no file states one: common practice, no source, and therefore with a wide span. They make a foreseen
 * reading, never a verdict.
 */
public enum Assumed {
    /** Filter capacitor of a class I device, line or neutral to chassis. */
    FILTER("capacitance from line, and from neutral, to the chassis", 1e-9, 0.1e-9, 4.7e-9, "F"),
    /** Resistance beside it: good insulation. */
    MAINS_INSULATION("insulation resistance of the mains part", 1e9, 20e6, 100e9, "ohm"),
    /** Line or neutral to the enclosure of a class II device. */
    ENCLOSURE(
            "capacitance from line, and from neutral, to the enclosure of a class II device",
            100e-12,
            10e-12,
            500e-12,
            "F"),
    /** Line or neutral to unearthed metal of a class I device. */
    UNEARTHED_METAL(
            "capacitance from line, and from neutral, to unearthed metal of a class I device",
            5e-12,
            1e-12,
            50e-12,
            "F"),
    METAL_TO_CHASSIS("capacitance from unearthed metal or a socket to the chassis", 200e-12, 10e-12, 2e-9, "F"),
    METAL_INSULATION("resistance from unearthed metal or a socket to the chassis", 10e6, 1e3, 10e9, "ohm"),
    METAL_ON_ENCLOSURE("resistance between accessible metal of a class II device and its inside", 100, 1, 10e3, "ohm"),
    LINE_PART_BF("capacitance from line, and from neutral, to a type BF part", 20e-12, 2e-12, 200e-12, "F"),
    LINE_PART_CF("capacitance from line, and from neutral, to a type CF part", 5e-12, 0.5e-12, 50e-12, "F"),
    PART_EARTH_BF("capacitance from a type BF part to the chassis", 300e-12, 30e-12, 3e-9, "F"),
    PART_EARTH_CF("capacitance from a type CF part to the chassis", 100e-12, 20e-12, 500e-12, "F"),
    PART_INSULATION("insulation resistance of a type BF or CF part", 10e9, 100e6, 1e12, "ohm"),
    /** A type B part is often bonded to the housing; it may also be insulated. */
    PART_B("resistance from a type B part to the chassis", 100, 0.1, 10e6, "ohm"),
    PART_PART("capacitance between two applied parts", 20e-12, 1e-12, 300e-12, "F"),
    PART_PART_INSULATION("insulation resistance between two applied parts", 10e9, 100e6, 1e12, "ohm"),
    INSIDE_PART("resistance between a patient connection and the inside of its part", 10e3, 10, 1e6, "ohm"),
    CABLE(
            "capacitance of a part's own cable to the room, all its wires together, for a metre",
            20e-12,
            3e-12,
            60e-12,
            "F/m"),
    CABLE_LENGTH("length of a part's own cable", 2.5, 0.5, 5, "m"),
    LEAD("capacitance of an item of the kit to the room, for a metre", 60e-12, 10e-12, 150e-12, "F/m"),
    JACK("capacitance of a jack of the tester to earth", 5e-12, 1e-12, 30e-12, "F"),
    LEAD_RESISTANCE(
            "resistance of an item of the kit that states no conductor, for a metre", 0.026, 0.013, 0.15, "ohm/m"),
    /** The spans of sprung plugs, snaps and clips, taken together; from memory. */
    CONTACT("resistance of a contact", 0.01, 0.001, 0.05, "ohm"),
    EARTH_PATH("resistance from the earth terminal to the housing", 0.02, 0.003, 0.1, "ohm"),
    CORD("resistance of the cord's earth conductor with both its contacts", 0.06, 0.02, 0.2, "ohm"),
    LOAD_CURRENT("current drawn from the supply", 0.3, 0.03, 3, "A"),
    MAINS("mains voltage, as a share of the rated one", 1, 0.9, 1.1, "");

    private final String words;
    private final double nominal;
    private final double low;
    private final double high;
    private final String unit;

    Assumed(String words, double nominal, double low, double high, String unit) {
        this.words = words;
        this.nominal = nominal;
        this.low = low;
        this.high = high;
        this.unit = unit;
    }

    public String words() {
        return words;
    }

    public double nominal() {
        return nominal;
    }

    public double low() {
        return low;
    }

    public double high() {
        return high;
    }

    /** SI unit, empty for a plain share. */
    public String unit() {
        return unit;
    }

    Parameter parameter(String id) {
        return new Parameter(id, nominal, low, high, Basis.ASSUMED);
    }
}
