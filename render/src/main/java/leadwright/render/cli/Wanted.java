package leadwright.render.cli;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import leadwright.planner.compare.Comparison;
import leadwright.render.diagram.Drawing;

/**
 * Which papers of a plan are asked for.
 *
 * @param since what changed from the plan before, for the standing edition
 */
record Wanted(Set<DocumentFormat> formats, Set<EditionWord> editions, Optional<Comparison> since) {

    /**
     * Editions and formats as a person named them; an empty set of formats means all that the editions have.
     *
     * @throws BadInput when something was named that would not be written
     */
    static Wanted named(Set<DocumentFormat> formats, Set<EditionWord> editions) {
        boolean standing = editions.contains(EditionWord.STANDING);
        if (formats.contains(DocumentFormat.DOCX) && !standing) {
            throw new BadInput("docx is a format of the standing edition alone; add --edition standing");
        }
        Set<DocumentFormat> all = EnumSet.allOf(DocumentFormat.class);
        all.remove(DocumentFormat.CIR);
        if (!standing) {
            all.remove(DocumentFormat.DOCX);
        }
        Set<DocumentFormat> taken = formats.isEmpty() ? all : formats;
        // The bench edition is there without being asked for, so that a run may well want drawings or data alone.
        List<String> idle = editions.stream()
                .filter(edition -> edition != EditionWord.BENCH)
                .filter(edition -> taken.stream().noneMatch(edition::hasFormat))
                .map(EditionWord::toString)
                .toList();
        if (!idle.isEmpty()) {
            throw new BadInput("none of the formats named is one of the edition " + String.join(", ", idle)
                    + "; name html or pdf" + (standing ? ", or docx for the standing edition" : ""));
        }
        return new Wanted(taken, editions, Optional.empty());
    }

    Wanted since(Comparison comparison) {
        return new Wanted(formats, editions, Optional.of(comparison));
    }

    boolean has(EditionWord edition, DocumentFormat format) {
        return editions.contains(edition) && formats.contains(format) && edition.hasFormat(format);
    }

    boolean has(EditionWord edition) {
        return formats.stream().anyMatch(format -> has(edition, format));
    }

    boolean has(DocumentFormat format) {
        return formats.contains(format);
    }

    /** Whether something is written that shows a {@link Drawing}. */
    boolean drawings() {
        return has(DocumentFormat.SVG)
                || has(DocumentFormat.PNG)
                || editions.stream().anyMatch(this::has);
    }
}
