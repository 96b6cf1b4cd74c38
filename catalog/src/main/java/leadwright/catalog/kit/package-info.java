/** A bench kit: the tester and the items that bring a device's terminals to its jacks. */
package leadwright.catalog.kit;
