package toothmark.chart;

import static toothmark.chart.SampleMotion.BENT;
import static toothmark.chart.SampleMotion.BENT_BY;
import static toothmark.chart.SampleMotion.END;
import static toothmark.chart.SampleMotion.TOOTH1_BTDC;
import static toothmark.chart.SampleMotion.angleAt;
import static toothmark.chart.SampleMotion.rpmAt;
import static toothmark.chart.SampleMotion.timeAt;

import java.util.ArrayList;
import java.util.List;
import toothmark.capture.Capture;
import toothmark.capture.Channel;
import toothmark.capture.Reading;
import toothmark.capture.SampledSignal;
import toothmark.capture.StepSignal;
import toothmark.timing.SparkTiming;

/** What a recorder would have written of the run that is written down by hand. */
final class SampleSignals {

  private SampleSignals() {}

  static Capture capture(List<SparkTiming> sparks) {
    double[] samples = new double[200_000];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = voltage(i * 2e-5);
    }
    return new Capture(
        "rev-up.csv",
        List.of(
            new Channel("CH1", "V", SampledSignal.of(0, 2e-5, samples)),
            new Channel("CH2", "", drive(sparks, 0)),
            new Channel("CH3", "", drive(sparks, 1)),
            new Channel("CH4", "", tdc())),
        new Reading(
            "delimited text, comma, decimal point",
            List.of(
                new Reading.Fact("sampling interval", "20 µs, from the time column"),
                new Reading.Fact("header", "2 lines")),
            List.of("3 empty cells were filled from their neighbours.")));
  }

  private static double voltage(double t) {
    double a = angleAt(t);
    double inTurn = a - 360 * Math.floor(a / 360);
    double slot = Math.rint(inTurn / 10);
    double size = 0.002 * rpmAt(t) * (slot == BENT - 1 ? 0.72 : 1);
    double off = inTurn - slot * 10 - (slot == BENT - 1 ? BENT_BY : 0);
    boolean gap = slot == 35 && Math.abs(off) < 5;
    return gap ? 0 : -size * Math.sin(2 * Math.PI * off / 10) * Math.exp(-off * off / 20);
  }

  private static StepSignal drive(List<SparkTiming> sparks, int coil) {
    List<Double> times = new ArrayList<>(List.of(0.0));
    List<Double> levels = new ArrayList<>(List.of(0.0));
    for (SparkTiming s : sparks) {
      if (s.coil() == coil) {
        times.add(s.spark().chargeStartSeconds().orElseThrow());
        levels.add(1.0);
        times.add(s.spark().timeSeconds());
        levels.add(0.0);
      }
    }
    return steps(times, levels);
  }

  private static StepSignal tdc() {
    List<Double> times = new ArrayList<>(List.of(0.0));
    List<Double> levels = new ArrayList<>(List.of(0.0));
    for (int r = 1; 360.0 * r + 100 < angleAt(END); r++) {
      times.add(timeAt(360.0 * r + TOOTH1_BTDC));
      levels.add(1.0);
      times.add(timeAt(360.0 * r + TOOTH1_BTDC + 4));
      levels.add(0.0);
    }
    return steps(times, levels);
  }

  private static StepSignal steps(List<Double> times, List<Double> levels) {
    return new StepSignal(
        times.stream().mapToDouble(d -> d).toArray(),
        levels.stream().mapToDouble(d -> d).toArray(),
        1e-6,
        END);
  }
}
