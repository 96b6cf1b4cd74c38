/**
 * What each reading of a plan should show, by the circuit that its hookup really makes: foreseen readings with bands, and
 * budgets of resistance and capacitance. It decides no verdict; the limit does.
 */
package leadwright.planner.foresee;
