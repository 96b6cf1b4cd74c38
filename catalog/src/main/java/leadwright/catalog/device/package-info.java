/** A device under test and everything on it that the bench may have to reach. */
package leadwright.catalog.device;
