/** What a kit can reach, for devices and by itself, and what one piece more would change. */
package leadwright.planner.reach;
