package toothmark.timing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Gaps of a known shape, with white errors. */
class ShapeChoiceTest {

  private static final int SLOTS = 36;
  private static final int SPARKS = 240;
  private static final double SCATTER_DEGREES = 0.3;

  private final Random random = new Random(8);
  private double fromRpm = 950;
  private double toRpm = 5800;

  /** Up in the first half, down in the second. */
  private double rpm(int i) {
    double share = 1 - Math.abs(2.0 * i / SPARKS - 1);
    return fromRpm + (toRpm - fromRpm) * share;
  }

  private ShapeChoice.Choice choose(IntToDoubleFunction gap, double scatter) {
    GapReadings gaps =
        new GapReadings(
            IntStream.range(0, SPARKS)
                .mapToObj(
                    i ->
                        new GapReadings.Reading(
                            i,
                            rpm(i),
                            gap.applyAsDouble(i) + scatter * random.nextGaussian(),
                            0.01,
                            80,
                            List.of(0.0, 0.0)))
                .toArray(GapReadings.Reading[]::new));
    double spread = 0.3 * (toRpm - fromRpm) * Line.DEGREES;
    double[] variances = new double[SPARKS];
    Arrays.fill(variances, scatter * scatter);
    double u = scatter / Math.sqrt(SPARKS) / spread;
    return ShapeChoice.choose(gaps, SLOTS, variances, u);
  }

  private void isNamed(GapShape shape, IntToDoubleFunction gap) {
    ShapeChoice.Choice choice = choose(gap, SCATTER_DEGREES);
    assertThat(choice.verdict()).as("%s", choice.shapes()).isEqualTo(GapFit.Verdict.NAMED);
    assertThat(choice.shapes().get(0).shape()).isEqualTo(shape);
  }

  @Test
  void namesWhatPlainlyIsSo() {
    isNamed(GapShape.DELAY, i -> 1 - 6e-6 * 130 * rpm(i));
    isNamed(GapShape.FILTER_LAG, i -> 1 - lagDegrees(130e-6, rpm(i)));
    isNamed(GapShape.STEP, i -> rpm(i) > 3300 ? 1.5 : 0);
    fromRpm = 150;
    toRpm = 1500;
    isNamed(GapShape.THRESHOLD, i -> 1 - 600 / rpm(i));
  }

  /** Phase of an RL circuit at tooth frequency, a tooth pitch being a period. */
  private static double lagDegrees(double seconds, double rpm) {
    return Math.toDegrees(Math.atan(2 * Math.PI * SLOTS * rpm / 60 * seconds)) / SLOTS;
  }

  @Test
  void aShortDelayAndTheFilterThatLooksLikeItAreADelay() {
    ShapeChoice.Choice choice = choose(i -> -lagDegrees(15e-6, rpm(i)), 0.05);
    assertThat(choice.verdict()).isEqualTo(GapFit.Verdict.NAMED);
    assertThat(choice.shapes().get(0).shape()).isEqualTo(GapShape.DELAY);
  }

  @Test
  void aStepOfNoConsequenceIsNoChange() {
    assertThat(choose(i -> rpm(i) > 3300 ? 0.05 : 0, 0.02).verdict())
        .isEqualTo(GapFit.Verdict.NO_CHANGE);
  }

  @Test
  void saysWhatItCannotTell() {
    assertThat(choose(i -> 0, 1.5).verdict()).isEqualTo(GapFit.Verdict.CANNOT_TELL);
  }
}
