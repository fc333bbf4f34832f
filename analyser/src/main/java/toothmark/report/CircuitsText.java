package toothmark.report;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import toothmark.examination.InputReplay;
import toothmark.examination.InputReplay.ToothMargin;
import toothmark.receiver.ConditionerReplay.Result;
import toothmark.receiver.SyncLoss;
import toothmark.report.VerdictText.Line;
import toothmark.report.VerdictText.Role;
import toothmark.units.Say;

/** What other input circuits would have made of a record, for a terminal. */
public final class CircuitsText {

  static final List<String> HEADS = List.of("teeth", "strays", "cranking", "running");

  private CircuitsText() {}

  /**
   * Says what became of a record in each circuit.
   *
   * @param file the capture
   * @param replay of that capture
   * @param results of its circuits
   * @param width columns of the screen
   * @return the lines
   */
  public static List<Line> of(String file, InputReplay replay, List<Result> results, int width) {
    ScreenLines lines = new ScreenLines(width);
    lines.wrap(Role.VERDICT, "", Wording.of("circuits.of", file));
    lines.gap();
    for (Result r : results) {
      lines.wrap(Role.PLAIN, "", r.conditioner().description());
      List<String> counts = counts(r);
      StringBuilder text = new StringBuilder();
      for (int i = 0; i < HEADS.size(); i++) {
        text.append(i > 0 ? ", " : "")
            .append(Wording.of("circuits.head." + HEADS.get(i)).toLowerCase(Locale.ROOT));
        text.append(' ').append(counts.get(i));
      }
      lines.figure(" ", text.toString());
    }
    lines.gap();
    lines.figure(Wording.of("circuits.margin"), margin(replay.armingMargins()));
    lines.wrap(Role.NOTE, "", Wording.of("circuits.caution"));
    return lines.lines();
  }

  /** Of one circuit, under {@link #HEADS}. */
  static List<String> counts(Result r) {
    return List.of(
        Say.count(r.teethLost()),
        Say.count(r.straysAdmitted()),
        Say.count(r.trace().losses(SyncLoss.Phase.CRANKING)),
        Say.count(r.trace().losses(SyncLoss.Phase.RUNNING)));
  }

  /** The tooth that comes nearest to not arming the reference circuit. */
  static String margin(List<ToothMargin> margins) {
    ToothMargin least =
        margins.stream().min(Comparator.comparingDouble(ToothMargin::least)).orElseThrow();
    ToothMargin weakest =
        margins.stream().min(Comparator.comparingDouble(ToothMargin::median)).orElseThrow();
    return Wording.of(
        "circuits.least",
        Say.number(least.least(), 2),
        least.tooth(),
        Say.at(least.atSeconds()),
        weakest.tooth(),
        Say.number(weakest.median(), 1));
  }
}
