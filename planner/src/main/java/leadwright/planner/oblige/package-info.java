/** From device, rule set and house to the readings that are due, and the list of what is not, with reasons. */
package leadwright.planner.oblige;
