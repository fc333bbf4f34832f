package toothmark.timing;

import toothmark.ignition.CrankPoint;

/**
 * One passing of top dead centre of cylinder 1.
 *
 * @param timeSeconds when, s
 * @param uncertaintySeconds standard uncertainty of the time, s
 * @param crank where the crank stood by its teeth
 */
public record TdcMark(double timeSeconds, double uncertaintySeconds, CrankPoint crank) {}
