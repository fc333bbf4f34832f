package toothmark.receiver;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import toothmark.capture.SampledSignal;
import toothmark.edges.EdgeDirection;

/** Many pairs of levels in one pass do what each does alone. */
class LevelGridTest {

  private static final int SAMPLES = 60_000;
  private static final double INTERVAL = 1e-5;
  private static final FollowedWheel WHEEL = FollowedWheel.withGaps(new int[] {10}, new int[] {2});

  /** A 12-2 wheel whose height wanders through all levels, with noise. */
  private static SampledSignal wave() {
    Random random = new Random(11);
    double[] v = new double[SAMPLES];
    for (int i = 0; i < SAMPLES; i++) {
      double slot = i / 40.0;
      boolean tooth = slot % 12 < 10;
      double height = 1 + Math.sin(i / 9000.0);
      v[i] = (tooth ? height * Math.sin(2 * Math.PI * slot) : 0) + 0.1 * random.nextGaussian();
    }
    return SampledSignal.of(0, INTERVAL, v);
  }

  private static double[] teeth() {
    List<Double> times = new ArrayList<>();
    for (int slot = 0; slot < SAMPLES / 40; slot++) {
      if (slot % 12 < 10) {
        times.add((40 * slot + 20) * INTERVAL);
      }
    }
    return times.stream().mapToDouble(Double::doubleValue).toArray();
  }

  @Test
  void everyPairCountsWhatItCountsAlone() {
    SampledSignal wave = wave();
    double[] teeth = teeth();
    List<LevelGrid.Pair> pairs = new ArrayList<>();
    List<InputStage> alone = new ArrayList<>();
    for (double threshold = -1.5; threshold <= 1.5; threshold += 0.25) {
      for (double hysteresis = 0; hysteresis < 1; hysteresis += 0.2) {
        double upper = threshold + hysteresis;
        double lower = threshold - hysteresis;
        pairs.add(new LevelGrid.Pair(upper, lower, new EdgeTally(WHEEL, teeth)));
        alone.add(new ThresholdInput(upper, lower));
      }
    }
    InputRun.of(wave, 0, EdgeDirection.FALLING, List.of(new LevelGrid(pairs)));
    List<ReceiverEdges> heard = InputRun.of(wave, 0, EdgeDirection.FALLING, alone);
    for (int i = 0; i < pairs.size(); i++) {
      EdgeTally tally = pairs.get(i).heard();
      int found = found(heard.get(i), teeth);
      assertThat(tally.teethLost()).isEqualTo(teeth.length - found);
      assertThat(tally.strays()).isEqualTo(heard.get(i).size() - found);
      assertThat(tally.losses()).isEqualTo(Follower.losses(heard.get(i), WHEEL).size());
    }
    assertThat(pairs).anyMatch(p -> p.heard().losses() > 0 && p.heard().strays() > 0);
    assertThat(pairs).anyMatch(p -> p.heard().teethLost() < teeth.length / 2);
  }

  /** Tooth by tooth instead of edge by edge: the first edge within 0.3 of the nearer neighbour. */
  private static int found(ReceiverEdges edges, double[] teeth) {
    int found = 0;
    int e = 0;
    for (int i = 0; i < teeth.length; i++) {
      double before = i > 0 ? teeth[i] - teeth[i - 1] : Double.POSITIVE_INFINITY;
      double after = i + 1 < teeth.length ? teeth[i + 1] - teeth[i] : Double.POSITIVE_INFINITY;
      double reach = 0.3 * Math.min(before, after);
      while (e < edges.size() && edges.time(e) < teeth[i] - reach) {
        e++;
      }
      if (e < edges.size() && edges.time(e) <= teeth[i] + reach) {
        found++;
        e++;
      }
    }
    return found;
  }
}
