/** Amounts with their dimension, held exactly; decimals and written units exist only at the border. */
package leadwright.catalog.quantity;
