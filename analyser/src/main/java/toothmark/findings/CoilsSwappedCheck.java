package toothmark.findings;

import java.util.List;
import java.util.Optional;
import toothmark.timing.CoilTiming;
import toothmark.timing.FiringSequence;
import toothmark.units.Interval;
import toothmark.units.Say;

/** Coils fire in each other's place. */
final class CoilsSwappedCheck implements Check {

  private static final int FEWEST_SPARKS = 3;

  /** Share of the sparks out of order from which it is worth a look. */
  private static final double LEAST_SHARE = 0.02;

  /** Share of the cycles out of order from which coils are swapped for good. */
  private static final double MOSTLY = 0.8;

  /** Up to so many cylinders the pairs that share a coil are the same in every usual order. */
  private static final int PAIRED = 4;

  private static final double SHOWN_SECONDS = 1e-3;
  private static final int MOST_SHOWN = 50;

  @Override
  public String id() {
    return "coils-swapped";
  }

  @Override
  public Outcome examine(Symptoms symptoms) {
    List<CoilTiming> coils = symptoms.seen().timing().coils();
    if (coils.isEmpty()) {
      return Outcome.cannotRun("No coil's advance is known.");
    }
    List<CoilTiming> turned =
        coils.stream()
            .filter(c -> Math.abs(c.turnedDegrees()) > 1 && c.sparks() >= FEWEST_SPARKS)
            .toList();
    Optional<FiringSequence> order = outOfOrder(symptoms.seen());
    if (turned.isEmpty() && order.isEmpty()) {
      return Outcome.quiet();
    }
    boolean always = !turned.isEmpty() || order.filter(CoilsSwappedCheck::isMostly).isPresent();
    boolean assumed = !mustBe(symptoms.seen());
    Draft d =
        always && assumed
            ? Draft.of(id(), Severity.WATCH, "Coils do not fire in the usual order.")
                .probability(0.5)
                .against("The job sheet states no firing order: this engine may have another.")
            : always
                ? Draft.of(id(), Severity.FAULT, "Coils fire in each other's place.")
                    .probability(turned.size() > 1 || coils.size() > 2 ? 0.96 : 0.8)
                : Draft.of(id(), Severity.WATCH, "Coils fire in each other's place now and then.")
                    .probability(0.7);
    order.ifPresent(s -> sequence(d, s, symptoms.seen()));
    for (CoilTiming c : turned) {
      d.saw(
          "\u201c"
              + c.name()
              + "\u201d fires "
              + Say.degrees(Math.abs(c.turnedDegrees()))
              + " away from the top dead centre of its own cylinders, in all its "
              + Words.count(c.sparks(), "spark", "sparks")
              + ".");
    }
    boolean halfTurn = !turned.isEmpty() && turned.size() == coils.size();
    if (halfTurn) {
      d.against(
          "All recorded coils are off alike. Probes on each other's coil, or a TDC mark of another"
              + " cylinder, would look the same.");
    }
    return Outcome.fires(
        d.ratherThan("The crank signal is sound, so this is not a loss of sync.")
            .next(
                "Put an inductive clamp on each plug lead in turn and compare with the firing order;"
                    + " then check the plugs of the coils' wires.")
            .caution(
                "Do not try to start it meanwhile: it can backfire through the intake. "
                    + Cautions.HIGH_VOLTAGE)
            .picture(Picture.WHEEL));
  }

  /** Whether the order is sure: stated, or that of four cylinders that share coils two by two. */
  private static boolean mustBe(Observations seen) {
    boolean pairsOfFour =
        seen.stated().cylinders() <= PAIRED
            && seen.coils().stream().allMatch(c -> c.coil().cylinders().size() == 2);
    return pairsOfFour || seen.stated().firing().statement() == Observations.Statement.STATED;
  }

  /** Where the job sheet states an order and more sparks than a stray few do not keep it. */
  private static Optional<FiringSequence> outOfOrder(Observations seen) {
    return seen.timing()
        .sequence()
        .filter(s -> !seen.stated().firing().order().isEmpty())
        .filter(s -> s.out().size() >= Math.max(FEWEST_SPARKS, LEAST_SHARE * s.sparks()));
  }

  private static boolean isMostly(FiringSequence s) {
    return s.cyclesOut() >= MOSTLY * s.cycles();
  }

  private static void sequence(Draft d, FiringSequence s, Observations seen) {
    d.saw(
            Words.count(s.out().size(), "spark", "sparks")
                + " of "
                + Say.count(s.sparks())
                + " came out of the firing order, in "
                + s.cyclesOut()
                + " of "
                + Words.count(s.cycles(), "cycle", "cycles")
                + ".")
        .where(
            s.out().stream()
                .map(o -> new Interval(o.timeSeconds(), o.timeSeconds() + SHOWN_SECONDS))
                .limit(MOST_SHOWN)
                .toList());
    s.out().stream()
        .filter(o -> o.inPlaceOf().isPresent())
        .findFirst()
        .ifPresent(
            o ->
                d.saw(
                    "First, \u201c"
                        + seen.coils().get(o.coil()).coil().name()
                        + "\u201d fired in place of \u201c"
                        + seen.coils().get(o.inPlaceOf().get()).coil().name()
                        + "\u201d at "
                        + Say.at(o.timeSeconds())
                        + "."));
  }
}
