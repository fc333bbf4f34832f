package toothmark.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
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
      return Outcome.cannotRun("The job sheet does not say that there are two cylinders or more.");
    }
    Optional<Cranking> found = Cranking.of(seen).filter(c -> !c.compressions().isEmpty());
    if (found.isEmpty()) {
      return Outcome.cannotRun(
          "Compressions can be compared only over two engine cycles or more on the starter, of"
              + " cylinders that fire evenly, with 12 teeth or more.");
    }
    Cranking c = found.get();
    List<Cranking.Compression> weak = weak(c);
    if (weak.isEmpty()) {
      return Outcome.quiet();
    }
    boolean one = weak.size() == 1;
    String those =
        weak.stream().map(w -> Words.either(w.cylinders())).collect(Collectors.joining(", and "));
    return Outcome.fires(
        Draft.of(
                id(),
                Severity.WATCH,
                (one ? "One cylinder compresses" : "Some cylinders compress")
                    + " less than the others on the starter.")
            .probability(0.75)
            .saw(evidence(c))
            .sawIf(
                !weak.get(0).cylinders().isEmpty(),
                (one ? "It is cylinder " : "They are cylinders ")
                    + those
                    + (weak.get(0).cylinders().size() > 1
                        ? "; which of two, a wheel on the crank does not show."
                        : "."))
            .against(
                "A battery or starter that sags, or a slack chain, can make compressions uneven.")
            .ratherThan("The wheel's own errors repeat every turn; this repeats every second turn.")
            .next("Test compression, or leak-down, of each cylinder.")
            .caution("Switch off fuel and ignition first. " + Cautions.STARTER)
            .picture(Picture.SPEED));
  }

  private static String evidence(Cranking c) {
    return "In the order in which they follow each other, over "
        + c.cycles()
        + " cycles at "
        + Say.rpm(c.meanRpm())
        + ", the compressions take "
        + c.shares()
        + " of their mean energy.";
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
