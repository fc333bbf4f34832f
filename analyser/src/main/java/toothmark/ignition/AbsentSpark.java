package toothmark.ignition;

/**
 * A place where a coil was due to fire and did not.
 *
 * @param timeSeconds when it was due, s, from the sparks on either side
 * @param crank where the crank was then
 */
public record AbsentSpark(double timeSeconds, CrankPoint crank) {}
