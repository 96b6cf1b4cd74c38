/** Rule sets: quantities, limits with clause, mark and source, and how connections are joined. */
package leadwright.catalog.rules;
