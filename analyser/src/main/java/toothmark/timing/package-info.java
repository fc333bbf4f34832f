/**
 * Where is top dead centre, and does the spark follow what the controller commands?
 *
 * <p>In: the coils' {@link toothmark.ignition.CoilTrack}s, the TDC channel and what was commanded.
 * Out: a {@link toothmark.timing.Timing}.
 */
package toothmark.timing;
