package toothmark.chart;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import toothmark.wheel.ToothGeometry;

/**
 * Which teeth stand out from the rest, to be shown in another colour. Whether they matter is not
 * decided here.
 */
record OddTeeth(List<Integer> teeth, double largestEven) {

  /** From a median absolute deviation to a standard deviation of a normal scatter. */
  private static final double MAD_TO_SD = 1.4826;

  private static final double SCATTERS = 6;
  private static final double LEAST_DEGREES = 0.08;
  private static final double LEAST_SIGNAL = 0.15;

  private static final double ODD_ROOM = 0.45;
  private static final double EVEN_ROOM = 0.15;
  private static final double[] FACTORS = {1, 2, 5, 10, 20, 50, 100};

  OddTeeth {
    teeth = List.copyOf(teeth);
  }

  /** Teeth whose place or signal lies far outside the scatter of the others. */
  static OddTeeth of(ToothGeometry g) {
    double placeLimit = limit(g, g::offsetDegrees, LEAST_DEGREES);
    double signalLimit = limit(g, g::amplitude, LEAST_SIGNAL);
    double placeMiddle = median(g, g::offsetDegrees);
    double signalMiddle = median(g, g::amplitude);
    List<Integer> odd = new ArrayList<>();
    double even = 0;
    for (int k = 1; k <= g.teeth(); k++) {
      double off = Math.abs(g.offsetDegrees(k) - placeMiddle);
      if (off > placeLimit || Math.abs(g.amplitude(k) - signalMiddle) > signalLimit) {
        odd.add(k);
      } else {
        even = Math.max(even, Math.abs(g.offsetDegrees(k)));
      }
    }
    odd.sort((a, b) -> Double.compare(Math.abs(g.offsetDegrees(b)), Math.abs(g.offsetDegrees(a))));
    return new OddTeeth(odd, even);
  }

  boolean contains(int tooth) {
    return teeth.contains(tooth);
  }

  /**
   * By how much to draw errors larger: the largest round factor that keeps every tooth nearer its
   * own place than the next one's; where none is odd, near enough to look as even as it is.
   */
  double enlargement(double pitchDegrees, ToothGeometry g) {
    double room = (teeth.isEmpty() ? EVEN_ROOM : ODD_ROOM) * pitchDegrees;
    double largest =
        IntStream.rangeClosed(1, g.teeth())
            .mapToDouble(k -> Math.abs(g.offsetDegrees(k)))
            .max()
            .orElse(0);
    return DoubleStream.of(FACTORS).filter(f -> f * largest <= room).max().orElse(1);
  }

  private static double limit(ToothGeometry g, IntToDoubleFunction value, double least) {
    double middle = median(g, value);
    double spread = median(g, k -> Math.abs(value.applyAsDouble(k) - middle));
    return Math.max(least, SCATTERS * MAD_TO_SD * spread);
  }

  private static double median(ToothGeometry g, IntToDoubleFunction value) {
    double[] sorted = IntStream.rangeClosed(1, g.teeth()).mapToDouble(value).toArray();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }
}
