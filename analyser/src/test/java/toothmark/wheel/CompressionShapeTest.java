package toothmark.wheel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class CompressionShapeTest {

  private static final double[] FINE = new double[361];

  static {
    for (int k = 0; k <= 360; k++) {
      FINE[k] = k;
    }
  }

  /** A given energy changes the speed by its share of the crank's: Δω/ω = ΔE/(Jω²). */
  @Test
  void swingsByTheEnergysShare() {
    List<CompressionShape> slow = CompressionShape.ofTurns(1, 0.05);
    List<CompressionShape> fast = CompressionShape.ofTurns(1, 0.025);
    for (int k = 0; k < slow.size(); k++) {
      assertThat(slow.get(k).strength / fast.get(k).strength).isCloseTo(4, within(0.4));
    }
  }

  /** Gas hinders till top dead centre and helps from there on; the starter helps all the while. */
  @Test
  void isSlowestNearTopDeadCentre() {
    for (CompressionShape c : CompressionShape.ofTurns(2, 0.6)) {
      double[] shape = c.of(FINE, 0).get(0);
      int slowest = 0;
      double sum = 0;
      for (int k = 0; k < 360; k++) {
        slowest = shape[k] > shape[slowest] ? k : slowest;
        sum += shape[k];
      }
      double turned = 2.0 * slowest * c.firings / 360;
      double firing = turned / 2 - Math.floor(turned / 2);
      double topAt = c.firings % 2 == 0 ? 0 : 0.5;
      double late = Math.abs(firing - topAt);
      assertThat(Math.min(late, 1 - late)).isLessThan(0.125);
      assertThat(sum).isCloseTo(0, within(1e-9));
    }
  }

  /** Over two turns an odd number of cylinders fits, over one it does not. */
  @Test
  void takesEnginesThatFireAWholeNumberOfTimes() {
    assertThat(CompressionShape.ofTurns(1, 0.3))
        .extracting(c -> c.firings)
        .containsOnly(1, 2, 3, 4);
    assertThat(CompressionShape.ofTurns(2, 0.6))
        .extracting(c -> c.firings)
        .containsOnly(2, 3, 4, 5, 6, 8);
    assertThat(CompressionShape.ofFiring(0.15)).extracting(c -> c.firings).containsOnly(1);
  }

  /** A tooth is wider by as much as it passes more slowly. */
  @Test
  void widthsAreThePace() {
    for (CompressionShape c : CompressionShape.ofTurns(1, 0.15)) {
      double[] shape = c.of(FINE, 360).get(5);
      for (int k = 1; k < 359; k++) {
        double pace = 180 * (shape[k - 1] + shape[k]);
        assertThat(shape[360 + k]).isCloseTo(pace, within(0.1 * c.strength));
      }
    }
  }
}
