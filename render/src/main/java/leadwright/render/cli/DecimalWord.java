package leadwright.render.cli;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A plain decimal, followed by a unit or not. */
final class DecimalWord {
    private DecimalWord() {}

    /** @param units units that may stand, as a pattern */
    static Optional<Double> of(String word, String units) {
        Matcher matcher = Pattern.compile("(-?[0-9]{1,4}(?:\\.[0-9]{1,3})?) ?(?:" + units + ")?")
                .matcher(word.trim());
        return matcher.matches() ? Optional.of(Double.valueOf(matcher.group(1))) : Optional.empty();
    }
}
