package leadwright.render.edition;

/**
 * What one kind of reading means. It names no value: what a reading must come to is for the limit to say. The way of its current
 * stands in {@link Ways}.
 *
 * @param healthy what a good reading means
 * @param slips which way a mistake in the connection moves it, and why
 * @param exposed how such a mistake is found
 */
record Explanation(String healthy, String slips, String exposed) {}
