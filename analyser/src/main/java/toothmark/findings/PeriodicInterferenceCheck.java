package toothmark.findings;

import java.util.List;
import java.util.Optional;
import toothmark.units.Say;

/** A steady hum rides on the crank signal: mains, alternator, a pump. */
final class PeriodicInterferenceCheck extends CrankCheck {

  @Override
  public String id() {
    return StraySources.PERIODIC;
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    Optional<Hum> hum = crank.hum();
    List<Stray> own = crank.strays().of(id());
    if (hum.isEmpty() && own.isEmpty()) {
      return Outcome.quiet();
    }
    boolean strong = hum.map(Hum::strong).orElse(false) || own.size() >= 8;
    Draft d =
        Draft.of(
                id(),
                strong ? Severity.FAULT : Severity.WATCH,
                "A steady hum rides on the crank signal.")
            .probability(strong ? 0.93 : 0.6);
    hum.ifPresent(h -> h.describe(d));
    if (!own.isEmpty()) {
      double[] t = own.stream().mapToDouble(Stray::timeSeconds).toArray();
      d.saw(
          Words.count(own.size(), "extra edge comes", "extra edges come")
              + " in step with "
              + Say.scaled(strongest(crank.turns(), t), "Hz")
              + ".");
    }
    return Outcome.fires(
        d.ratherThan("The engine's own ripple keeps step with its turns; this does not.")
            .next(
                "Switch off chargers, pumps and the alternator's field one by one while watching"
                    + " the trace; then check the shield and the ground of the sensor.")
            .caution("Ground a shield at one end only. " + Cautions.TURNING)
            .picture(Picture.TOOTH_PERIOD)
            .where(IgnitionInterferenceCheck.spans(own)));
  }

  private static double strongest(Turns turns, double[] times) {
    return PeriodicStrays.strongest(times, turns.span().seconds(), turns.teethHertz());
  }
}
