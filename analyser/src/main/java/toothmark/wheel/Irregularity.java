package toothmark.wheel;

import java.util.List;

/**
 * How much of a reading has to be explained away.
 *
 * <p>Crossings of the wrong direction stand in the middles of the slots; beside a gap they stand
 * out of place by up to half a pitch, turn after turn (US patent 11,237,203 reads reversed leads
 * from that). So the reading of the wrong direction needs teeth out of place beside the gap, strays
 * or lost teeth; the right one needs none.
 */
final class Irregularity {

  private static final double STRAY_OR_LOST = 4;
  private static final double BESIDE_GAP = 40;

  /** Teeth beside a gap pass up to 2 % of a pitch out of place in the right reading too. */
  private static final double OUT = 0.1;

  private Irregularity() {}

  static double of(EdgeSeries edges, List<Labelling> labels, WheelPattern pattern) {
    double sum = 0;
    for (Labelling l : labels) {
      for (int i = 0; i < l.size(); i++) {
        sum += l.teeth[i] == Labelling.STRAY || l.steps[i] > 1 ? STRAY_OR_LOST : 0;
      }
    }
    ToothFaults faults = OutlyingTeeth.find(edges, labels.get(0), pattern);
    for (int k = 0; k < pattern.teeth(); k++) {
      boolean out = Math.abs(faults.offset(k)) > OUT * pattern.pitchDegrees();
      sum += out && besideGap(pattern, k) ? BESIDE_GAP : 0;
    }
    return sum;
  }

  private static boolean besideGap(WheelPattern pattern, int tooth) {
    int before = Math.floorMod(tooth - 1, pattern.teeth());
    return gapAfter(pattern, before) || gapAfter(pattern, tooth);
  }

  private static boolean gapAfter(WheelPattern pattern, int tooth) {
    boolean last = tooth + 1 == pattern.teeth();
    double next = last ? 360 : pattern.degreesAfterTooth1(tooth + 2);
    return next - pattern.degreesAfterTooth1(tooth + 1) > 1.5 * pattern.pitchDegrees();
  }
}
