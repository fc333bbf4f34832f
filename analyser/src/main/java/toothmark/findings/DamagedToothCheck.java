package toothmark.findings;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import toothmark.units.CrankAngle;
import toothmark.units.Measured;
import toothmark.units.Say;
import toothmark.wheel.WheelPattern;

/** A tooth is bent, short or broken off. */
final class DamagedToothCheck extends CrankCheck {

  /** Deviation worth a look, as a share of the pitch: wheels are cut to better than 1 %. */
  private static final double WATCH_PITCH = 0.025;

  /** Deviation to mend: speed read from one tooth is then off by the same share. */
  private static final double FAULT_PITCH = 0.05;

  /** A tooth whose signal is weaker than this beside the others is short or worn. */
  private static final double WEAK = 0.6;

  /** Turns from which on it is said of a tooth that it is weak. */
  private static final int FEWEST_TURNS = 5;

  /** Share of turns in which a tooth must be lost to be called broken. */
  private static final double LOST_SHARE = 0.5;

  @Override
  public String id() {
    return "damaged-tooth";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    WheelPattern pattern = crank.turns().pattern();
    List<LostTeeth> lost =
        crank.losses().of(Losses.TOOTH).stream()
            .filter(l -> !pattern.isCrowded(l.number()))
            .toList();
    double turns = Math.max(1, crank.turns().turned());
    if (!lost.isEmpty() && lost.size() >= LOST_SHARE * turns) {
      return Outcome.fires(broken(lost, turns, crank, seen));
    }
    Optional<RimForm.OddTooth> odd = worst(crank);
    if (odd.isEmpty()) {
      OptionalInt weak = turns < FEWEST_TURNS ? OptionalInt.empty() : weak(crank);
      if (weak.isPresent()) {
        return Outcome.fires(weak(weak.getAsInt(), crank));
      }
      return crank.rim().isPresent() || !lost.isEmpty()
          ? Outcome.quiet()
          : Outcome.cannotRun("few-turns");
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

  private static OptionalInt weak(CrankSymptoms crank) {
    WheelPattern pattern = crank.turns().pattern();
    return crank.swings().stream()
        .mapToInt(w -> w.weakest(pattern))
        .filter(k -> crank.swings().get().besideNeighbours(pattern, k) < WEAK)
        .findFirst();
  }

  private Draft weak(int number, CrankSymptoms crank) {
    double share = crank.swings().get().besideNeighbours(crank.turns().pattern(), number);
    return Draft.of(id(), Severity.FAULT)
        .title("weak-tooth", number)
        .probability(0.95)
        .saw("weak", Say.percent(share))
        .ratherThan("run-out")
        .tooth(number)
        .next("look", number)
        .caution("by-hand")
        .picture(Picture.WHEEL);
  }

  private Draft bent(RimForm.OddTooth odd, CrankSymptoms crank, List<LostTeeth> lost) {
    double pitch = crank.turns().pattern().pitchDegrees();
    boolean proven = size(odd) > FAULT_PITCH * pitch;
    double d = odd.deviation().value();
    return Draft.of(id(), proven ? Severity.FAULT : Severity.WATCH)
        .title("bent-tooth", odd.number())
        .probability(proven ? 0.97 : 0.75)
        .saw(
            d > 0 ? "late" : "early",
            odd.number(),
            Say.interval(new Measured(Math.abs(d), odd.deviation().standardUncertainty()), "°"))
        .sawIf(odd.strength() < WEAK, "faint", Say.percent(odd.strength()))
        .sawIf(!lost.isEmpty(), "lost", Words.times(lost.size()))
        .ratherThan("noise")
        .ratherThan("bolt-head")
        .tooth(odd.number())
        .next("look", odd.number())
        .caution("by-hand")
        .picture(Picture.WHEEL);
  }

  /**
   * Whether an edge that is no tooth, at a place after tooth 1 in degrees, is that of the tooth
   * that is lost turn after turn: it stands within half a pitch of where the tooth should.
   */
  static boolean outOfPlace(CrankSymptoms crank, double place) {
    WheelPattern pattern = crank.turns().pattern();
    List<LostTeeth> lost = crank.losses().of(Losses.TOOTH);
    return !lost.isEmpty()
        && Math.abs(
                CrankAngle.wrapDifference(place - pattern.degreesAfterTooth1(lost.get(0).number())))
            < pattern.pitchDegrees() / 2;
  }

  private static Optional<Double> movedDegrees(CrankSymptoms crank, int number) {
    double own = crank.turns().pattern().degreesAfterTooth1(number);
    double[] moved =
        crank.strays().of(StraySources.FEATURE).stream()
            .mapToDouble(s -> CrankAngle.wrapDifference(Strays.place(s) - own))
            .sorted()
            .toArray();
    return Optional.of(moved)
        .filter(m -> m.length > 0 && outOfPlace(crank, own + m[m.length / 2]))
        .map(m -> m[m.length / 2]);
  }

  private Draft broken(List<LostTeeth> lost, double turns, CrankSymptoms crank, Observations seen) {
    int number = lost.get(0).number();
    Optional<Double> moved = movedDegrees(crank, number);
    Draft d =
        Draft.of(id(), Severity.FAULT)
            .title(moved.isPresent() ? "moved-tooth" : "missing-tooth", number);
    String of = Say.number(turns, 0);
    moved.ifPresentOrElse(
        m ->
            d.saw(
                m > 0 ? "edge-late" : "edge-early",
                number,
                Say.degrees(Math.abs(m)),
                lost.size(),
                of),
        () -> d.saw("no-edge", number, lost.size(), of));
    OptionalInt other = moved.isPresent() ? OptionalInt.empty() : exchanged(crank, number, seen);
    other.ifPresent(t -> d.against("gap-alike", number, t));
    return d.probability(0.97)
        .ratherThan("open-wire")
        .tooth(number)
        .next("look", number)
        .caution("by-hand")
        .picture(Picture.WHEEL)
        .where(lost.stream().map(LostTeeth::during).toList());
  }

  /**
   * The number the missing tooth has if it is the gap that was taken for it; empty where the gap is
   * wider than one tooth, or top dead centre bears out the count.
   */
  private static OptionalInt exchanged(CrankSymptoms crank, int missing, Observations seen) {
    WheelPattern pattern = crank.turns().pattern();
    double off = Math.abs(seen.timing().wheelOffDegrees().orElse(Double.POSITIVE_INFINITY));
    boolean alike = Arrays.equals(pattern.gapLengths(), new int[] {1});
    return alike && off > pattern.pitchDegrees() / 2
        ? OptionalInt.of(pattern.slots() - missing)
        : OptionalInt.empty();
  }
}
