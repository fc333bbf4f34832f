package toothmark.ignition;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import toothmark.rotation.AngleTimeline;

/** Where the crank was at each firing of a channel. */
final class Placed {

  private final Firings firings;
  private final List<Optional<CrankPoint>> points;

  private Placed(Firings firings, List<Optional<CrankPoint>> points) {
    this.firings = firings;
    this.points = points;
  }

  static Placed of(Firings firings, AngleTimeline timeline) {
    List<Optional<CrankPoint>> points = new ArrayList<>(firings.size());
    for (int i = 0; i < firings.size(); i++) {
      points.add(CrankPoint.at(firings.spark(i), timeline));
    }
    return new Placed(firings, points);
  }

  int size() {
    return points.size();
  }

  /** Time of the spark, s. */
  double time(int index) {
    return firings.spark(index);
  }

  Optional<CrankPoint> crank(int index) {
    return points.get(index);
  }
}
