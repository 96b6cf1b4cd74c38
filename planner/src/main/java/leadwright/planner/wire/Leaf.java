package leadwright.planner.wire;

/**
 * What a chain starts from, as far as the kit can tell: connections with equal leaves are interchangeable.
 *
 * @param terminal connector or surface word
 * @param reach micrometres that the chain must be long; 0 where reach is not checked
 */
record Leaf(Kind kind, String terminal, long reach) {

    enum Kind {
        PATIENT,
        /** Accessible part or port: a clip is preferred to a probe. */
        SURFACE,
        /** The touch probe: a probe item held by hand. */
        TOUCH,
        /** The far jack of a bundle that stands on several jacks. */
        LINK,
        /** The trunk of an item that gathers several chains. */
        TRUNK
    }

    static Leaf link(String jackSocket) {
        return new Leaf(Kind.LINK, jackSocket, 0);
    }

    static Leaf trunk(String end) {
        return new Leaf(Kind.TRUNK, end, 0);
    }
}
