package leadwright.render.cli;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** A seed: a whole number. */
final class SeedWord implements ITypeConverter<Long> {
    @Override
    public Long convert(String word) {
        if (!word.matches("[0-9]{1,9}")) {
            throw new TypeConversionException("'" + word + "' is no seed; write a whole number from 0 to 999999999");
        }
        return Long.valueOf(word);
    }
}
