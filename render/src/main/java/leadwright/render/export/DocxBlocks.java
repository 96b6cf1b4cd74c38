package leadwright.render.export;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigInteger;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import leadwright.render.paper.Block;
import leadwright.render.paper.Document;
import leadwright.render.paper.Letters;
import leadwright.render.paper.Words;
import org.apache.poi.openxml4j.exceptions.InvalidFormatException;
import org.apache.poi.xwpf.usermodel.ParagraphAlignment;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.apache.poi.xwpf.usermodel.XWPFParagraph;
import org.apache.poi.xwpf.usermodel.XWPFRun;
import org.apache.poi.xwpf.usermodel.XWPFTable;
import org.apache.poi.xwpf.usermodel.XWPFTableCell;
import org.apache.poi.xwpf.usermodel.XWPFTableRow;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTTblGrid;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTTblLayoutType;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTTblPr;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.STTblLayoutType;

/** Writes the blocks of a document into a word-processor file, each as what it is. */
final class DocxBlocks implements Block.Cases<Void> {

    private static final Pattern VIEW_BOX =
            Pattern.compile("viewBox=[\"']\\s*\\S+\\s+\\S+\\s+([0-9.]+)\\s+([0-9.]+)\\s*[\"']");

    /** Dots per inch of a drawing: its smallest text reads well in print. */
    private static final int PICTURE_DPI = 150;

    /** English metric units in a millimetre, the measure of pictures. */
    private static final int EMU_PER_MM = 36_000;

    /** Twentieths of a point in a row that is written in by hand: 10 mm. */
    private static final int TALL = 567;

    private final XWPFDocument file;
    private final Document document;
    private final DocxPages pages;
    private final BigInteger bullets;
    private int pictures;

    DocxBlocks(XWPFDocument file, Document document) {
        this.file = file;
        this.document = document;
        this.pages = new DocxPages(file, document);
        this.bullets = file.getNumbering().addNum(BigInteger.ZERO);
    }

    void title() {
        paragraph("Title", Words.of(document.title()));
        paragraph("Subtitle", Words.of(document.kind()));
    }

    void close() {
        pages.close();
    }

    private XWPFParagraph paragraph(String style, Words words) {
        pages.upright();
        XWPFParagraph paragraph = file.createParagraph();
        paragraph.setStyle(style);
        write(paragraph, words);
        return paragraph;
    }

    static void write(XWPFParagraph paragraph, Words words) {
        for (Words.Span span : words.spans()) {
            XWPFRun run = paragraph.createRun();
            // A run that says it is not bold would not be bold in a heading either.
            if (span.bold()) {
                run.setBold(true);
            }
            // Text from right to left is kept apart, so that it never changes the order of what stands beside it.
            run.setText(Letters.turns(span.text()) ? "\u2068" + span.text() + "\u2069" : span.text());
        }
    }

    @Override
    public Void heading(Block.Heading heading) {
        paragraph("Heading" + heading.level(), Words.of(heading.whole()));
        return null;
    }

    @Override
    public Void paragraph(Block.Paragraph paragraph) {
        paragraph("Normal", paragraph.words());
        return null;
    }

    @Override
    public Void notice(Block.Notice notice) {
        paragraph("Notice", notice.words());
        return null;
    }

    @Override
    public Void items(Block.Items items) {
        BigInteger list = items.numbered() ? numbered() : bullets;
        for (Words each : items.items()) {
            XWPFParagraph item = paragraph("ListParagraph", each);
            item.setNumID(list);
            item.setNumILvl(BigInteger.ZERO);
        }
        return null;
    }

    /** A list that begins at 1, whatever lists came before. */
    private BigInteger numbered() {
        BigInteger list = file.getNumbering().addNum(BigInteger.ONE);
        var level = file.getNumbering().getNum(list).getCTNum().addNewLvlOverride();
        level.setIlvl(BigInteger.ZERO);
        level.addNewStartOverride().setVal(BigInteger.ONE);
        return list;
    }

    @Override
    public Void grid(Block.Grid grid) {
        pages.upright();
        int columns = grid.head().size();
        XWPFTable table = file.createTable(1 + grid.rows().size(), columns);
        table.setStyleID(grid.tall() ? "Boxed" : "Ruled");
        CTTblPr look = table.getCTTbl().getTblPr();
        look.unsetTblBorders();
        table.setWidth(pages.textWidth());
        CTTblLayoutType layout = look.isSetTblLayout() ? look.getTblLayout() : look.addNewTblLayout();
        layout.setType(STTblLayoutType.FIXED);
        CTTblGrid widths = table.getCTTbl().getTblGrid() == null
                ? table.getCTTbl().addNewTblGrid()
                : table.getCTTbl().getTblGrid();
        while (widths.sizeOfGridColArray() > 0) {
            widths.removeGridCol(0);
        }
        grid.widths().forEach(width -> widths.addNewGridCol().setW(BigInteger.valueOf(twips(width))));
        XWPFTableRow head = table.getRow(0);
        head.setRepeatHeader(true);
        fill(head, grid.head().stream().map(Words::of).toList(), grid.widths(), "CellHead");
        for (int i = 0; i < grid.rows().size(); i++) {
            XWPFTableRow row = table.getRow(i + 1);
            fill(row, grid.rows().get(i), grid.widths(), "Cell");
            if (grid.tall()) {
                row.setHeight(TALL);
            }
        }
        // Two tables without anything between them would be one.
        paragraph("Cell", Words.NONE);
        return null;
    }

    private int twips(int hundredths) {
        return pages.textWidth() * hundredths / 100;
    }

    private void fill(XWPFTableRow row, List<Words> cells, List<Integer> widths, String style) {
        row.setCantSplitRow(true);
        for (int i = 0; i < cells.size(); i++) {
            XWPFTableCell cell = row.getCell(i);
            cell.setWidth(String.valueOf(twips(widths.get(i))));
            XWPFParagraph paragraph = cell.getParagraphs().get(0);
            paragraph.setStyle(style);
            write(paragraph, cells.get(i));
        }
    }

    @Override
    public Void picture(Block.Picture picture) {
        pages.lying();
        double[] size = size(picture.svg());
        double scale = Math.min(pages.pictureWidth() / size[0], pages.pictureHeight() / size[1]);
        drawn(picture.svg(), picture.alt(), size[0] * scale, size[1] * scale);
        return null;
    }

    @Override
    public Void figure(Block.Figure figure) {
        pages.upright();
        double[] size = size(figure.svg());
        double scale = Math.min(1, pages.figureWidth() / size[0]);
        drawn(figure.svg(), figure.alt(), size[0] * scale, size[1] * scale);
        paragraph("Caption", figure.caption());
        return null;
    }

    private void drawn(String svg, String alt, double widthMm, double heightMm) {
        pictures++;
        byte[] png = PngExport.png(svg, PICTURE_DPI);
        XWPFParagraph paragraph = file.createParagraph();
        paragraph.setAlignment(ParagraphAlignment.CENTER);
        XWPFRun run = paragraph.createRun();
        try {
            run.addPicture(
                    new ByteArrayInputStream(png),
                    org.apache.poi.common.usermodel.PictureType.PNG,
                    "drawing-" + pictures + ".png",
                    (int) (widthMm * EMU_PER_MM),
                    (int) (heightMm * EMU_PER_MM));
        } catch (InvalidFormatException | IOException e) {
            throw new ExportException("A drawing could not be put into the word-processor file", e);
        }
        var shown = run.getCTR().getDrawingArray(0).getInlineArray(0).getDocPr();
        shown.setName("Drawing " + pictures);
        shown.setDescr(alt);
    }

    private static double[] size(String svg) {
        Matcher box = VIEW_BOX.matcher(svg);
        if (!box.find()) {
            throw new ExportException("A drawing has no size (viewBox)");
        }
        return new double[] {Double.parseDouble(box.group(1)), Double.parseDouble(box.group(2))};
    }
}
