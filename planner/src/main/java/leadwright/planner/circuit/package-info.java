/** Linear circuits at one frequency, solved by complex nodal analysis. It knows volts, ohms and farads, and nothing of devices. */
package leadwright.planner.circuit;
