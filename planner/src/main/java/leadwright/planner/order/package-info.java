/** From hookups to steps: the order of hookups, states, ties and places with the least bench time, proven. */
package leadwright.planner.order;
