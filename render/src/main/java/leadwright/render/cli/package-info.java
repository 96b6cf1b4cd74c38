/** The command line: commands, exit codes, and what is said on standard output and standard error. */
package leadwright.render.cli;
