package leadwright.render.circuit;

/**
 * Something that the current runs through.
 *
 * @param zone what it belongs to
 * @param row where it stands in the loop
 * @param label its name in the figure; the phrase holds it
 * @param phrase what is said of it where the way is told in words, with the words that lead to it
 */
public record Station(Zone zone, Row row, String label, String phrase) {
    public Station {
        if (!phrase.contains(label)) {
            throw new IllegalArgumentException(
                    "a station that is drawn as '" + label + "' and told as '" + phrase + "'");
        }
        if (row == Row.SIDE && zone != Zone.DEVICE) {
            throw new IllegalArgumentException("only what is inside the device stands at the side: " + label);
        }
    }

    /** The loop runs to the right along the top, down at the side, and to the left along the bottom. */
    public enum Row {
        TOP,
        SIDE,
        BOTTOM
    }
}
