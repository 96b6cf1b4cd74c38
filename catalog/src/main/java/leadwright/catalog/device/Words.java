package leadwright.catalog.device;

import java.util.Locale;

/** How an enum constant is written in a file: lower case, words joined by hyphens. */
public final class Words {
    private Words() {}

    public static String of(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
