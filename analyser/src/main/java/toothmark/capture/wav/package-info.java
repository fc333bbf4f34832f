/**
 * Sound recordings: what a line input heard.
 *
 * <p>In: a RIFF or RF64 wave file. Out: a {@link toothmark.capture.Capture} with channels 1, 2, …
 * in shares of full scale. Front door: {@link toothmark.capture.wav.WavCapture}.
 */
package toothmark.capture.wav;
