package leadwright.render.edition;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import leadwright.render.paper.Block;
import leadwright.render.paper.Words;
import leadwright.render.sheet.Vocabulary;

/** The words of the trade that occur in a document, and no others. */
final class Glossary {

    /** @param found how the word shows in a text, in small letters */
    private record Term(String word, String found, String means) {}

    private static final List<Term> TERMS = List.of(
            new Term(
                    "applied part",
                    "applied parts?",
                    "part of a device that touches the patient, or is joined to one, in use"),
            new Term(
                    "background",
                    "background",
                    "what the tester shows before its source is put on a part; where the plan warns of the leads' capacitance,"
                            + " with the source on and the device's end of the leads free"),
            new Term("bundle", "bundles?", "connections that are joined by the wiring and so are read as one"),
            new Term(
                    "contact aid",
                    "contact aids?",
                    "foil or the like that makes contact with skin surfaces and plastic"),
            new Term("earth open", "earth open", "the single fault in which the protective conductor is broken"),
            new Term(
                    "earth leakage",
                    "earth leakage",
                    "current that flows from the mains part to earth by the earth conductor"),
            new Term(
                    "fan-out",
                    "fan-outs?",
                    "item with one trunk and several branches, which joins what is plugged to them"),
            new Term(
                    "functional earth",
                    "functional earth",
                    "conductor to earth that serves a function, such as screening, and protects nobody"),
            new Term("hookup", "hookups?", "one arrangement of wires and leads that stays while readings are taken"),
            new Term("jack", "jacks?", "numbered socket of the tester for what is measured"),
            new Term(
                    "leakage",
                    "leakage",
                    "current that flows where no current is meant to: through insulation, filters and stray capacitance"),
            new Term(
                    "mains part",
                    "mains part",
                    "everything in the device that is joined to the conductors of the supply"),
            new Term(
                    "measuring network",
                    "measuring network",
                    "resistors and a capacitor in the tester that stand for a person's body"),
            new Term(
                    "null",
                    "null(ed|ing)?",
                    "to take the resistance of the leads off, by a reading of the leads alone"),
            new Term(
                    "proof step",
                    "proof steps?",
                    "step that shows that a reading would have seen a fault, had there been one"),
            new Term(
                    "protective earth",
                    "protective earth|earth conductor",
                    "conductor that joins the metal of the device to earth for safety"),
            new Term("provisional", "provisional", "resting on a limit that the house has not yet confirmed"),
            new Term("single fault", "single fault", "one safeguard broken, all others sound"),
            new Term(
                    "supply open",
                    "supply open",
                    "the single fault in which one supply conductor is broken; the other one is still live"),
            new Term(
                    "type B, BF, CF",
                    "type (cf|bf|b)\\b|(cf|bf|b): ",
                    "kinds of applied part: B may be joined to earth; BF and CF are kept apart from it; CF may be joined to the"
                            + " heart, and has the tightest limits"),
            new Term(
                    "touch current",
                    "touch current",
                    "current that flows through a person who touches the device and earth, or two of its parts"));

    private Glossary() {}

    static List<List<Words>> of(List<Block> blocks, Vocabulary words) {
        String text = text(blocks).toLowerCase(Locale.ROOT);
        List<List<Words>> rows = new ArrayList<>();
        for (Term term : TERMS) {
            if (Pattern.compile("\\b(" + words.say(term.found()) + ")")
                    .matcher(text)
                    .find()) {
                rows.add(List.of(Words.strong(words.say(term.word())), Words.of(words.say(term.means()))));
            }
        }
        rows.add(List.of(
                Words.strong("earth, ground"),
                Words.of("two words for the same thing; which of them is used is the department's choice")));
        return rows;
    }

    /** All that a document says, drawings apart. */
    static String text(List<Block> blocks) {
        StringBuilder text = new StringBuilder();
        blocks.forEach(block -> text.append(block.in(TEXT)).append('\n'));
        return text.toString();
    }

    private static final Block.Cases<String> TEXT = new Block.Cases<>() {
        @Override
        public String heading(Block.Heading heading) {
            return heading.text();
        }

        @Override
        public String paragraph(Block.Paragraph paragraph) {
            return paragraph.words().text();
        }

        @Override
        public String notice(Block.Notice notice) {
            return notice.words().text();
        }

        @Override
        public String items(Block.Items items) {
            return String.join("\n", items.items().stream().map(Words::text).toList());
        }

        @Override
        public String grid(Block.Grid grid) {
            StringBuilder text = new StringBuilder(String.join("\n", grid.head())).append('\n');
            grid.rows()
                    .forEach(row -> row.forEach(cell -> text.append(cell.text()).append('\n')));
            return text.toString();
        }

        @Override
        public String picture(Block.Picture picture) {
            return picture.alt();
        }

        @Override
        public String figure(Block.Figure figure) {
            return figure.alt();
        }
    };
}
