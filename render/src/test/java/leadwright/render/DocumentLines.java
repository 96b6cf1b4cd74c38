package leadwright.render;

import java.util.ArrayList;
import java.util.List;
import leadwright.render.paper.Block;
import leadwright.render.paper.Document;
import leadwright.render.paper.Words;

/** A document as lines of plain text: what it says, apart from any look. */
public final class DocumentLines implements Block.Cases<List<String>> {

    private DocumentLines() {}

    public static List<String> of(Document document) {
        List<String> lines = new ArrayList<>(List.of(document.title(), document.kind()));
        document.blocks().forEach(block -> lines.addAll(block.in(new DocumentLines())));
        return lines;
    }

    @Override
    public List<String> heading(Block.Heading heading) {
        return List.of(heading.whole());
    }

    @Override
    public List<String> paragraph(Block.Paragraph paragraph) {
        return List.of(paragraph.words().text());
    }

    @Override
    public List<String> notice(Block.Notice notice) {
        return List.of(notice.words().text());
    }

    @Override
    public List<String> items(Block.Items items) {
        return items.items().stream().map(Words::text).toList();
    }

    @Override
    public List<String> grid(Block.Grid grid) {
        List<String> lines = new ArrayList<>(List.of(String.join(" | ", grid.head())));
        grid.rows()
                .forEach(row -> lines.add(
                        String.join(" | ", row.stream().map(Words::text).toList())));
        return lines;
    }

    @Override
    public List<String> picture(Block.Picture picture) {
        return List.of("[" + picture.alt() + "]");
    }

    @Override
    public List<String> figure(Block.Figure figure) {
        return List.of("[" + figure.alt() + "]", figure.caption().text());
    }
}
