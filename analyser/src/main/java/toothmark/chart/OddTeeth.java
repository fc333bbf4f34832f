package toothmark.chart;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntToDoubleFunction;
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
