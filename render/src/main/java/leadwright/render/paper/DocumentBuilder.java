package leadwright.render.paper;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Puts the blocks of one document together and counts its sections. */
public final class DocumentBuilder {

    private final List<Block> blocks = new ArrayList<>();
    private int section;
    private int part;

    public DocumentBuilder section(String text) {
        section++;
        part = 0;
        blocks.add(new Block.Heading(1, String.valueOf(section), text));
        return this;
    }

    /** A part of the present section. */
    public DocumentBuilder part(String text) {
        part++;
        blocks.add(new Block.Heading(2, section + "." + part, text));
        return this;
    }

    /** A heading within a part, without a number. */
    public DocumentBuilder heading(String text) {
        blocks.add(new Block.Heading(3, "", text));
        return this;
    }

    public DocumentBuilder say(String text) {
        return say(Words.of(text));
    }

    public DocumentBuilder say(Words words) {
        blocks.add(new Block.Paragraph(words));
        return this;
    }

    public DocumentBuilder notice(Words words) {
        blocks.add(new Block.Notice(words));
        return this;
    }

    /** A list; nothing where it has no items. */
    public DocumentBuilder items(List<Words> items) {
        return list(items, false);
    }

    public DocumentBuilder numbered(List<Words> items) {
        return list(items, true);
    }

    private DocumentBuilder list(List<Words> items, boolean numbered) {
        if (!items.isEmpty()) {
            blocks.add(new Block.Items(items, numbered));
        }
        return this;
    }

    /** A table; nothing where it has no rows. */
    public DocumentBuilder grid(List<String> head, List<Integer> widths, List<List<Words>> rows) {
        if (!rows.isEmpty()) {
            blocks.add(new Block.Grid(head, widths, rows, false));
        }
        return this;
    }

    /** A table whose rows are written in by hand. */
    public DocumentBuilder toWriteIn(List<String> head, List<Integer> widths, List<List<Words>> rows) {
        blocks.add(new Block.Grid(head, widths, rows, true));
        return this;
    }

    public DocumentBuilder picture(String svg, String alt) {
        blocks.add(new Block.Picture(svg, alt));
        return this;
    }

    public DocumentBuilder figure(String svg, String alt, Words caption) {
        blocks.add(new Block.Figure(svg, alt, caption));
        return this;
    }

    /** A row of plain cells. */
    public static List<Words> row(String... cells) {
        return Arrays.stream(cells).map(Words::of).toList();
    }

    public List<Block> blocks() {
        return List.copyOf(blocks);
    }
}
