/** What was read on the bench against one plan, as a {@code readings/1} file says it; nothing here judges. */
package leadwright.catalog.readings;
