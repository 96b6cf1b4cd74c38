package leadwright.render.cli;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** A temperature in degrees Celsius, with or without its unit. */
final class TemperatureWord implements ITypeConverter<Double> {
    @Override
    public Double convert(String word) {
        return DecimalWord.of(word, "degC|C")
                .orElseThrow(() -> new TypeConversionException(
                        "'" + word + "' is no temperature; write degrees Celsius, as 23 or 23C"));
    }
}
