/**
 * What was recorded, and how does this file say it?
 *
 * <p>In: a file. Out: a {@link toothmark.capture.Capture} of channels. One sub-package for each
 * family of files.
 */
package toothmark.capture;
