package toothmark.timing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import toothmark.edges.CrankEdges;
import toothmark.edges.EdgeTrain;
import toothmark.ignition.CrankPoint;
import toothmark.rotation.AngleTimeline;
import toothmark.units.CrankAngle;
import toothmark.units.Measured;

/**
 * Reads the channel that rises at top dead centre of cylinder 1.
 *
 * <p>A recorder of a few samples a degree places a rise no better than in the interval between two
 * samples, and from how the rises move with speed the sensor's lag is found. Where the marks are as
 * wide at all speeds, in angle, each fall tells of its mark too: a mark is placed half by its rise
 * and half by its fall less the usual width. They scatter less by the root of two; on the average
 * over all marks nothing moves, since the width comes from the same marks, and half its uncertainty
 * is one that all share.
 */
public final class TdcMarks {

  /** Weaker rises belong to flickers, see {@link EdgeTrain}. */
  private static final double LEAST_STRENGTH = 0.15;

  private static final int ENOUGH_FOR_WIDTH = 6;

  /** Mean square of the widths' deviations in their variances, up to which they are one width. */
  private static final double ONE_WIDTH = 2;

  /** A fall farther behind its rise is no end of a mark, degrees. */
  private static final double WIDEST_DEGREES = 180;

  private TdcMarks() {}

  /** A mark's rise, and its fall where it has one near. */
  private record Mark(TdcMark rise, Optional<TdcMark> fall) {

    double widthDegrees() {
      return rise.widthDegrees();
    }

    double widthVariance() {
      double u = Math.hypot(rise.uncertaintySeconds(), fall.orElseThrow().uncertaintySeconds());
      double degrees = CrankAngle.turned(rise.crank().rpm(), u);
      return degrees * degrees;
    }
  }

  /**
   * Reads the marks.
   *
   * @param edges of the TDC channel, as one that switches
   * @param timeline the crank's angle
   * @return the rises at which the crank's angle is known, in time order
   */
  public static List<TdcMark> read(CrankEdges edges, AngleTimeline timeline) {
    List<TdcMark> rises = known(edges.rising(), timeline);
    List<TdcMark> falls = known(edges.falling(), timeline);
    List<Mark> marks = paired(rises, falls);
    List<Mark> whole = marks.stream().filter(m -> m.fall().isPresent()).toList();
    return width(whole)
        .map(width -> marks.stream().map(m -> placed(m, width, timeline)).toList())
        .orElseGet(() -> marks.stream().map(Mark::rise).toList());
  }

  private static List<TdcMark> known(EdgeTrain edges, AngleTimeline timeline) {
    List<TdcMark> known = new ArrayList<>();
    for (int i = 0; i < edges.size(); i++) {
      if (edges.strength(i) >= LEAST_STRENGTH) {
        double time = edges.time(i);
        double u = edges.uncertainty(i);
        CrankPoint.at(time, timeline)
            .ifPresent(p -> known.add(new TdcMark(time, u, 0, Double.NaN, p)));
      }
    }
    return known;
  }

  private static List<Mark> paired(List<TdcMark> rises, List<TdcMark> falls) {
    List<Mark> marks = new ArrayList<>();
    int f = 0;
    for (int i = 0; i < rises.size(); i++) {
      TdcMark rise = rises.get(i);
      while (f < falls.size() && falls.get(f).timeSeconds() <= rise.timeSeconds()) {
        f++;
      }
      double next = i + 1 < rises.size() ? rises.get(i + 1).timeSeconds() : Double.MAX_VALUE;
      boolean ends = f < falls.size() && falls.get(f).timeSeconds() < next;
      Optional<TdcMark> fall = ends ? Optional.of(falls.get(f)) : Optional.empty();
      double width = fall.map(at -> apart(rise, at)).orElse(Double.NaN);
      marks.add(
          width < WIDEST_DEGREES
              ? new Mark(withWidth(rise, width), fall)
              : new Mark(rise, Optional.empty()));
    }
    return marks;
  }

  private static double apart(TdcMark rise, TdcMark fall) {
    double from = rise.crank().degreesAfterTooth1();
    return CrankAngle.wrap(fall.crank().degreesAfterTooth1() - from);
  }

  private static TdcMark withWidth(TdcMark m, double degrees) {
    return new TdcMark(
        m.timeSeconds(), m.uncertaintySeconds(), m.sharedDegrees(), degrees, m.crank());
  }

  /** Weighted mean width, degrees; empty where the marks are too few or not of one width. */
  private static Optional<Measured> width(List<Mark> whole) {
    if (whole.size() < ENOUGH_FOR_WIDTH) {
      return Optional.empty();
    }
    double weights = 0;
    double sum = 0;
    for (Mark m : whole) {
      weights += 1 / m.widthVariance();
      sum += m.widthDegrees() / m.widthVariance();
    }
    double mean = sum / weights;
    double squares = 0;
    for (Mark m : whole) {
      double d = m.widthDegrees() - mean;
      squares += d * d / m.widthVariance();
    }
    return squares <= ONE_WIDTH * whole.size()
        ? Optional.of(new Measured(mean, 1 / Math.sqrt(weights)))
        : Optional.empty();
  }

  private static TdcMark placed(Mark m, Measured width, AngleTimeline timeline) {
    if (m.fall().isEmpty()) {
      return m.rise();
    }
    double secondsADegree = 1 / CrankAngle.turned(m.rise().crank().rpm(), 1);
    double time = m.rise().timeSeconds() + (m.widthDegrees() - width.value()) / 2 * secondsADegree;
    double u = Math.hypot(m.rise().uncertaintySeconds(), m.fall().get().uncertaintySeconds()) / 2;
    double shared = width.standardUncertainty() / 2;
    return CrankPoint.at(time, timeline)
        .map(p -> new TdcMark(time, u, shared, m.widthDegrees(), p))
        .orElse(m.rise());
  }
}
