package leadwright.render.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What the PDF shows is compared with what Batik makes of the same drawing. The two share no painting: the PDF is
 * rasterised by PDFBox. Edges may differ by their smoothing, so a pixel counts as different only when no pixel next
 * to it in the other picture comes near its value. (PDFBox cuts the start of a dash pattern to whole points, hence the
 * odd offset below, six points.)
 */
class SvgPainterTest {

    private static final int DPI = 150;
    private static final int WIDTH = 80;
    private static final int HEIGHT = 50;

    /** The most that the smoothing of edges was seen to make is 0.0006; a hairline of 10 mm left out makes 0.0015. */
    private static final double TOLERATED = 0.001;

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<rect x='5' y='5' width='30' height='20' fill='#00614a'/>",
                "<rect x='5' y='5' width='30' height='20' rx='4' fill='none' stroke='#8a3b00' stroke-width='2'/>",
                "<rect x='5' y='5' width='30' height='20' rx='4' ry='9' fill='#abc'/>",
                "<circle cx='20' cy='20' r='9' fill='rgb(11,79,158)'/><ellipse cx='50' cy='20' rx='9' ry='5' fill='teal'/>",
                "<line x1='3' y1='3' x2='70' y2='44' stroke='black' stroke-width='1' stroke-dasharray='5 1.2 0.8 1.2'/>",
                "<line x1='3' y1='9' x2='70' y2='9' stroke='black' stroke-width='2' stroke-dasharray='4' stroke-dashoffset='2.117'/>",
                "<line x1='3' y1='9' x2='70' y2='9' stroke='black' stroke-width='2' stroke-dasharray='4,2,1'/>",
                "<polyline points='5,5 30,30 55,5 70,40' fill='none' stroke='navy' stroke-width='3' stroke-linejoin='round' stroke-linecap='round'/>",
                "<polyline points='5,5 30,30 55,5 70,40' fill='none' stroke='navy' stroke-width='3' stroke-linejoin='bevel' stroke-linecap='square'/>",
                "<polyline points='5,30 30,28 5,26' fill='none' stroke='navy' stroke-width='3' stroke-miterlimit='40'/>",
                "<polygon points='5,5 30,45 55,5' fill='maroon' stroke='black'/>",
                "<path d='M5 5 h20 v10 l5 5 H60 V40 z' fill='olive'/>",
                "<path d='M5 25 C 20 0 40 50 60 25 S 75 10 78 25' fill='none' stroke='black' stroke-width='1'/>",
                "<path d='M5 25 Q 20 0 40 25 T 75 25' fill='none' stroke='black' stroke-width='1'/>",
                "<path d='M10 25 a 12 8 30 1 0 20 -5 A 5 5 0 0 1 50 25' fill='none' stroke='black' stroke-width='1'/>",
                "<path d='M10 5 h40 v40 h-40 z M20 15 h20 v20 h-20 z' fill-rule='evenodd' fill='black'/>",
                "<path d='M10 5 h40 v40 h-40 z M20 15 h20 v20 h-20 z' fill='black'/>",
                "<g fill='red' stroke='blue' stroke-width='2'><rect x='5' y='5' width='20' height='20'/><rect x='35' y='5' width='20' height='20' stroke='none'/></g>",
                "<g transform='translate(20 5) rotate(30)'><rect width='30' height='10' fill='green' stroke='black'/></g>",
                "<g transform='scale(2)'><g transform='translate(5,3)'><line x2='20' y2='9' stroke='black' stroke-dasharray='2 1'/></g></g>",
                "<rect x='5' y='5' width='30' height='30' fill='red' fill-opacity='0.4'/><line x1='1' y1='9' x2='70' y2='9' stroke='blue' stroke-width='4' stroke-opacity='0.5'/><rect x='50' y='20' width='9' height='9' fill='blue'/>",
                "<defs><g id='end'><circle r='3' fill='black'/><line x2='9' stroke='black'/></g></defs><use xlink:href='#end' x='10' y='10'/><use xlink:href='#end' x='30' y='30'/>",
                "<rect width='20' height='20' display='none'/><rect x='30' width='20' height='20' style='visibility:hidden'/><rect x='55' width='20' height='20'/>",
                "<text x='5' y='15' font-size='6'>jack 3: 4.7 kΩ → earth</text>",
                "<text x='40' y='15' font-size='6' text-anchor='middle'>middle</text><text x='75' y='30' font-size='6' text-anchor='end' font-weight='bold'>the end</text>",
                "<text x='5' y='15' font-size='5'>take <tspan font-weight='bold'>off</tspan> 3, <tspan fill='#0b4f9e'>4</tspan><tspan x='5' dy='8'>next line</tspan></text>",
                "<text x='40' y='15' font-size='5' text-anchor='middle'>plain <tspan font-weight='bold' font-size='8'>big</tspan> plain</text>",
                "<text x='5' y='15' font-size='5'>  two\n    lines   and\tblanks  </text>",
                "<g transform='translate(10 40) rotate(-20)'><text font-size='6'>leaning text</text></g>",
                "<style>.a rect { fill: red } rect { fill: blue } #one { fill: green } .a.b rect { stroke: black }</style><g class='a b'><rect width='9' height='9'/><rect id='one' x='20' width='9' height='9'/></g><rect x='40' width='9' height='9' fill='yellow'/>",
                "<style>/* ink */ .ink, .pen { stroke: #1a1a1a; stroke-width: 0.7; fill: none }</style><path class='ink' d='M5 5 H70'/><path class='pen' style='stroke-width:3' d='M5 15 H70'/>",
                "<g color='purple'><rect width='20' height='9' fill='currentColor'/></g>",
            })
    void looks_as_batik_paints_it(String inside) throws Exception {
        assertThat(difference(inside, inside)).isLessThan(TOLERATED);
    }

    @Test
    void the_probe_looks_as_batik_paints_it() throws Exception {
        String inside = ProbePage.drawing(0).replaceFirst("(?s)<svg[^>]*>", "").replace("</svg>", "");
        BufferedImage pdf = pdf(249, 185, inside);
        BufferedImage png = png(249, 185, inside);
        assertThat(difference(pdf, png)).isLessThan(TOLERATED);
    }

    /** The comparison itself must notice what matters: place, width, dash, colour, weight, a wrong word. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "<line x1='5' y1='9' x2='70' y2='9' stroke='#00614a' stroke-width='1' stroke-dasharray='5 2'/>",
                "<line x1='5' y1='10' x2='70' y2='10' stroke='black' stroke-width='1' stroke-dasharray='5 2'/>",
                "<line x1='5' y1='9' x2='70' y2='9' stroke='black' stroke-width='1'/>",
                "<line x1='5' y1='9' x2='70' y2='9' stroke='black' stroke-width='2' stroke-dasharray='5 2'/>",
                "<line x1='5' y1='9' x2='60' y2='9' stroke='black' stroke-width='1' stroke-dasharray='5 2'/>",
            })
    void notices_a_difference(String other) throws Exception {
        String line = "<line x1='5' y1='9' x2='70' y2='9' stroke='black' stroke-width='1' stroke-dasharray='5 2'/>";
        assertThat(difference(line, other)).isGreaterThan(TOLERATED);
        String text = "<text x='5' y='15' font-size='6'>jack 3</text>";
        assertThat(difference(text, text.replace("3", "5"))).isGreaterThan(TOLERATED / 2);
        assertThat(difference(text, text.replace("'6'", "'6' font-weight='bold'")))
                .isGreaterThan(TOLERATED);
    }

    private static double difference(String insidePdf, String insidePng) throws Exception {
        return difference(pdf(WIDTH, HEIGHT, insidePdf), png(WIDTH, HEIGHT, insidePng));
    }

    private static BufferedImage pdf(int width, int height, String inside) throws Exception {
        try (PDDocument document =
                Loader.loadPDF(PdfExport.pdf(Figures.page(width, height, inside), Optional.empty()))) {
            assertThat(document.getNumberOfPages()).isEqualTo(1);
            return new PDFRenderer(document).renderImageWithDPI(0, DPI);
        }
    }

    private static BufferedImage png(int width, int height, String inside) throws Exception {
        return ImageIO.read(new ByteArrayInputStream(PngExport.png(Figures.file(width, height, inside), DPI)));
    }

    /** The share of pixels of either picture that have no like in the other within one pixel. */
    private static double difference(BufferedImage a, BufferedImage b) {
        assertThat(Math.abs(a.getWidth() - b.getWidth())).isLessThan(3);
        assertThat(Math.abs(a.getHeight() - b.getHeight())).isLessThan(3);
        int width = Math.min(a.getWidth(), b.getWidth());
        int height = Math.min(a.getHeight(), b.getHeight());
        int odd = 0;
        for (int y = 1; y < height - 1; y++) {
            for (int x = 1; x < width - 1; x++) {
                odd += hasLike(a.getRGB(x, y), b, x, y) && hasLike(b.getRGB(x, y), a, x, y) ? 0 : 1;
            }
        }
        return (double) odd / (width * height);
    }

    private static boolean hasLike(int rgb, BufferedImage other, int x, int y) {
        for (int dy = -1; dy <= 1; dy++) {
            for (int dx = -1; dx <= 1; dx++) {
                if (near(rgb, other.getRGB(x + dx, y + dy))) {
                    return true;
                }
            }
        }
        return false;
    }

    private static boolean near(int a, int b) {
        for (int shift = 0; shift <= 16; shift += 8) {
            if (Math.abs((a >> shift & 255) - (b >> shift & 255)) > 60) {
                return false;
            }
        }
        return true;
    }
}
