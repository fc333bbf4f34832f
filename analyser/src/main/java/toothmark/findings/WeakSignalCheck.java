package toothmark.findings;

import java.util.List;
import toothmark.edges.SensorKind;
import toothmark.receiver.SyncLoss;
import toothmark.units.Say;

/** The sensor's wave is too small: the air gap is too wide, or the sensor is failing. */
final class WeakSignalCheck extends CrankCheck {

  /**
   * Least peak-to-peak voltage while cranking to be content with, V. Usual is 0.2 to 2 V, below 0.3
   * V is marginal (common practice, no source); a third more for wear and heat.
   */
  private static final double MARGINAL_VOLTS = 0.4;

  /** Below this it is outside of what is usual, V. */
  private static final double TOO_LOW_VOLTS = 0.2;

  /** Usual cranking speed, rev/min (common practice, no source). */
  private static final double CRANKING_RPM = 200;

  /** Times that slow teeth are missed in a list, from which on it is no chance. */
  private static final int FEWEST_LISTED = 4;

  /** The input's threshold may be to blame as well as the sensor. */
  private static final double LISTED_PROBABILITY = 0.9;

  @Override
  public String id() {
    return Losses.SLOW;
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    if (seen.edges().kind() == SensorKind.EDGES_ONLY) {
      return listed(crank);
    }
    if (seen.scale() == Observations.Scale.UNKNOWN) {
      return seen.noVolts();
    }
    if (crank.swings().isEmpty()) {
      return Outcome.cannotRun("no-air-gap");
    }
    double volts = crankingVolts(crank);
    if (volts >= MARGINAL_VOLTS) {
      return Outcome.quiet();
    }
    List<LostTeeth> lost = lost(crank);
    int strays = strays(crank);
    return SensorClippedCheck.cutsOff(seen) && lost.size() + strays == 0
        ? Outcome.cannotRun("cut-off")
        : Outcome.fires(draft(crank, volts, lost, strays));
  }

  /** A list of edges shows no height, but which teeth the input stage missed. */
  private Outcome listed(CrankSymptoms crank) {
    List<LostTeeth> lost = crank.losses().of(id()).stream().filter(l -> cranking(l.rpm())).toList();
    if (lost.size() < FEWEST_LISTED) {
      return Outcome.cannotRun("no-air-gap");
    }
    double fastest = lost.stream().mapToDouble(LostTeeth::rpm).max().orElseThrow();
    return Outcome.fires(
        Draft.of(id(), Severity.FAULT)
            .probability(LISTED_PROBABILITY * crank.losses().part(id()).orElseThrow().probability())
            .saw("slow-teeth", Words.times(lost.size()), Say.rpm(fastest))
            .ratherThan("open-wire")
            .ratherThan("threshold")
            .caution("run-out")
            .picture(Picture.SYNC)
            .where(lost.stream().map(LostTeeth::during).toList()));
  }

  /** The height in proportion to speed at a usual cranking speed, V from peak to peak. */
  static double crankingVolts(CrankSymptoms crank) {
    return crank.swings().get().peakToPeakVolts(crank.turns().pattern().slots(), CRANKING_RPM);
  }

  /**
   * Whether the height is outside of what is usual, while the engine runs and no tooth is missed
   * nor noise taken for one on the starter: as by a probe that divides by ten too much.
   */
  static boolean onlyLow(CrankSymptoms crank) {
    return crankingVolts(crank) < TOO_LOW_VOLTS
        && !cranking(crank.turns().crank().speed().maxRpm())
        && lost(crank).isEmpty()
        && strays(crank) == 0;
  }

  private static List<LostTeeth> lost(CrankSymptoms crank) {
    return crank.losses().events().stream().filter(l -> cranking(l.rpm())).toList();
  }

  private static int strays(CrankSymptoms crank) {
    return (int)
        crank.strays().events().stream()
            .filter(s -> cranking(s.rpm()) && s.effect() == Stray.Effect.EDGE)
            .count();
  }

  private Draft draft(CrankSymptoms crank, double volts, List<LostTeeth> lost, int strays) {
    boolean trouble = lost.size() + strays > 0;
    boolean onlyLow = onlyLow(crank);
    boolean proven = trouble || volts < TOO_LOW_VOLTS && !onlyLow;
    Draft d = Draft.of(id(), proven ? Severity.FAULT : Severity.WATCH);
    d.probability(trouble ? 0.96 : proven ? 0.9 : onlyLow ? 0.5 : 0.7)
        .saw("height", Say.scaled(volts, "V"), Say.rpm(CRANKING_RPM));
    if (onlyLow) {
      d.against("runs");
    }
    d.sawIf(!lost.isEmpty(), "misses", Words.times(lost.size()));
    d.sawIf(strays > 0, "noise", Words.times(strays));
    return d.ratherThan("open-wire")
        .ratherThan("probe")
        .caution("run-out")
        .picture(Picture.WAVEFORM)
        .where(lost.stream().map(LostTeeth::during).toList());
  }

  private static boolean cranking(double rpm) {
    return rpm < SyncLoss.CRANKING_BELOW_RPM;
  }
}
