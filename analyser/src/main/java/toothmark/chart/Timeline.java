package toothmark.chart;

import org.jfree.data.Range;
import toothmark.examination.Examination;
import toothmark.units.Interval;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;

/** What several figures need of the whole capture. */
final class Timeline {

  private Timeline() {}

  /** The span of the crank channel. */
  static Range span(Examination e) {
    Interval span =
        e.observations()
            .capture()
            .channel(e.roles().crank())
            .map(c -> c.signal().span())
            .orElseGet(() -> e.observations().capture().span());
    return new Range(span.startInclusive(), span.endExclusive());
  }

  /** Speed of each whole turn, tooth 1 to tooth 1, at the middle of its time. */
  static Points turnSpeeds(Examination e) {
    Points speeds = new Points();
    if (e.teeth().isEmpty()) {
      return speeds;
    }
    ToothEvents teeth = e.teeth().get();
    int last = -1;
    for (int i = 0; i < teeth.size(); i++) {
      if (teeth.kind(i) == ToothKind.SEEN && teeth.tooth(i) == 1) {
        if (last >= 0 && teeth.revolution(i) == teeth.revolution(last) + 1) {
          double turn = teeth.time(i) - teeth.time(last);
          speeds.add(teeth.time(last) + turn / 2, 60 / turn);
        }
        last = i;
      }
    }
    return speeds;
  }
}
