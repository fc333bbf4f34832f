package toothmark.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import toothmark.units.Interval;

/** A finding while it is being written. */
final class Draft {

  private final String id;
  private final Severity severity;
  private final String title;
  private double probability = 1.0;
  private final List<String> evidence = new ArrayList<>();
  private final List<String> against = new ArrayList<>();
  private final List<String> toldApartFrom = new ArrayList<>();
  private String nextTest = "";
  private String caution = "";
  private Picture picture = Picture.WAVEFORM;
  private final List<Interval> where = new ArrayList<>();
  private OptionalInt tooth = OptionalInt.empty();

  private Draft(String id, Severity severity, String title) {
    this.id = id;
    this.severity = severity;
    this.title = title;
  }

  static Draft of(String id, Severity severity, String title) {
    return new Draft(id, severity, title);
  }

  /** How sure the cause is; a certain one is still given no more than 0.999. */
  Draft probability(double p) {
    probability = p;
    return this;
  }

  /** What was seen. */
  Draft saw(String sentence) {
    evidence.add(sentence);
    return this;
  }

  /** What was seen, where there is something to say. */
  Draft sawIf(boolean holds, String sentence) {
    return holds ? saw(sentence) : this;
  }

  /** What speaks against it. */
  Draft against(String sentence) {
    against.add(sentence);
    return this;
  }

  /** What else it could have been, and why it is not. */
  Draft ratherThan(String sentence) {
    toldApartFrom.add(sentence);
    return this;
  }

  Draft next(String sentence) {
    nextTest = sentence;
    return this;
  }

  Draft caution(String sentence) {
    caution = sentence;
    return this;
  }

  Draft picture(Picture p) {
    picture = p;
    return this;
  }

  Draft where(List<Interval> spans) {
    where.addAll(spans);
    return this;
  }

  /** The tooth that it is about, from 1. */
  Draft tooth(int number) {
    tooth = OptionalInt.of(number);
    return this;
  }

  Finding finish() {
    double p = Math.max(0.001, Math.min(0.999, probability));
    return new Finding(
        id,
        severity,
        p,
        title,
        evidence,
        against,
        toldApartFrom,
        nextTest,
        caution,
        picture,
        where,
        tooth);
  }
}
