package leadwright.render.sheet;

import java.util.List;
import leadwright.catalog.house.Paper;
import leadwright.render.paper.Block;
import leadwright.render.paper.Document;
import leadwright.render.paper.Letters;
import leadwright.render.paper.Words;

/**
 * A document as one well-formed page source for screen, browser print and PDF. It refers to nothing outside itself.
 */
public final class DocumentPage {

    private final Document document;
    private final Xhtml page = new Xhtml();

    private DocumentPage(Document document) {
        this.document = document;
    }

    /** The page source, the same for the same document. */
    public static String xhtml(Document document) {
        return new DocumentPage(document).write();
    }

    private String write() {
        page.docType();
        page.with(
                "html",
                "",
                new String[] {"xmlns", "http://www.w3.org/1999/xhtml", "lang", "en-GB", "xml:lang", "en-GB"},
                () -> {
                    head();
                    page.in("body", "ed-body", this::body);
                });
        return page.finish();
    }

    private void head() {
        String title = document.kind() + ": " + document.title();
        page.in("head", "", () -> {
            page.empty("meta", "charset", "UTF-8");
            page.leaf("title", "", title);
            page.empty("meta", "name", "description", "content", document.about());
            page.empty("meta", "name", "subject", "content", title);
            page.empty("meta", "name", "viewport", "content", "width=device-width");
            Paper paper = document.letter() ? Paper.LETTER : Paper.A4;
            page.leaf(
                    "style", "", PageStyle.of("edition.css", paper, document.head(), document.foot(), document.mark()));
        });
    }

    private void body() {
        if (!document.mark().isEmpty()) {
            page.leaf("div", "ed-mark", document.mark());
        }
        page.leaf("h1", "ed-title", document.title());
        page.leaf("p", "ed-kind", document.kind());
        Blocks blocks = new Blocks();
        for (int i = 0; i < document.blocks().size(); i++) {
            blocks.leads = leads(i);
            document.blocks().get(i).in(blocks);
            page.line();
        }
    }

    /** What a heading leads to: a table must begin on its page, and its first row may be tall. */
    private String leads(int at) {
        int next = at + 1;
        while (next < document.blocks().size() && document.blocks().get(next) instanceof Block.Heading) {
            next++;
        }
        boolean table = next < document.blocks().size() && document.blocks().get(next) instanceof Block.Grid;
        return table ? "ed-head ed-over" : "ed-head";
    }

    /** One element a block. */
    private final class Blocks implements Block.Cases<Xhtml> {

        private String leads = "";

        @Override
        public Xhtml heading(Block.Heading heading) {
            return page.leaf("h" + (heading.level() + 1), leads, heading.whole());
        }

        @Override
        public Xhtml paragraph(Block.Paragraph paragraph) {
            return page.in("p", "ed-say", () -> words(paragraph.words()));
        }

        @Override
        public Xhtml notice(Block.Notice notice) {
            return page.in("p", "ed-notice", () -> words(notice.words()));
        }

        @Override
        public Xhtml items(Block.Items items) {
            return page.in(items.numbered() ? "ol" : "ul", "ed-items", () -> {
                for (Words each : items.items()) {
                    page.in("li", "", () -> words(each));
                }
            });
        }

        @Override
        public Xhtml grid(Block.Grid grid) {
            return page.in("table", grid.tall() ? "ed-grid ed-tall" : "ed-grid", () -> {
                page.in(
                        "thead",
                        "",
                        () -> page.in("tr", "", () -> {
                            for (int i = 0; i < grid.head().size(); i++) {
                                String width = "width: " + grid.widths().get(i) + "%";
                                String text = grid.head().get(i);
                                page.with("th", "", new String[] {"style", width}, () -> page.text(text));
                            }
                        }));
                page.in("tbody", "", () -> {
                    for (List<Words> row : grid.rows()) {
                        page.in("tr", "", () -> row.forEach(cell -> page.in("td", "", () -> words(cell))));
                    }
                });
            });
        }

        @Override
        public Xhtml picture(Block.Picture picture) {
            return page.in("div", "ed-picture", () -> {
                if (!document.mark().isEmpty()) {
                    page.leaf("p", "ed-across", document.mark());
                }
                page.markup(inline(picture.svg()));
            });
        }

        @Override
        public Xhtml figure(Block.Figure figure) {
            return page.in("div", "ed-figure", () -> {
                page.markup(inline(figure.svg()));
                page.in("p", "ed-caption", () -> words(figure.caption()));
            });
        }
    }

    /** Text that runs from right to left is kept apart, so that it never changes the order of what stands beside it. */
    private void words(Words words) {
        for (Words.Span span : words.spans()) {
            if (Letters.turns(span.text())) {
                page.in("bdi", "", () -> span(span));
            } else {
                span(span);
            }
        }
    }

    private void span(Words.Span span) {
        if (span.bold()) {
            page.bold(span.text());
        } else {
            page.unparted(span.text());
        }
    }

    /** A drawing without its XML declaration, which may not stand in the middle of a page. */
    static String inline(String svg) {
        String drawing = svg.stripLeading();
        return drawing.startsWith("<?xml")
                ? drawing.substring(drawing.indexOf("?>") + 2).stripLeading()
                : drawing;
    }
}
