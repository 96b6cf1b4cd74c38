package leadwright.render.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import leadwright.render.paper.Block;
import leadwright.render.paper.Words;

/** Blocks of a document as lines for a terminal. */
final class PaperText implements Block.Cases<List<String>> {

    /** Signs in a line. */
    private static final int WIDTH = 100;

    private PaperText() {}

    /** The lines, with an empty one between blocks; no line is longer than a terminal but where a word is. */
    static List<String> of(List<Block> blocks) {
        List<String> lines = new ArrayList<>();
        for (Block block : blocks) {
            if (!lines.isEmpty()) {
                lines.add("");
            }
            block.in(new PaperText()).forEach(line -> lines.add(Terminal.plain(line)));
        }
        return lines;
    }

    @Override
    public List<String> heading(Block.Heading heading) {
        return List.of(heading.level() == 1 ? heading.text().toUpperCase(Locale.ROOT) : heading.text());
    }

    @Override
    public List<String> paragraph(Block.Paragraph paragraph) {
        return wrapped(paragraph.words().text(), WIDTH);
    }

    @Override
    public List<String> notice(Block.Notice notice) {
        return wrapped(notice.words().text(), WIDTH);
    }

    @Override
    public List<String> items(Block.Items items) {
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < items.items().size(); i++) {
            String sign = items.numbered() ? (i + 1) + ". " : "- ";
            List<String> wrapped = wrapped(items.items().get(i).text(), WIDTH - sign.length());
            for (int j = 0; j < wrapped.size(); j++) {
                lines.add((j == 0 ? sign : " ".repeat(sign.length())) + wrapped.get(j));
            }
        }
        return lines;
    }

    @Override
    public List<String> grid(Block.Grid grid) {
        List<Integer> widths = widths(grid);
        List<String> lines = new ArrayList<>(row(grid.head(), widths));
        lines.add("-".repeat(widths.stream().mapToInt(Integer::intValue).sum() + 2 * (widths.size() - 1)));
        for (List<Words> row : grid.rows()) {
            lines.addAll(row(row.stream().map(Words::text).toList(), widths));
        }
        return lines;
    }

    /** Each column as wide as its words, up to its share of the line. */
    private static List<Integer> widths(Block.Grid grid) {
        int columns = grid.head().size();
        int room = WIDTH - 2 * (columns - 1);
        return IntStream.range(0, columns)
                .mapToObj(i -> {
                    int longest = grid.rows().stream()
                            .mapToInt(row -> row.get(i).text().length())
                            .max()
                            .orElse(0);
                    int share = Math.max(3, room * grid.widths().get(i) / 100);
                    return Math.min(Math.max(longest, grid.head().get(i).length()), share);
                })
                .toList();
    }

    private static List<String> row(List<String> cells, List<Integer> widths) {
        List<List<String>> wrapped = IntStream.range(0, cells.size())
                .mapToObj(i -> wrapped(cells.get(i), widths.get(i)))
                .toList();
        int height = wrapped.stream().mapToInt(List::size).max().orElse(0);
        List<String> lines = new ArrayList<>();
        for (int y = 0; y < height; y++) {
            StringBuilder line = new StringBuilder();
            for (int i = 0; i < cells.size(); i++) {
                String part = y < wrapped.get(i).size() ? wrapped.get(i).get(y) : "";
                line.append(part).append(" ".repeat(Math.max(0, widths.get(i) - part.length()) + 2));
            }
            lines.add(line.toString().stripTrailing());
        }
        return lines;
    }

    /** At blanks; a word that is longer than the width is cut. */
    private static List<String> wrapped(String text, int width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.replace('\n', ' ').split(" +")) {
            String rest = word;
            if (!line.isEmpty() && line.length() + 1 + rest.length() > width) {
                lines.add(line.toString());
                line.setLength(0);
            }
            while (rest.length() > width) {
                lines.add(rest.substring(0, width));
                rest = rest.substring(width);
            }
            line.append(line.isEmpty() ? "" : " ").append(rest);
        }
        lines.add(line.toString());
        return lines;
    }

    @Override
    public List<String> picture(Block.Picture picture) {
        return List.of("[" + picture.alt() + "]");
    }

    @Override
    public List<String> figure(Block.Figure figure) {
        return List.of("[" + figure.alt() + "]");
    }
}
