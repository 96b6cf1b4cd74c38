package leadwright.render.edition;

/**
 * One kind of reading in words. It names no value: what a reading must come to is for the limit to say.
 *
 * @param path the way of the current: from, through, back to
 * @param healthy what a good reading means
 * @param slips which way a mistake in the connection moves it, and why
 * @param exposed how such a mistake is found
 */
record Explanation(String path, String healthy, String slips, String exposed) {}
