/** The planner's door: a request goes in, an audited plan or the reasons why not come out. */
package leadwright.planner;
