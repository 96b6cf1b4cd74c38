/**
 * Readings against the plan they were taken by: corrected, compared with the limits under a stated decision rule, and set
 * beside the last record. It reads what was written, a {@code plan/1} and a {@code readings/1}, and plans nothing.
 */
package leadwright.planner.judge;
