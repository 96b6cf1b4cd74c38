/** A department's own choices and bench times. */
package leadwright.catalog.house;
