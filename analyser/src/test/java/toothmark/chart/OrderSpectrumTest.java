package toothmark.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import toothmark.edges.EdgeDirection;
import toothmark.rotation.AngleTimeline;
import toothmark.rotation.DecodedCrank;
import toothmark.rotation.SpeedTrace;
import toothmark.wheel.DecodedWheel;
import toothmark.wheel.Orientation;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothGeometry;
import toothmark.wheel.WheelIdentification;
import toothmark.wheel.WheelPattern;

class OrderSpectrumTest {

  /**
   * A swing of a known size must be read back at its own order. The size is that of the sine put
   * in; reading the speed once a tooth takes sinc(order / slots) of it, 0.5 % at order 2 of 36.
   */
  @Test
  void readsBackTheSwingThatWasPutIn() {
    OrderSpectrum spectrum = OrderSpectrum.of(swinging(2, 0.03, 60)).orElseThrow();
    int top = 1;
    for (int i = 1; i < spectrum.size(); i++) {
      top = spectrum.percent(i) > spectrum.percent(top) ? i : top;
    }
    assertThat(spectrum.order(top)).isCloseTo(2, within(0.01));
    assertThat(spectrum.percent(top)).isCloseTo(3, within(0.05));
  }

  @Test
  void needsSeveralTurns() {
    assertThat(OrderSpectrum.of(swinging(2, 0.03, 8))).isEmpty();
  }

  /**
   * Teeth of a 36-tooth wheel at 1000 rev/min, whose speed swings as 1 + share sin(order angle).
   */
  private static DecodedCrank swinging(double order, double share, int turns) {
    int n = 36 * turns;
    double[] times = new double[n];
    double[] degrees = new double[n];
    double[] rates = new double[n];
    for (int i = 0; i < n; i++) {
      degrees[i] = i * 10.0;
      rates[i] = 6000 * (1 + share * Math.sin(Math.toRadians(order * degrees[i])));
      times[i] = i == 0 ? 0 : times[i - 1] + step(degrees[i - 1], order, share);
    }
    double[] middles = new double[n - 1];
    double[] rpm = new double[n - 1];
    for (int i = 0; i < n - 1; i++) {
      middles[i] = (times[i] + times[i + 1]) / 2;
      rpm[i] = 10 / (times[i + 1] - times[i]) / 6;
    }
    WheelPattern wheel = WheelPattern.plain(36);
    ToothGeometry none = new ToothGeometry(new double[36], new double[36], new double[36], 0);
    return new DecodedCrank(
        new WheelIdentification(
            wheel, 1, List.of(), EdgeDirection.FALLING, Orientation.UNKNOWN, List.of()),
        new DecodedWheel(wheel, new ToothEvents.Builder().build(), none, List.of(), List.of()),
        new AngleTimeline(times, degrees, rates),
        new SpeedTrace(middles, rpm, 1000));
  }

  /** Time over ten degrees, by a hundred small steps. */
  private static double step(double from, double order, double share) {
    double time = 0;
    for (int k = 0; k < 100; k++) {
      double a = from + 0.1 * (k + 0.5);
      time += 0.1 / (6000 * (1 + share * Math.sin(Math.toRadians(order * a))));
    }
    return time;
  }
}
