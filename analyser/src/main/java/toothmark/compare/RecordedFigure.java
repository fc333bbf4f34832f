package toothmark.compare;

import toothmark.units.Measured;

/**
 * One measured figure of an examination.
 *
 * @param name what it is, the same in every examination
 * @param unit that of the value, with the space that belongs before it; may be empty
 * @param value with its standard uncertainty
 */
public record RecordedFigure(String name, String unit, Measured value) {}
