package toothmark.wheel;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import toothmark.units.Interval;

/** Puts labelled edges and the teeth that gave none into one row. */
final class EventAssembly {
  private static final int MOST_TURNS_BRIDGED = 3;
  private final EdgeSeries series;
  private final WheelPattern pattern;
  private final List<Standstills.Part> parts;
  private final Labelling labels;
  private final TurnCount seen;
  private final BitSet turning = new BitSet();
  private final ToothEvents.Builder events = new ToothEvents.Builder();
  private final List<Interval> undecided = new ArrayList<>();
  private final List<Interval> standstills = new ArrayList<>();

  EventAssembly(
      EdgeSeries series,
      WheelPattern pattern,
      List<Standstills.Part> parts,
      Labelling labels,
      TurnCount seen) {
    this.parts = parts;
    parts.forEach(p -> turning.set(p.from(), p.to()));
    this.series = series;
    this.pattern = pattern;
    this.labels = labels;
    this.seen = seen;
  }

  DecodedWheel assemble() {
    int stray = 0;
    for (int i = 0; i < seen.size(); i++) {
      int e = seen.edges[i];
      for (; stray < e; stray++) {
        addStray(stray, i == 0 ? -1 : seen.revolution(seen.counts[i - 1]));
      }
      stray = e + 1;
      addSeen(i);
      if (i + 1 < seen.size() && !seen.fresh[i + 1]) {
        stray = bridge(i, stray);
      } else if (i + 1 < seen.size()) {
        Interval unknown = new Interval(seen.times[i], seen.times[i + 1]);
        undecided.add(unknown);
        if (isStandstill(e, seen.edges[i + 1])) {
          standstills.add(unknown);
        }
      }
    }
    for (; stray < series.size(); stray++) {
      addStray(stray, seen.size() == 0 ? 0 : seen.revolution(seen.counts[seen.size() - 1]));
    }
    ToothEvents named = events.build();
    return new DecodedWheel(
        pattern, named, GeometryFit.learn(named, pattern), undecided, standstills);
  }

  /** Whether the record was parted after one edge and up to another. */
  private boolean isStandstill(int before, int after) {
    return parts.stream().anyMatch(p -> p.from() > before && p.from() <= after);
  }

  private int bridge(int i, int firstStray) {
    long lost = seen.counts[i + 1] - seen.counts[i] - 1;
    if (lost == 0) {
      return firstStray;
    }
    int turns = 0;
    LossBridge best = LossBridge.between(seen, i, 0);
    if (lost > pattern.teeth() / 2) {
      for (int r = -3; r <= 3; r++) {
        if (r != 0 && seen.degrees[i + 1] - seen.degrees[i] + 360.0 * r > 0) {
          LossBridge b = LossBridge.between(seen, i, r);
          if (b.bulge() < best.bulge()) {
            best = b;
            turns = r;
          }
        }
      }
    }
    if (turns != 0) {
      seen.shiftTurns(i + 1, turns);
      lost = seen.counts[i + 1] - seen.counts[i] - 1;
    }
    int stray = firstStray;
    if (lost > (long) MOST_TURNS_BRIDGED * pattern.teeth()) {
      undecided.add(new Interval(seen.times[i], seen.times[i + 1]));
      return stray;
    }
    for (long m = 1; m <= lost; m++) {
      long count = seen.counts[i] + m;
      double t = best.timeAt(seen.degreesOf(count) - seen.degrees[i]);
      t = Math.min(Math.max(t, seen.times[i]), seen.times[i + 1]);
      while (stray < seen.edges[i + 1] && series.times[stray] <= t) {
        addStray(stray++, seen.revolution(count - 1));
      }
      events.add(
          new ToothEvent(t, 0, ToothKind.MISSING, seen.tooth(count), seen.revolution(count), 1, 0));
    }
    return stray;
  }

  private void addSeen(int i) {
    int e = seen.edges[i];
    events.add(
        new ToothEvent(
            series.times[e],
            series.uncertainties[e],
            ToothKind.SEEN,
            seen.tooth(seen.counts[i]),
            seen.revolution(seen.counts[i]),
            labels.confidences[e],
            series.strengths[e]));
  }

  /** Where the crank came to rest an edge may be a tooth on its way back, and is left out. */
  private void addStray(int e, int revolution) {
    if (!turning.get(e)) {
      return;
    }
    events.add(
        new ToothEvent(
            series.times[e],
            series.uncertainties[e],
            ToothKind.STRAY,
            0,
            revolution,
            labels.confidences[e],
            series.strengths[e]));
  }
}
