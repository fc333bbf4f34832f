package toothmark.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import toothmark.capture.SampledSignal;
import toothmark.edges.LogicEdges;
import toothmark.ignition.SketchedEngine;
import toothmark.rotation.AngleTimeline;
import toothmark.units.CrankAngle;

/** Marks 90 degrees after tooth 1, sampled coarsely, on an engine that is known exactly. */
class TdcMarksTest {

  private static final double INTERVAL = 20e-6;
  private static final double PLACE = 90;

  private final SketchedEngine engine = SketchedEngine.sweep(3, 900, 4500);
  private final AngleTimeline timeline = engine.timeline(10, 0);

  /** A channel that stands high from each mark until a time that may depend on when it came. */
  private List<TdcMark> read(DoubleUnaryOperator endOfMark) {
    double[] v = new double[(int) (engine.seconds() / INTERVAL)];
    for (double rise : engine.passings(PLACE, 360)) {
      int from = (int) Math.ceil(rise / INTERVAL);
      int to = (int) Math.ceil(endOfMark.applyAsDouble(rise) / INTERVAL);
      Arrays.fill(v, Math.min(v.length, from), Math.min(v.length, to), 5);
    }
    return TdcMarks.read(LogicEdges.detect(SampledSignal.of(0, INTERVAL, v)), timeline);
  }

  private static double beyondPlace(TdcMark mark) {
    return CrankAngle.wrapDifference(mark.crank().degreesAfterTooth1() - PLACE);
  }

  private double rmsMicroseconds(List<TdcMark> marks) {
    return 1e6
        * Math.sqrt(
            marks.stream()
                .mapToDouble(m -> beyondPlace(m) / 6 / m.crank().rpm())
                .map(x -> x * x)
                .average()
                .orElseThrow());
  }

  /** Interval over root 12 for a rise alone; over root 24 for the mean of two (GUM, 4.3.7). */
  @Test
  void fallsOfAMarkOfOneWidthAddWhatTheyTell() {
    List<TdcMark> marks = read(rise -> engine.timeAt(engine.degreesAt(rise) + 3));
    assertThat(marks).hasSizeGreaterThan(100);
    assertThat(rmsMicroseconds(marks)).isCloseTo(20 / Math.sqrt(24), within(0.6));
    assertThat(marks.get(5).uncertaintySeconds()).isCloseTo(20e-6 / Math.sqrt(24), within(1e-9));
    double alone = 0;
    for (TdcMark m : marks) {
      double u = CrankAngle.turned(m.crank().rpm(), m.uncertaintySeconds());
      alone += 1 / (u * u);
    }
    assertThat(marks.get(5).sharedDegrees())
        .as("the mean of all is as good as that of the rises, root of two worse than of halves")
        .isCloseTo(1 / Math.sqrt(alone), within(1e-4));
  }

  @Test
  void pulsesOfOneDurationArePlacedByTheirRisesAlone() {
    List<TdcMark> marks = read(rise -> rise + 400e-6);
    assertThat(rmsMicroseconds(marks)).isCloseTo(20 / Math.sqrt(12), within(0.8));
    assertThat(marks.get(5).uncertaintySeconds()).isCloseTo(20e-6 / Math.sqrt(12), within(1e-9));
  }
}
