package leadwright.render.paper;

import java.util.List;

/**
 * A document before it has a look.
 *
 * @param title what it is of
 * @param kind what it is, under the title
 * @param about in a sentence, for lists of files and for those who hear it read
 * @param letter whether the pages are US Letter; else A4
 * @param head what every page after the first says at its top
 * @param foot the line of cautions at the foot of every page
 * @param mark what stands across every page, large, and at its top; empty for nothing
 */
public record Document(
        String title,
        String kind,
        String about,
        boolean letter,
        String head,
        String foot,
        String mark,
        List<Block> blocks) {
    public Document {
        title = Letters.legal(title);
        kind = Letters.legal(kind);
        about = Letters.legal(about);
        head = Letters.legal(head);
        foot = Letters.legal(foot);
        blocks = List.copyOf(blocks);
    }
}
