package leadwright.catalog.text;

/** A value with the place where it is written, for checks across a file. */
public record Located<T>(T value, Place at) {}
