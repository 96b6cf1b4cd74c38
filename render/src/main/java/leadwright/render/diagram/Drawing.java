package leadwright.render.diagram;

/**
 * One drawn sheet.
 *
 * @param hookup id of the hookup it shows
 * @param sheet which of its sheets, from 1
 * @param ofSheets how many the hookup has
 * @param svg the drawing, a well-formed SVG file
 */
public record Drawing(String hookup, int sheet, int ofSheets, String svg) {}
