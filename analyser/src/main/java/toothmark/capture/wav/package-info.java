/**
 * What does a sound recording say?
 *
 * <p>In: a RIFF/WAVE file, RF64 included. Out: a {@link toothmark.capture.Capture} whose channels
 * are named 1, 2, … and whose unit is full scale. Front door: {@link
 * toothmark.capture.wav.WavCapture}.
 */
package toothmark.capture.wav;
