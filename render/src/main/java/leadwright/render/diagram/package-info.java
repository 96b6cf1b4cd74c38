/**
 * One hookup, one drawing: device at the left, tester at the right, wires between.
 *
 * <p>The phases, each a pure function of the ones before:
 *
 * <ol>
 *   <li>{@link leadwright.render.diagram.Panel}: the rows of the device, the same on every sheet of a plan
 *   <li>{@link leadwright.render.diagram.Net} (read by {@link leadwright.render.diagram.NetBuilder}): lines and boxes of each
 *       hookup, with what {@link leadwright.render.diagram.Changes} says is new
 *   <li>{@link leadwright.render.diagram.RowOrder}: the order of the rows inside each part, fewest crossings over all hookups
 *   <li>{@link leadwright.render.diagram.Units} and {@link leadwright.render.diagram.Pages}: what is drawn as a ribbon, and
 *       what goes on which sheet
 *   <li>{@link leadwright.render.diagram.Routing}: what is gathered in which column, and which lines must change places
 *   <li>{@link leadwright.render.diagram.Heights} (by {@link leadwright.render.diagram.Laying}): where rows, boxes, lanes and
 *       jacks stand
 *   <li>{@link leadwright.render.diagram.Columns}: where columns and tracks stand
 *   <li>{@link leadwright.render.diagram.HookupPainter} and the other painters: strokes and texts in document order
 * </ol>
 */
package leadwright.render.diagram;
