package toothmark.timing;

import java.util.ArrayList;
import java.util.List;
import toothmark.capture.Signal;
import toothmark.edges.EdgeTrain;
import toothmark.edges.LogicEdges;
import toothmark.ignition.CrankPoint;
import toothmark.rotation.AngleTimeline;

/** Reads the channel that rises at top dead centre of cylinder 1. */
public final class TdcMarks {

  /** Weaker rises belong to flickers, see {@link EdgeTrain}. */
  private static final double LEAST_STRENGTH = 0.15;

  private TdcMarks() {}

  /**
   * Reads the marks.
   *
   * @param signal the TDC channel
   * @param timeline the crank's angle
   * @return the rises at which the crank's angle is known, in time order
   */
  public static List<TdcMark> read(Signal signal, AngleTimeline timeline) {
    EdgeTrain rises = LogicEdges.detect(signal).rising();
    List<TdcMark> marks = new ArrayList<>();
    for (int i = 0; i < rises.size(); i++) {
      if (rises.strength(i) < LEAST_STRENGTH) {
        continue;
      }
      double time = rises.time(i);
      double u = rises.uncertainty(i);
      CrankPoint.at(time, timeline).ifPresent(p -> marks.add(new TdcMark(time, u, p)));
    }
    return marks;
  }
}
