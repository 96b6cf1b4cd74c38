/** What the editions are made of before they have a look: headings, paragraphs, tables, drawings. It knows nothing else of the program. */
package leadwright.render.paper;
