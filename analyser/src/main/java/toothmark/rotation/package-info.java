/**
 * Where is the crank, and how fast does it turn?
 *
 * <p>In: a {@link toothmark.wheel.DecodedWheel}. Out: an {@link toothmark.rotation.AngleTimeline}.
 */
package toothmark.rotation;
