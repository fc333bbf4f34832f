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
      return Outcome.cannotRun("no-advance");
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
            ? Draft.of(id(), Severity.WATCH)
                .title("usual-order")
                .probability(0.5)
                .against("no-order")
            : always
                ? Draft.of(id(), Severity.FAULT)
                    .probability(turned.size() > 1 || coils.size() > 2 ? 0.96 : 0.8)
                : Draft.of(id(), Severity.WATCH).title("now-and-then").probability(0.7);
    order.ifPresent(s -> sequence(d, s, symptoms.seen()));
    for (CoilTiming c : turned) {
      d.saw(c.sparks(), "away", c.name(), Say.degrees(Math.abs(c.turnedDegrees())));
    }
    boolean halfTurn = !turned.isEmpty() && turned.size() == coils.size();
    if (halfTurn) {
      d.against("all-alike");
    }
    return Outcome.fires(
        d.ratherThan("lost-sync").caution("no-start", "high-voltage").picture(Picture.WHEEL));
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
            s.out().size(),
            "out-of-order",
            Say.count(s.sparks()),
            s.cyclesOut(),
            Words.count(s.cycles(), "cycles"))
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
                    "first",
                    seen.coils().get(o.coil()).coil().name(),
                    seen.coils().get(o.inPlaceOf().get()).coil().name(),
                    Say.at(o.timeSeconds())));
  }
}
