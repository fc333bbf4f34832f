/**
 * Which wheel is this, and which tooth is each edge?
 *
 * <p>In: {@link toothmark.edges.CrankEdges}. Out: {@link toothmark.wheel.WheelIdentification} and
 * {@link toothmark.wheel.DecodedWheel}.
 */
package toothmark.wheel;
