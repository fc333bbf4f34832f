package toothmark.findings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import toothmark.units.Interval;

/**
 * A finding while it is being written.
 *
 * <p>What it says is named by keys; the words stand in {@code findings.properties}, under the id of
 * the finding or, where several say the same, under {@code any}. Its title and next test need no
 * key: they are {@code title} and {@code next}.
 */
final class Draft {

  private final String id;
  private final Severity severity;
  private double probability = 1.0;
  private final List<String> evidence = new ArrayList<>();
  private final List<String> against = new ArrayList<>();
  private final List<String> toldApartFrom = new ArrayList<>();
  private String title = "";
  private final List<String> nextTest = new ArrayList<>();
  private String caution = "";
  private Picture picture = Picture.WAVEFORM;
  private final List<Interval> where = new ArrayList<>();
  private OptionalInt tooth = OptionalInt.empty();

  private Draft(String id, Severity severity) {
    this.id = id;
    this.severity = severity;
  }

  static Draft of(String id, Severity severity) {
    return new Draft(id, severity);
  }

  /** A title other than the finding's usual one. */
  Draft title(String key, Object... values) {
    title = phrase(key, values);
    return this;
  }

  /** How sure the cause is; a certain one is still given no more than 0.999. */
  Draft probability(double p) {
    probability = p;
    return this;
  }

  /** What was seen. */
  Draft saw(String key, Object... values) {
    evidence.add(phrase(key, values));
    return this;
  }

  /** What was seen, told of a number of things. */
  Draft saw(int n, String key, Object... more) {
    evidence.add(Words.count(n, home(key + ".many") + key, more));
    return this;
  }

  /** What was seen, where there is something to say. */
  Draft sawIf(boolean holds, String key, Object... values) {
    return holds ? saw(key, values) : this;
  }

  /** What speaks against it. */
  Draft against(String key, Object... values) {
    against.add(phrase(key, values));
    return this;
  }

  /** What else it could have been, and why it is not. */
  Draft ratherThan(String key, Object... values) {
    toldApartFrom.add(phrase(key, values));
    return this;
  }

  /** A next test other than the finding's usual one, sentence by sentence. */
  Draft next(String key, Object... values) {
    nextTest.add(phrase(key, values));
    return this;
  }

  /** What not to do, in some sentences. */
  Draft caution(String... keys) {
    caution = Arrays.stream(keys).map(this::phrase).collect(Collectors.joining(" "));
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
        title.isEmpty() ? phrase("title") : title,
        evidence,
        against,
        toldApartFrom,
        nextTest.isEmpty() ? phrase("next") : String.join(" ", nextTest),
        caution,
        picture,
        where,
        tooth);
  }

  private String phrase(String key, Object... values) {
    return Words.of(home(key) + key, values);
  }

  /** Where a phrase stands in the book: with the finding, or with those that any may say. */
  private String home(String key) {
    return Words.has(id + "." + key) ? id + "." : "any.";
  }
}
