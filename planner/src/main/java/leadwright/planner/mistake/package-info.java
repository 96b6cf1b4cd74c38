/**
 * Slips at the bench that would let an untested device pass: each is put into the circuit of every reading it touches, and what
 * stays silent gets the cheapest proof steps. It knows foreseen readings and plans; it decides no verdict.
 */
package leadwright.planner.mistake;
