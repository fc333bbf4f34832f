package toothmark.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import toothmark.units.Interval;

/**
 * One thing found, with its proof and the next test to make.
 *
 * @param id lower-case words of the trade joined by hyphens; the page of that name in {@code
 *     docs/findings} explains it
 * @param severity how much it matters
 * @param probability how sure the cause is, 0 to 1
 * @param title one sentence
 * @param evidence what was seen, one sentence each, with numbers, units and limits
 * @param against what speaks against it; may be empty
 * @param toldApartFrom what else it could have been and why it is not; may be empty
 * @param nextTest the next physical test, with the least dismantling
 * @param caution what not to do; may be empty
 * @param picture the picture that proves it
 * @param where spans of time in which it shows, s; empty when it is everywhere
 * @param tooth the tooth that it is about, from 1; empty when it is about none in particular
 */
public record Finding(
    String id,
    Severity severity,
    double probability,
    String title,
    List<String> evidence,
    List<String> against,
    List<String> toldApartFrom,
    String nextTest,
    String caution,
    Picture picture,
    List<Interval> where,
    OptionalInt tooth) {

  /** Copies the lists. */
  public Finding {
    evidence = List.copyOf(evidence);
    against = List.copyOf(against);
    toldApartFrom = List.copyOf(toldApartFrom);
    where = List.copyOf(where);
  }

  /**
   * What a finding is called within a sentence.
   *
   * @param id of a finding
   * @return words in lower case
   * @throws java.util.MissingResourceException if there is no such finding
   */
  public static String name(String id) {
    return Words.of(id + ".name");
  }

  /**
   * What it means, for the owner of the engine.
   *
   * @return two or three plain sentences
   */
  public String forOwner() {
    return Words.of(id + ".owner");
  }

  /**
   * Who does what about it, for the owner of the engine.
   *
   * @return one or two plain sentences
   */
  public String nextForOwner() {
    return Words.of(id + ".owner-next");
  }

  /** The same, not proven because of what speaks against it; times how sure its ground is. */
  Finding doubted(double ground, String why) {
    List<String> more = new ArrayList<>(against);
    more.add(why);
    return new Finding(
        id,
        Severity.WATCH,
        probability * ground,
        title,
        evidence,
        more,
        toldApartFrom,
        nextTest,
        caution,
        picture,
        where,
        tooth);
  }
}
