/**
 * The files that people write, to records: syntax and places by {@link leadwright.catalog.text}, words by the tables of
 * {@link leadwright.catalog.table}, and here the checks across a file. All problems of a file are found in one pass;
 * values that a file leaves out are filled in with the safe choice and listed in
 * {@link leadwright.catalog.text.Outcome.Read#assumed()}.
 */
package leadwright.catalog.read;
