/** Reading of files that this program wrote: what judging and comparing share. */
package leadwright.planner.file;
