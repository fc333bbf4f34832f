package toothmark.timing;

import toothmark.ignition.CrankPoint;

/**
 * One passing of top dead centre of cylinder 1.
 *
 * @param timeSeconds when, s
 * @param uncertaintySeconds standard uncertainty of the time, s
 * @param sharedDegrees standard uncertainty of the place that all marks have in common, degrees
 * @param crank where the crank stood by its teeth
 */
public record TdcMark(
    double timeSeconds, double uncertaintySeconds, double sharedDegrees, CrankPoint crank) {}
