package leadwright.catalog.text;

/** A place in a file; lines and columns (in characters, not bytes) count from 1. */
public record Place(int line, int column) implements Comparable<Place> {

    /** Where a file begins. */
    public static final Place START = new Place(1, 1);

    @Override
    public int compareTo(Place other) {
        return line != other.line ? Integer.compare(line, other.line) : Integer.compare(column, other.column);
    }
}
