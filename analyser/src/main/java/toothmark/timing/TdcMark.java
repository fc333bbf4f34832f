package toothmark.timing;

import toothmark.ignition.CrankPoint;

/**
 * One passing of top dead centre of cylinder 1.
 *
 * @param timeSeconds when, s
 * @param uncertaintySeconds standard uncertainty of the time, s
 * @param sharedDegrees standard uncertainty of the place that all marks have in common, degrees
 * @param widthDegrees how far the crank turned until the channel fell again, degrees; NaN where it
 *     did not within half a turn
 * @param crank where the crank stood by its teeth
 */
public record TdcMark(
    double timeSeconds,
    double uncertaintySeconds,
    double sharedDegrees,
    double widthDegrees,
    CrankPoint crank) {}
