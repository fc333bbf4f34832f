package toothmark.timing;

import java.util.OptionalDouble;

/**
 * One coil's sparks against those of the others.
 *
 * @param coil number of the coil, from 0, in the order of the job sheet
 * @param name its name
 * @param sparks sparks with a known advance
 * @param meanAdvanceDegrees about the top dead centre of its own cylinders, degrees
 * @param meanGapDegrees mean of actual less commanded, degrees; empty when nothing was commanded
 * @param turnedDegrees how far the coil fires from where it should, as the nearest whole number of
 *     firing intervals, degrees; 0 when it fires in its own place
 */
public record CoilTiming(
    int coil,
    String name,
    int sparks,
    double meanAdvanceDegrees,
    OptionalDouble meanGapDegrees,
    double turnedDegrees) {}
