package leadwright.render.edition;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import leadwright.render.paper.DocumentBuilder;
import leadwright.render.paper.Words;
import leadwright.render.sheet.Vocabulary;

/** The users' page of cautions, word for word, as parts of a section. */
final class CautionsText {

    private static final Pattern BOLD = Pattern.compile("\\*\\*([^*]+)\\*\\*");
    /** A pointer to another page for users, which nobody has beside a procedure. */
    private static final Pattern LINK = Pattern.compile(", see \\[[^\\]]+\\]\\([^)]+\\)");

    private CautionsText() {}

    static void write(DocumentBuilder page, Vocabulary words) {
        List<Words> items = new ArrayList<>();
        for (String block : blocks()) {
            if (block.startsWith("- ")) {
                items.add(line(block.substring(2), words));
                continue;
            }
            page.items(List.copyOf(items));
            items.clear();
            if (block.startsWith("## ")) {
                page.part(words.say(block.substring(3)));
            } else if (!block.startsWith("# ")) {
                page.say(line(block, words));
            }
        }
        page.items(items);
    }

    /** Headings, paragraphs and items, each on one line. */
    private static List<String> blocks() {
        List<String> blocks = new ArrayList<>();
        boolean goesOn = false;
        for (String line : text().split("\n")) {
            boolean starts = line.startsWith("- ") || line.startsWith("#");
            if (line.isBlank()) {
                goesOn = false;
            } else if (goesOn && !starts) {
                blocks.set(blocks.size() - 1, blocks.get(blocks.size() - 1) + " " + line.strip());
            } else {
                blocks.add(line.strip());
                goesOn = !line.startsWith("#");
            }
        }
        return blocks;
    }

    private static Words line(String text, Vocabulary words) {
        String said = words.say(LINK.matcher(text).replaceAll("").replace("`", ""));
        Words line = Words.NONE;
        Matcher bold = BOLD.matcher(said);
        int from = 0;
        while (bold.find()) {
            line = line.then(said.substring(from, bold.start())).bold(bold.group(1));
            from = bold.end();
        }
        return line.then(said.substring(from));
    }

    private static String text() {
        try (InputStream in = CautionsText.class.getResourceAsStream("cautions.md")) {
            if (in == null) {
                throw new IllegalStateException("The program is incomplete: it lacks cautions.md");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).replace("\r\n", "\n");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
