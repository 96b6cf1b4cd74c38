/**
 * One hookup, one drawing: device at the left, tester at the right, wires between.
 *
 * <p>The phases, each a pure function of the ones before:
 *
 * <ol>
 *   <li>{@link leadwright.render.diagram.Panel}: the rows of the device, the same on every sheet of a plan
 *   <li>{@link leadwright.render.diagram.Net}: lines and boxes of each hookup, with what changed
 *   <li>{@link leadwright.render.diagram.RowOrder}: order of the rows inside each part, fewest crossings over all hookups
 *   <li>{@link leadwright.render.diagram.Units}: what is drawn as a ribbon, and what goes on which sheet
 *   <li>{@link leadwright.render.diagram.Routing}: what is gathered where, and which wires must change places
 *   <li>{@link leadwright.render.diagram.Heights}: where rows, boxes and jacks stand
 *   <li>{@link leadwright.render.diagram.Columns}: where columns and tracks stand
 *   <li>the painters: strokes and texts in document order
 * </ol>
 */
package leadwright.render.diagram;
