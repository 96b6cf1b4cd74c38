/** The way of a current as a figure: what it runs through, in its order, and which conductor is open. It knows no plan. */
package leadwright.render.circuit;
