/**
 * Two plans side by side: what changed, in the order in which a person at the bench cares. Both are taken as they were
 * written, and nothing is planned. Readings and hookups are matched by what they are, never by their ids, which shift.
 */
package leadwright.planner.compare;
