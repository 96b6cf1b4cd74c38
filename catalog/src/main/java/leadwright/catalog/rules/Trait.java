package leadwright.catalog.rules;

import leadwright.catalog.device.Words;

/** What a device is or has, as far as rows about tests that are left out depend on it. */
public enum Trait {
    /** Every device. */
    ANY,
    /** Runs from the mains by a cord, an external adapter or fixed wiring. */
    MAINS,
    /** Runs from the mains through a plug. */
    CORD,
    /** Wired in, so that no tester can open its earth or supply. */
    PERMANENT,
    CLASS_1,
    CLASS_2,
    INTERNALLY_POWERED,
    BATTERY_AND_MAINS,
    FUNCTIONAL_EARTH,
    NO_FUNCTIONAL_EARTH,
    EARTHED_PART,
    /** No accessible part known or thought to be protectively earthed. */
    NO_EARTHED_PART,
    NO_UNEARTHED_PART,
    FEWER_THAN_TWO_UNEARTHED_PARTS,
    /** No accessible bare metal known not to be protectively earthed. */
    NO_UNEARTHED_METAL,
    PART,
    NO_PART,
    TYPE_B_PART,
    F_TYPE_PART,
    NO_F_TYPE_PART,
    TYPE_CF_PART,
    B_OR_BF_PART,
    /** No type has more than one applied part. */
    NO_TYPE_TWICE,
    ONE_PATIENT_CONNECTION,
    PORT;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
