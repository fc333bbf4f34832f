/**
 * One of the two doors: the command line.
 *
 * <p>In: arguments. Out: an exit code. One thin class for each subcommand; {@link
 * toothmark.cli.Failures} alone decides what a failure prints and returns.
 */
package toothmark.cli;
