/** Replays a finished plan on the device, kit and graph, and names every breach. Shares nothing with the search. */
package leadwright.planner.audit;
