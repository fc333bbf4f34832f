package toothmark.findings;

import java.util.Arrays;

/**
 * A starter that turns a four-stroke engine, stepped finely in angle by its balance of energy, from
 * rest or not.
 *
 * <p>Work on the crank over a step is that of the starter, whose torque falls evenly with speed,
 * less friction, less that of the air: adiabatic in each cylinder, exponent 1.3, compression ratio
 * 9.5, from 130 degrees before its top dead centre to as much after it. The stroke is taken for a
 * cosine.
 */
final class StarterModel {

  private static final double STEP = 0.1;
  private static final double INERTIA_KG_M2 = 0.3;
  private static final double CLOSED = 130;

  private final double[] compression;
  private final double[] seconds;

  /**
   * Turns the engine.
   *
   * @param compression of each cylinder in firing order, 1 for a sound one
   * @param rpm mean speed, about
   * @param firstTdc degrees of the first top dead centre
   * @param degrees how far
   */
  StarterModel(double[] compression, double rpm, double firstTdc, double degrees) {
    this.compression = compression;
    seconds = new double[(int) (degrees / STEP) + 1];
    double omega = rpm * Math.PI / 30;
    double free = 1.35 * omega;
    double joules = INERTIA_KG_M2 * omega * omega / 2;
    for (int i = 1; i < seconds.length; i++) {
      double now = Math.sqrt(2 * joules / INERTIA_KG_M2);
      double starter = 60 * (free - now) / (free - omega) - 60;
      joules += (starter + gasNm(i * STEP - firstTdc)) * Math.toRadians(STEP);
      double next = Math.sqrt(2 * joules / INERTIA_KG_M2);
      seconds[i] = seconds[i - 1] + Math.toRadians(STEP) / ((now + next) / 2);
    }
  }

  /** When the crank has turned so far, s. */
  double timeOf(double degrees) {
    int i = Math.min((int) (degrees / STEP), seconds.length - 2);
    return seconds[i] + (degrees / STEP - i) * (seconds[i + 1] - seconds[i]);
  }

  /** Speed at an instant, rev/min. */
  double rpmAt(double time) {
    int i = Arrays.binarySearch(seconds, time);
    i = Math.max(1, Math.min(i >= 0 ? i : -i - 1, seconds.length - 1));
    return STEP / (seconds[i] - seconds[i - 1]) / 6;
  }

  private double gasNm(double degrees) {
    double sum = 0;
    for (int c = 0; c < compression.length; c++) {
      double own = degrees - c * 720.0 / compression.length;
      own -= 720 * Math.rint(own / 720);
      if (Math.abs(own) < CLOSED) {
        double bar = Math.pow(volume(CLOSED) / volume(own), 1.3) - 1;
        // 0.45 litres: half the swept volume times the sine is the volume's slope
        sum += compression[c] * bar * 1e5 * 0.225e-3 * Math.sin(Math.toRadians(own));
      }
    }
    return sum;
  }

  /** Over the swept volume. */
  private static double volume(double degrees) {
    return 1 / 8.5 + (1 - Math.cos(Math.toRadians(degrees))) / 2;
  }
}
