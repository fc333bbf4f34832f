package toothmark.desktop;

import java.util.OptionalDouble;
import java.util.OptionalInt;
import toothmark.examination.Examination;
import toothmark.rotation.AngleTimeline;
import toothmark.rotation.DecodedCrank;
import toothmark.units.Say;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;

/**
 * Two instants to measure between.
 *
 * @param first s
 * @param second s
 */
record Cursors(OptionalDouble first, OptionalDouble second) {

  static final Cursors NONE = new Cursors(OptionalDouble.empty(), OptionalDouble.empty());

  Cursors withFirst(double timeSeconds) {
    return new Cursors(OptionalDouble.of(timeSeconds), second);
  }

  Cursors withSecond(double timeSeconds) {
    return new Cursors(first, OptionalDouble.of(timeSeconds));
  }

  /**
   * What lies between them.
   *
   * @param seconds from the first to the second; negative where the second is earlier
   * @param degrees the crank turned meanwhile; empty where its angle is not known
   * @param teeth seen or missing in between; empty where there is no decoding
   * @param rpm mean speed in between, rev/min
   */
  record Reading(double seconds, OptionalDouble degrees, OptionalInt teeth, OptionalDouble rpm) {

    String say() {
      StringBuilder s = new StringBuilder(Say.seconds(seconds));
      degrees.ifPresent(d -> s.append("  ").append(Say.number(d, 2)).append('°'));
      teeth.ifPresent(t -> s.append("  ").append(Phrases.of("cursor.teeth", Say.count(t))));
      rpm.ifPresent(r -> s.append("  ").append(Say.rpm(r)));
      return s.toString();
    }
  }

  /** Measures; both cursors must be set. */
  Reading measure(Examination e) {
    double a = first.getAsDouble();
    double b = second.getAsDouble();
    OptionalDouble degrees =
        e.observations()
            .crank()
            .map(DecodedCrank::angle)
            .filter(t -> t.covers(a) && t.covers(b))
            .map(t -> OptionalDouble.of(turned(t, a, b)))
            .orElse(OptionalDouble.empty());
    OptionalInt teeth =
        e.teeth().map(t -> OptionalInt.of(between(t, a, b))).orElse(OptionalInt.empty());
    OptionalDouble rpm =
        degrees.isPresent() && a != b
            ? OptionalDouble.of(degrees.getAsDouble() / (b - a) / 6)
            : OptionalDouble.empty();
    return new Reading(b - a, degrees, teeth, rpm);
  }

  private static double turned(AngleTimeline t, double a, double b) {
    return t.degreesAt(b) - t.degreesAt(a);
  }

  private static int between(ToothEvents teeth, double a, double b) {
    int n = 0;
    for (int i = Teeth.firstFrom(teeth, Math.min(a, b));
        i < teeth.size() && teeth.time(i) < Math.max(a, b);
        i++) {
      n += teeth.kind(i) == ToothKind.STRAY ? 0 : 1;
    }
    return n;
  }
}
