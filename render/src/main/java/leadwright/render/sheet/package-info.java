/** Documents on paper and screen: from a plan and its drawings to one page source. */
package leadwright.render.sheet;
