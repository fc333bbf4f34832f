package toothmark.timing;

import java.util.Optional;

/**
 * The alignment with what is needed to place sparks: the tooth 1 angle as the crank's teeth show it
 * at a speed, lag and slip included, for sparks are read off the same teeth.
 *
 * @param alignment what is reported
 * @param apparent tooth 1 angle by speed, before any slip, of a sensor late by a fixed time
 * @param bend how far the sensor's lag falls short of a fixed time
 * @param slip the wheel's slip
 */
record AlignedWheel(
    Alignment alignment, Line apparent, LagBend bend, Optional<SlipSearch.Slip> slip) {

  double tooth1At(double rpm, double timeSeconds) {
    return apparent.at(rpm)
        + bend.degreesAt(rpm)
        + slip.map(s -> s.movedAt(timeSeconds)).orElse(0.0);
  }
}
