/**
 * When did the signal cross?
 *
 * <p>In: the crank channel's {@link toothmark.capture.Signal}. Out: {@link
 * toothmark.edges.CrankEdges}, both directions of crossing, each with time, uncertainty and
 * strength.
 */
package toothmark.edges;
