package toothmark.ignition;

/**
 * Where the crank was at an instant, and how it moved.
 *
 * @param degreesAfterTooth1 unrolled, as in {@link toothmark.rotation.AngleTimeline}
 * @param rpm speed at the instant, rev/min
 * @param rpmPerSecond acceleration, over the revolution around the instant, rev/min each second
 */
public record CrankPoint(double degreesAfterTooth1, double rpm, double rpmPerSecond) {}
