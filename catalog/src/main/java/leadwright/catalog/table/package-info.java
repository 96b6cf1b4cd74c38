/** The built-in tables: connectors and what mates, electrode sets, conductors, mains couplers, and their sources. */
package leadwright.catalog.table;
