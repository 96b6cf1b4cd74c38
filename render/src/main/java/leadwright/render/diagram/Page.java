package leadwright.render.diagram;

/** The sheet in millimetres: 249 by 190 fits A4 and letter at scale 1, with 20 mm for filing and 10 mm elsewhere. */
final class Page {
    static final double WIDTH = 249;
    static final double HEIGHT = 190;

    /** Frame and everything in it keep this distance from the sheet's edge. */
    static final double EDGE = 0.25;

    static final double LEFT = 3;
    static final double RIGHT = WIDTH - 3;
    static final double HEADING = 15.5;
    static final double CAPTION = 18.6;

    /** Rows of the device stand between these. */
    static final double TOP = 21.4;

    static final double BOTTOM = 167.3;

    static final double BELOW = 169.8;
    static final double FOOT = 172;

    /** Distance of neighbouring upright tracks. */
    static final double TRACK = 3.2;

    /** What a jack's box leaves of the distance to the next. */
    static final double JACK_GAP = 0.6;

    /** Room between the tester's upper edge and its first jack. */
    static final double STRIP = 0.7;

    /** Height of an item's box on a wire. */
    static final double ITEM_BOX = 4.2;

    private Page() {}
}
