package leadwright.catalog.device;

/**
 * A test that the maker's instructions rule out.
 *
 * @param test a quantity word
 */
public record Forbidden(String test, String because) {}
