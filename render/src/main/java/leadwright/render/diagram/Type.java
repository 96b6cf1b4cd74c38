package leadwright.render.diagram;

/** How a text is set: size in points, weight, colour. */
record Type(double pt, boolean bold, String colour) {
    static final Type TITLE = new Type(14, true, Ink.BLACK);
    static final Type FOLLOWED = new Type(11, false, Ink.BLACK);
    static final Type NUMBER = new Type(11, true, Ink.BLACK);
    static final Type GROUP = new Type(10, true, Ink.BLACK);
    static final Type KIT = new Type(10, false, Ink.BLACK);
    static final Type NOTE = new Type(9, false, Ink.BLACK);
    static final Type SMALL = new Type(8.5, false, Ink.QUIET);
    static final Type CAPTION = new Type(8, false, Ink.QUIET);

    /** The same in another colour. */
    Type in(String other) {
        return new Type(pt, bold, other);
    }
}
