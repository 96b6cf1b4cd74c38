package leadwright.render.cli;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** What a plan can be written as. */
enum DocumentFormat {
    /** Each drawing. */
    SVG,
    /** Each drawing as a picture. */
    PNG,
    /** Each edition with its drawings, one file for the screen. */
    HTML,
    /** Each edition with its drawings, for paper. */
    PDF,
    /** The standing edition for a word processor. */
    DOCX,
    /** The plan itself, plan/1. */
    JSON,
    /** The readings table. */
    CSV,
    /** The circuit of each reading, for a circuit simulator; only where it is named. */
    CIR;

    /** Reads a format by its word, in large or small letters. */
    static final class Word implements ITypeConverter<DocumentFormat> {
        @Override
        public DocumentFormat convert(String word) {
            return Arrays.stream(values())
                    .filter(each -> each.toString().equalsIgnoreCase(word))
                    .findFirst()
                    .orElseThrow(() -> new TypeConversionException("there is no format '" + word + "'; there are: "
                            + Arrays.stream(values())
                                    .map(DocumentFormat::toString)
                                    .collect(Collectors.joining(", "))));
        }
    }

    /** As written on the command line. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
