package leadwright.render.cli;

import java.time.DateTimeException;
import java.time.LocalDate;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a day as {@code 2027-01-10}. */
final class DateWord implements ITypeConverter<LocalDate> {
    @Override
    public LocalDate convert(String word) {
        try {
            return LocalDate.parse(word);
        } catch (DateTimeException e) {
            throw new TypeConversionException(
                    "'" + word + "' is no day of the calendar; write year-month-day, as 2027-01-10");
        }
    }
}
