package toothmark.rotation;

import toothmark.wheel.DecodedWheel;
import toothmark.wheel.WheelIdentification;

/**
 * A crank signal that was decoded: which wheel, which tooth, where the crank was and how fast.
 *
 * @param identification the wheel found from the edges alone
 * @param wheel the edges named
 * @param angle crank angle over time
 * @param speed speed over time
 */
public record DecodedCrank(
    WheelIdentification identification,
    DecodedWheel wheel,
    AngleTimeline angle,
    SpeedTrace speed) {}
