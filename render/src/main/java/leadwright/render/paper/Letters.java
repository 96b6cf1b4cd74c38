package leadwright.render.paper;

/** Characters that may stand in a document. */
public final class Letters {

    private static final int SUBSTITUTE = 0xfffd;

    private Letters() {}

    /**
     * XML has no way to write most control characters, not even escaped, and characters that turn the direction of text
     * could make a row read as another: each becomes the replacement character.
     */
    public static String legal(String text) {
        StringBuilder legal = new StringBuilder(text.length());
        text.codePoints().map(c -> isLegal(c) ? c : SUBSTITUTE).forEach(legal::appendCodePoint);
        return legal.toString();
    }

    private static boolean isLegal(int c) {
        boolean control = c < 0x20 && c != '\t' && c != '\n' || c >= 0x7f && c < 0xa0;
        boolean turning = c >= 0x202a && c <= 0x202e || c >= 0x2066 && c <= 0x2069;
        boolean noCharacter = c >= 0xd800 && c <= 0xdfff || c == 0xfffe || c == 0xffff;
        return !control && !turning && !noCharacter;
    }

    /** Whether some of it is written from right to left, or marks it so: beside other text it must be kept apart. */
    public static boolean turns(String text) {
        return text.codePoints().anyMatch(c -> switch (Character.getDirectionality(c)) {
            case Character.DIRECTIONALITY_RIGHT_TO_LEFT,
                    Character.DIRECTIONALITY_RIGHT_TO_LEFT_ARABIC,
                    Character.DIRECTIONALITY_ARABIC_NUMBER -> true;
            default -> false;
        });
    }
}
