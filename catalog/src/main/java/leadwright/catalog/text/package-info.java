/**
 * From the bytes of a YAML or JSON file to values, with every error located. What people write is read by
 * {@code leadwright.catalog.read}; any other file of the same kind (tables, rule sets) with
 * {@link leadwright.catalog.text.Document} and {@link leadwright.catalog.text.Fields}:
 *
 * <pre>{@code
 * Outcome<Connectors> outcome = Document.read("connectors.yaml", bytes, "connectors/1", top -> {
 *     List<Connector> all = new ArrayList<>();
 *     for (Fields row : top.rows("connectors")) {                       // a list of sections; absent means empty
 *         String id = row.id("id");                                     // required
 *         Optional<Quantity> volts = row.optionalQuantity("voltage", Dimension.VOLTAGE);
 *         List<String> mates = row.texts("mates");                      // absent means empty
 *         boolean memory = row.yesNo("from-memory", false);
 *         Contact contact = row.word("contact", Contact.values(), Words::of);
 *         all.add(new Connector(id, volts, mates, memory, contact));
 *     }
 *     return () -> new Connectors(all);                                 // called only when the file has no problem
 * });
 * Connectors connectors = outcome.orThrow();                            // for files that the program ships
 * }</pre>
 *
 * <p>A getter whose value is missing or wrong notes a problem and returns a placeholder of the right type, so that reading
 * goes on and all problems of a file are found in one pass. Keys that no getter asked for are problems too. Checks across
 * a file note their own: {@code top.findings().problem(row.at("id"), "...")}.
 */
package leadwright.catalog.text;
