package leadwright.catalog.table;

/** Whether two ends go together. */
public enum Mating {
    /** They do not, or only through an adapter. */
    NO,
    /** As built. */
    YES,
    /**
     * They join electrically, while a protective property is lost: at most 30 V r.m.s. and no live source, or mains on
     * an applied part only from a source limited to 3.5 mA.
     */
    UNPROTECTED
}
