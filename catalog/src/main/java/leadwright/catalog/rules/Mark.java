package leadwright.catalog.rules;

/** How well a value is confirmed; it travels with the value to every document. */
public enum Mark {
    /** Two or more independent public texts agree. */
    A,
    /** One public text. */
    B,
    /** From memory: unconfirmed until a house has compared it with its own copy of the standard. */
    C,
    /** Calculated from values marked A, B or C. */
    D
}
