/** What a plan is made of: the words that all phases and the audit share, and nothing that decides. */
package leadwright.planner.plan;
