/** Practice runs: readings as they would look with one hidden slip or fault, and which causes explain them. */
package leadwright.planner.rehearse;
