package leadwright.render.cli;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** A voltage in volts, with or without its unit. */
final class VoltsWord implements ITypeConverter<Double> {
    @Override
    public Double convert(String word) {
        return DecimalWord.of(word, "V")
                .orElseThrow(
                        () -> new TypeConversionException("'" + word + "' is no voltage; write volts, as 231 or 231V"));
    }
}
