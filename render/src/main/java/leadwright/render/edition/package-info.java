/** The training and the standing edition: from a plan to what stands in them, without a look. */
package leadwright.render.edition;
