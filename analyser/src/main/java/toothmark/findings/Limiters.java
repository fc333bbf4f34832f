package toothmark.findings;

import java.util.List;
import toothmark.timing.Limiter;
import toothmark.units.Interval;

/** What the checks of limiters have in common. */
final class Limiters {

  private Limiters() {}

  static List<Limiter> of(Observations seen, Limiter.Manner manner) {
    return seen.timing().limiters().stream().filter(l -> l.manner() == manner).toList();
  }

  static List<Interval> spans(List<Limiter> limiters) {
    return limiters.stream().map(Limiter::during).toList();
  }

  static double fromRpm(List<Limiter> limiters) {
    return limiters.stream().mapToDouble(Limiter::fromRpm).min().orElse(0);
  }

  static int sparks(List<Limiter> limiters) {
    return limiters.stream().mapToInt(Limiter::sparks).sum();
  }

  static int due(List<Limiter> limiters) {
    return limiters.stream().mapToInt(Limiter::due).sum();
  }
}
