/** From obligations and kit to hookups: which connections stand where, through which items, proven fewest. */
package leadwright.planner.wire;
