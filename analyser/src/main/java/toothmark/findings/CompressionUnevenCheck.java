package toothmark.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.TDistribution;
import toothmark.units.Measured;
import toothmark.units.Say;

/** One cylinder, or some, compress less than the others. */
final class CompressionUnevenCheck extends CrankCheck {

  /** Compression tests allow the lowest cylinder 10 to 25 % less (common practice, no source). */
  private static final double WATCH = 0.15;

  /** Chance that a sound cylinder reads so low: that of three standard deviations. */
  private static final double CHANCE = 0.00135;

  @Override
  public String id() {
    return "compression-uneven";
  }

  @Override
  Outcome examine(Observations seen, CrankSymptoms crank) {
    if (seen.stated().cylinders() < 2) {
      return Outcome.cannotRun("one-cylinder");
    }
    Optional<Cranking> found = Cranking.of(seen).filter(c -> !c.compressions().isEmpty());
    if (found.isEmpty()) {
      return Outcome.cannotRun("few-compressions");
    }
    Cranking c = found.get();
    List<Cranking.Compression> weak = weak(c);
    if (weak.isEmpty()) {
      return Outcome.quiet();
    }
    return Outcome.fires(draft(c, weak));
  }

  private Draft draft(Cranking c, List<Cranking.Compression> weak) {
    boolean one = weak.size() == 1;
    boolean either = weak.get(0).cylinders().size() > 1;
    Draft d =
        Draft.of(id(), Severity.WATCH)
            .title(one ? "one-cylinder" : "some-cylinders")
            .probability(0.75)
            .saw("shares", c.cycles(), Say.rpm(c.meanRpm()), c.shares());
    weak.stream()
        .map(w -> Words.either(w.cylinders()))
        .filter(w -> !w.isEmpty())
        .reduce((a, b) -> Words.of("list.also", a, b))
        .ifPresent(
            w ->
                d.saw(
                    one
                        ? either ? "it-is-either" : "it-is"
                        : either ? "they-are-either" : "they-are",
                    w));
    return d.against("starter-sags")
        .ratherThan("wheel-errors")
        .caution("fuel-off", "starter")
        .picture(Picture.SPEED);
  }

  private static List<Cranking.Compression> weak(Cranking c) {
    List<Cranking.Compression> all = c.compressions();
    int freedom = all.size() * (c.cycles() - 1);
    double sure = new TDistribution(freedom).inverseCumulativeProbability(1 - CHANCE);
    List<Cranking.Compression> weak = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      Measured own = all.get(i).share();
      boolean here = below(own, median(all, i), sure);
      // an error of the wheel reads alike a turn on
      int turnOn = (i + all.size() / 2) % all.size();
      if (here && (all.size() % 2 != 0 || below(own, all.get(turnOn).share(), sure))) {
        weak.add(all.get(i));
      }
    }
    return weak;
  }

  private static boolean below(Measured own, Measured other, double sure) {
    double below = other.value() - own.value();
    return below > WATCH * other.value()
        && below > sure * Math.hypot(own.standardUncertainty(), other.standardUncertainty());
  }

  /** The middle one of the others, the stronger of two. */
  private static Measured median(List<Cranking.Compression> all, int but) {
    List<Measured> others = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      if (i != but) {
        others.add(all.get(i).share());
      }
    }
    others.sort((a, b) -> Double.compare(a.value(), b.value()));
    return others.get(others.size() / 2);
  }
}
