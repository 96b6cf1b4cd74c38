package leadwright.render.cli;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** How many practice sheets. */
final class SheetsWord implements ITypeConverter<Integer> {

    private static final int MOST = 60;

    @Override
    public Integer convert(String word) {
        if (!word.matches("[0-9]{1,3}") || Integer.parseInt(word) < 1 || Integer.parseInt(word) > MOST) {
            throw new TypeConversionException(
                    "'" + word + "' is no number of sheets; write a whole number from 1 to " + MOST);
        }
        return Integer.valueOf(word);
    }
}
