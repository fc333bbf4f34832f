package toothmark.accuracy;

import java.util.List;
import toothmark.simulator.SpeedProfile;
import toothmark.simulator.SpeedProfile.Drive;
import toothmark.simulator.SpeedProfile.Phase;

/** What a crank may do during a capture. */
public enum Speeds {
  /** Idling. */
  IDLE,
  /** Held at one higher speed. */
  HELD,
  /** Up or down over a wide range. */
  SWEEP,
  /** On the starter. */
  CRANKING,
  /** From rest, through first fire, to idle. */
  START;

  /**
   * Draws a profile.
   *
   * @param dice of the case
   * @param seconds how long the capture is
   * @return a profile of this kind
   */
  public SpeedProfile draw(Dice dice, double seconds) {
    return switch (this) {
      case IDLE -> SpeedProfile.steady(dice.uniform(700, 1200));
      case HELD -> SpeedProfile.steady(dice.logUniform(1200, 6000));
      case SWEEP -> sweep(dice, seconds);
      case CRANKING -> SpeedProfile.cranking(dice.uniform(180, 280));
      case START ->
          SpeedProfile.start(
              dice.uniform(190, 270), dice.uniform(0.3, 0.5) * seconds, dice.uniform(800, 1100));
    };
  }

  private static SpeedProfile sweep(Dice dice, double seconds) {
    double low = dice.uniform(850, 1300);
    double high = dice.uniform(3000, 6500);
    double part = dice.uniform(0.5, 0.9) * seconds;
    Phase up = new Phase(Drive.FIRING, part, high, 0.9);
    Phase down = new Phase(Drive.FIRING, seconds - part, low, 0.35);
    return dice.chance(0.5)
        ? new SpeedProfile(low, List.of(up, down))
        : new SpeedProfile(high, List.of(down, up));
  }
}
