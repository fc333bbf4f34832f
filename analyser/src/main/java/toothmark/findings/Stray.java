package toothmark.findings;

/**
 * Something that is no tooth but looks like one, to the decoding or to the receiver.
 *
 * @param timeSeconds s
 * @param degrees unrolled crank angle
 * @param rpm speed
 */
record Stray(double timeSeconds, double degrees, double rpm) {}
