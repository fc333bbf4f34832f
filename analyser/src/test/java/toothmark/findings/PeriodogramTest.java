package toothmark.findings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

class PeriodogramTest {

  private static int highest(Periodogram p, double fromHertz) {
    int best = (int) Math.ceil(fromHertz / p.stepHertz());
    for (int k = best; k < p.lines(); k++) {
      best = p.power(k) > p.power(best) ? k : best;
    }
    return best;
  }

  /** Rayleigh's statistic of n events all in phase is n (Mardia and Jupp, 2000, 6.3.1). */
  @Test
  void eventsInStepReachTheirNumber() {
    double[] t = new double[100];
    double[] one = new double[100];
    for (int i = 0; i < 100; i++) {
      t[i] = 0.5 + i / 50.0;
      one[i] = 1;
    }
    Periodogram p = Periodogram.of(t, one, 90);
    int best = highest(p, 10);
    assertThat(p.hertz(best)).isCloseTo(50, Offset.offset(0.2));
    assertThat(p.power(best)).isBetween(94.0, 100.01);
  }

  /** The power of white noise of variance 1 is exponential with mean 1. */
  @Test
  void noiseIsFlat() {
    Random random = new Random(3);
    double[] t = new double[3000];
    double[] v = new double[3000];
    double at = 0;
    for (int i = 0; i < t.length; i++) {
      at += 0.5e-3 + 1e-3 * random.nextDouble();
      t[i] = at;
      v[i] = random.nextGaussian();
    }
    Periodogram p = Periodogram.of(t, v, 400);
    double sum = 0;
    for (int k = 1; k < p.lines(); k++) {
      sum += p.power(k);
    }
    assertThat(sum / (p.lines() - 1)).isCloseTo(1, Offset.offset(0.1));
  }

  @Test
  void aSineOfAmplitudeAHasPowerNAASquaredOverFour() {
    double[] t = new double[2000];
    double[] v = new double[2000];
    for (int i = 0; i < t.length; i++) {
      t[i] = i / 1000.0;
      v[i] = 0.5 * Math.sin(2 * Math.PI * 60 * t[i] + 1);
    }
    Periodogram p = Periodogram.of(t, v, 400);
    int best = highest(p, 10);
    assertThat(p.hertz(best)).isCloseTo(60, Offset.offset(0.3));
    assertThat(p.power(best)).isCloseTo(2000 * 0.25 / 4, Offset.offset(6.0));
  }
}
