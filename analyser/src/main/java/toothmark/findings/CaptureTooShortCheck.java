package toothmark.findings;

import toothmark.edges.EdgeTrain;
import toothmark.units.Say;
import toothmark.wheel.WheelPattern;

/** The capture holds too few turns to be sure of anything. */
final class CaptureTooShortCheck implements Check {

  /** A gap must come by twice before its repeating can be seen. */
  private static final double FEWEST_TURNS = 2;

  /** Fewer turns than this show a fault of the wheel too seldom to call it proven. */
  private static final double SPARSE_TURNS = 4;

  /** Two turns of the finest usual wheel, 60 slots, in edges. */
  private static final int FEW_EDGES = 120;

  /** So long two turns take on a starter at 200 rev/min; common practice, no source. */
  private static final double SHORT_SECONDS = 0.6;

  /** A regular train of edges: most intervals within this factor of the median. */
  private static final double REGULAR = 1.6;

  @Override
  public String id() {
    return "capture-too-short";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    double turned = symptoms.crank().map(c -> turned(c, symptoms.seen())).orElse(0.0);
    if (symptoms.crank().isPresent() ? turned >= SPARSE_TURNS : !shortOfTurns(symptoms.seen())) {
      return Outcome.quiet();
    }
    Severity severity = turned < FEWEST_TURNS ? Severity.FAULT : Severity.WATCH;
    Draft d = Draft.of(id(), severity);
    String span = Say.seconds(symptoms.seen().capture().span().seconds());
    String needed = Say.number(SPARSE_TURNS, 0);
    if (symptoms.crank().isPresent()) {
      d.saw("few-turns", span, Say.number(turned, 1), needed);
    } else {
      d.saw("few-teeth", span, needed);
    }
    return Outcome.fires(
        d.probability(0.97)
            .ratherThan("dead-sensor")
            .caution("turning")
            .picture(Picture.TOOTH_PERIOD));
  }

  /** Where no gap shows, a turn may be as many teeth as the wheel told has, or the finest usual. */
  private static double turned(CrankSymptoms crank, Observations seen) {
    WheelPattern found = crank.turns().pattern();
    if (found.hasReference() || seen.capture().span().seconds() > SHORT_SECONDS) {
      return crank.turns().turned();
    }
    int teeth = seen.stated().pattern().map(WheelPattern::teeth).orElse(FEW_EDGES / 2);
    return (double) crank.turns().teeth() / Math.max(found.teeth(), teeth);
  }

  /** Whether an undecoded capture looks like a sound signal cut short. */
  static boolean shortOfTurns(Observations seen) {
    EdgeTrain train = seen.edges().falling();
    if (train.size() < 5 || train.size() >= FEW_EDGES) {
      return train.size() < 5
          && seen.capture().span().seconds() < SHORT_SECONDS
          && NoCrankSignalCheck.hasWave(seen);
    }
    double[] d = new double[train.size() - 1];
    for (int i = 0; i < d.length; i++) {
      d[i] = train.time(i + 1) - train.time(i);
    }
    double median = d.clone().length == 0 ? 0 : median(d);
    int regular = 0;
    for (double x : d) {
      regular += x < median * REGULAR && x > median / REGULAR ? 1 : 0;
    }
    return regular >= 0.8 * d.length;
  }

  private static double median(double[] d) {
    double[] s = d.clone();
    java.util.Arrays.sort(s);
    return s[s.length / 2];
  }
}
