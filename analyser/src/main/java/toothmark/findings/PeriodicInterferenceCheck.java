package toothmark.findings;

import java.util.List;
import toothmark.edges.Hum;
import toothmark.units.Say;

/** A steady hum rides on the crank signal: mains, alternator, a pump. */
final class PeriodicInterferenceCheck extends CrankCheck {

  @Override
  public String id() {
    return StraySources.PERIODIC;
  }

  /** Movement of teeth that matters, degrees: a tenth of the 2 degrees that makers allow. */
  private static final double STRONG_DEGREES = 0.2;

  private static final double WATCH_DEGREES = 0.08;

  /** This many strays in step are no chance. */
  private static final int PROVEN = 8;

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    double mains = seen.edges().quality().hum().map(h -> moves(h, crank)).orElse(0.0);
    List<Stray> own = crank.strays().of(id());
    if (mains < WATCH_DEGREES && crank.hum().isEmpty() && own.isEmpty()) {
      return Outcome.quiet();
    }
    return Outcome.fires(draft(seen, crank, mains, own));
  }

  private Draft draft(Observations seen, CrankSymptoms crank, double mains, List<Stray> own) {
    double degrees = Math.max(mains, crank.hum().map(ToothHum::degrees).orElse(0.0));
    int inGap = crank.hum().map(h -> crank.strays().of(StraySources.GAP).size()).orElse(0);
    boolean strong = degrees >= STRONG_DEGREES || own.size() >= PROVEN || inGap >= PROVEN;
    Draft d =
        Draft.of(id(), strong ? Severity.FAULT : Severity.WATCH).probability(strong ? 0.93 : 0.6);
    if (mains >= WATCH_DEGREES) {
      Hum h = seen.edges().quality().hum().orElseThrow();
      d.saw(
          "hum",
          Say.scaled(h.frequencyHz(), "Hz"),
          Words.height(h.amplitude(), seen),
          Say.degrees(mains));
    }
    crank.hum().ifPresent(h -> h.describe(d));
    if (inGap > 0) {
      d.saw(inGap, "in-gap");
    }
    double[] t = own.stream().mapToDouble(Stray::timeSeconds).toArray();
    PeriodicStrays.strongest(t, crank.turns())
        .ifPresent(f -> d.saw(own.size(), "in-step", Say.scaled(f, "Hz")));
    return d.ratherThan("ripple")
        .caution("shield", "turning")
        .picture(Picture.TOOTH_PERIOD)
        .where(IgnitionInterferenceCheck.spans(own));
  }

  /**
   * How far a hum moves the zero crossings of a sine of the teeth's height at the mean speed:
   * asin(hum / height) / N.
   */
  private static double moves(Hum hum, CrankSymptoms crank) {
    Turns turns = crank.turns();
    double rpm = turns.crank().speed().meanRpm();
    double height =
        crank.swings().map(w -> w.peakToPeakVolts(turns.pattern().slots(), rpm) / 2).orElse(0.0);
    double share = height > 0 ? Math.min(1, hum.amplitude() / height) : 0;
    return Math.toDegrees(Math.asin(share)) / turns.pattern().slots();
  }
}
