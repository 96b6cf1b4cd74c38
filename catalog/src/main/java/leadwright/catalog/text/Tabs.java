package leadwright.catalog.text;

/** JSON may be indented with tabs, which YAML's scanner refuses; there each is as good as one space. */
final class Tabs {

    private Tabs() {}

    /** The text with tabs between the tokens of JSON made spaces; any other text unchanged. Columns stay as they are. */
    static String inJson(String text) {
        if (text.indexOf('\t') < 0 || !text.stripLeading().startsWith("{")) {
            return text;
        }
        StringBuilder spaced = new StringBuilder(text);
        boolean quoted = false;
        for (int i = 0; i < text.length(); i++) {
            char character = text.charAt(i);
            if (quoted && character == '\\') {
                i++;
            } else if (character == '"') {
                quoted = !quoted;
            } else if (character == '\t' && !quoted) {
                spaced.setCharAt(i, ' ');
            }
        }
        return spaced.toString();
    }
}
