package leadwright.render.cli;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Whom the papers of a plan are for. */
enum EditionWord {
    /** The form for the bench. */
    BENCH("bench-sheet"),
    /** For those who learn it. */
    TRAINING("training"),
    /** The department's procedure. */
    STANDING("standing");

    private final String file;

    EditionWord(String file) {
        this.file = file;
    }

    /** Name of its files, without what they end in. */
    String file() {
        return file;
    }

    /** Whether an edition can be written as this. */
    boolean hasFormat(DocumentFormat format) {
        return format == DocumentFormat.HTML
                || format == DocumentFormat.PDF
                || format == DocumentFormat.DOCX && this == STANDING;
    }

    /** Reads an edition by its word, in large or small letters. */
    static final class Word implements ITypeConverter<EditionWord> {
        @Override
        public EditionWord convert(String word) {
            return Arrays.stream(values())
                    .filter(each -> each.toString().equalsIgnoreCase(word))
                    .findFirst()
                    .orElseThrow(() -> new TypeConversionException("there is no edition '" + word + "'; there are: "
                            + Arrays.stream(values()).map(EditionWord::toString).collect(Collectors.joining(", "))));
        }
    }

    /** As written on the command line. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
