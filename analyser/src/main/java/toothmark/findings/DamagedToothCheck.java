package toothmark.findings;

import java.util.List;
import java.util.Optional;
import toothmark.units.Say;

/** A tooth is bent, short or broken off. */
final class DamagedToothCheck extends CrankCheck {

  /** Deviation worth a look, as a share of the pitch: wheels are cut to better than 1 %. */
  private static final double WATCH_PITCH = 0.025;

  /** Deviation to mend: speed read from one tooth is then off by the same share. */
  private static final double FAULT_PITCH = 0.05;

  /** A tooth whose signal is weaker than this beside the others is short or worn. */
  private static final double WEAK = 0.6;

  /** Share of turns in which a tooth must be lost to be called broken. */
  private static final double LOST_SHARE = 0.5;

  @Override
  public String id() {
    return "damaged-tooth";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    List<LostTeeth> lost = crank.losses().of(Losses.TOOTH);
    double turns = Math.max(1, crank.turns().turned());
    if (!lost.isEmpty() && lost.size() >= LOST_SHARE * turns) {
      return Outcome.fires(broken(lost, turns));
    }
    Optional<RimForm.OddTooth> odd = worst(crank);
    if (odd.isEmpty()) {
      return crank.rim().isPresent() || !lost.isEmpty()
          ? Outcome.quiet()
          : Outcome.cannotRun(WheelRunOutCheck.TOO_FEW_TURNS);
    }
    return Outcome.fires(bent(odd.get(), crank, lost));
  }

  private static Optional<RimForm.OddTooth> worst(CrankSymptoms crank) {
    double pitch = crank.turns().pattern().pitchDegrees();
    return crank.rim().stream()
        .flatMap(r -> r.odd().stream())
        .filter(o -> size(o) > WATCH_PITCH * pitch)
        .findFirst();
  }

  private static double size(RimForm.OddTooth o) {
    return Math.abs(o.deviation().value()) - Say.EXPAND * o.deviation().standardUncertainty();
  }

  private Draft bent(RimForm.OddTooth odd, CrankSymptoms crank, List<LostTeeth> lost) {
    double pitch = crank.turns().pattern().pitchDegrees();
    boolean proven = size(odd) > FAULT_PITCH * pitch;
    double d = odd.deviation().value();
    return Draft.of(
            id(),
            proven ? Severity.FAULT : Severity.WATCH,
            "Tooth " + odd.number() + " of the trigger wheel is bent or damaged.")
        .probability(proven ? 0.97 : 0.75)
        .saw(
            "Tooth "
                + odd.number()
                + " passes "
                + Say.interval(
                    new toothmark.units.Measured(
                        Math.abs(d), odd.deviation().standardUncertainty()),
                    "°")
                + (d > 0 ? " late" : " early")
                + " in every turn, the same angle at all speeds.")
        .sawIf(
            odd.strength() < WEAK,
            "Its signal is " + Say.percent(odd.strength()) + " of the other teeth's.")
        .sawIf(!lost.isEmpty(), "It was lost " + Words.times(lost.size()) + ".")
        .ratherThan("Noise comes at random places; this is one tooth in every turn.")
        .ratherThan("A bolt head would add an edge; the count of teeth is right.")
        .next(inspect(odd.number()))
        .caution(Cautions.BY_HAND)
        .picture(Picture.WHEEL);
  }

  private Draft broken(List<LostTeeth> lost, double turns) {
    int number = lost.get(0).number();
    return Draft.of(
            id(), Severity.FAULT, "Tooth " + number + " of the trigger wheel is missing or short.")
        .probability(0.97)
        .saw(
            "Tooth "
                + number
                + " gives no edge in "
                + lost.size()
                + " of "
                + Say.number(turns, 0)
                + " turns; the teeth beside it are sound.")
        .ratherThan("An opening wire loses teeth at any place; this is always the same one.")
        .next(inspect(number))
        .caution(Cautions.BY_HAND)
        .picture(Picture.WHEEL)
        .where(lost.stream().map(LostTeeth::during).toList());
  }

  private static String inspect(int tooth) {
    return "Turn the engine by hand and look at tooth "
        + tooth
        + ", counted from the first after the gap.";
  }
}
