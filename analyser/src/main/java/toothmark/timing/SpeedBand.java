package toothmark.timing;

import java.util.OptionalDouble;

/**
 * The sparks of one band of speed.
 *
 * @param fromRpm lower end, rev/min
 * @param toRpm upper end, rev/min
 * @param rpm mean speed of its sparks, rev/min
 * @param sparks how many
 * @param actualDegrees mean advance, degrees
 * @param commandedDegrees mean commanded advance, degrees; empty when not known
 * @param gapDegrees mean gap, degrees; empty when not known
 * @param gapStandardDeviationDegrees scatter of the gap, degrees; empty when not known or of one
 *     spark
 */
public record SpeedBand(
    double fromRpm,
    double toRpm,
    double rpm,
    int sparks,
    double actualDegrees,
    OptionalDouble commandedDegrees,
    OptionalDouble gapDegrees,
    OptionalDouble gapStandardDeviationDegrees) {}
