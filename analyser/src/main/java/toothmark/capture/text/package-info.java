/**
 * What does a text file of numbers say?
 *
 * <p>In: delimited text of any habit. Out: a {@link toothmark.capture.Capture}. Front door: {@link
 * toothmark.capture.text.TextCapture}.
 */
package toothmark.capture.text;
