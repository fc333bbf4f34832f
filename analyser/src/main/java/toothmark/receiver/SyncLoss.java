package toothmark.receiver;

/**
 * One place where the reference follower lost its count.
 *
 * @param timeSeconds time of the edge at which it noticed, s
 * @param teethCounted teeth counted since tooth 1, that tooth included
 * @param rpm speed, rev/min: by the decoding where there is one, else what the edges around it show
 * @param phase whether the engine was being cranked or ran
 */
public record SyncLoss(double timeSeconds, int teethCounted, double rpm, Phase phase) {

  /** Under this speed, in rev/min, a loss counts as cranking. Common practice. */
  public static final double CRANKING_BELOW_RPM = 400.0;

  /**
   * A loss in the phase that its speed tells.
   *
   * @param timeSeconds time of the edge at which it noticed, s
   * @param teethCounted teeth counted since tooth 1, that tooth included
   * @param rpm rev/min
   * @return the loss
   */
  public static SyncLoss at(double timeSeconds, int teethCounted, double rpm) {
    Phase phase = rpm < CRANKING_BELOW_RPM ? Phase.CRANKING : Phase.RUNNING;
    return new SyncLoss(timeSeconds, teethCounted, rpm, phase);
  }

  /** Where in the life of the engine a loss falls. */
  public enum Phase {
    /** Under {@link SyncLoss#CRANKING_BELOW_RPM}. */
    CRANKING,
    /** At or above it. */
    RUNNING
  }
}
