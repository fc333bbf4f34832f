package toothmark.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import toothmark.report.ComparisonText;
import toothmark.units.Measured;

class ComparisonTest {

  private static final RecordedFinding SWAPPED =
      new RecordedFinding("coils-swapped", "fault", "Two coils are swapped.");
  private static final RecordedFinding WEAK =
      new RecordedFinding("weak-signal", "fault", "The signal is weak.");
  private static final RecordedFinding LIMITER =
      new RecordedFinding("spark-cut-limiter", "note", "A limiter cuts sparks.");

  private static RecordedExamination examination(
      List<RecordedFigure> figures, RecordedFinding... findings) {
    return new RecordedExamination(
        "a.csv",
        Optional.empty(),
        "",
        Optional.of("36-1"),
        Optional.empty(),
        figures,
        List.of(findings));
  }

  private static List<RecordedFigure> offset(double value, double u) {
    return List.of(new RecordedFigure("Advance offset", "°", new Measured(value, u)));
  }

  @Test
  void findingsGoStayAndCome() {
    Comparison c =
        Comparison.of(examination(List.of(), SWAPPED, WEAK), examination(List.of(), WEAK, LIMITER));
    assertThat(c.gone()).containsExactly(SWAPPED);
    assertThat(c.stayed()).containsExactly(WEAK);
    assertThat(c.come()).containsExactly(LIMITER);
    assertThat(ComparisonText.verdict(c))
        .isEqualTo("One fault gone, no fault new. 1 fault is still there.");
  }

  @Test
  void aWatchThatBecameAFaultIsGraverAndTheOtherWayMilder() {
    RecordedFinding suspected = new RecordedFinding("weak-signal", "watch", "It may be weak.");
    Comparison worse =
        Comparison.of(examination(List.of(), suspected), examination(List.of(), WEAK));
    assertThat(worse.graver()).containsExactly(WEAK);
    assertThat(worse.stayed()).isEmpty();
    assertThat(worse.milder()).isEmpty();
    assertThat(ComparisonText.verdict(worse))
        .isEqualTo("No fault gone, no fault new. 1 finding is now a fault.");

    Comparison better =
        Comparison.of(examination(List.of(), WEAK), examination(List.of(), suspected));
    assertThat(better.milder()).containsExactly(suspected);
    assertThat(better.stayed()).isEmpty();
    assertThat(better.graver()).isEmpty();
    assertThat(ComparisonText.verdict(better))
        .isEqualTo("No fault gone, no fault new. 1 fault is milder now.");
  }

  /** A fault that also left a watch behind is as grave as it was. */
  @Test
  void theGravestOfAnIdDecides() {
    RecordedFinding second = new RecordedFinding("weak-signal", "watch", "So may the other.");
    Comparison c =
        Comparison.of(examination(List.of(), WEAK), examination(List.of(), WEAK, second));
    assertThat(c.stayed()).containsExactly(WEAK, second);
    assertThat(c.milder()).isEmpty();
  }

  /** Variances of independent quantities add: JCGM 100:2008, 5.1.2; 3 and 4 give 5. */
  @Test
  void uncertaintiesOfADifferenceAdd() {
    Comparison c = Comparison.of(examination(offset(1, 0.03)), examination(offset(1.2, 0.04)));
    Measured d = c.changes().get(0).difference().orElseThrow();
    assertThat(d.value()).isCloseTo(0.2, within(1e-12));
    assertThat(d.standardUncertainty()).isCloseTo(0.05, within(1e-12));
    assertThat(c.changes().get(0).verdict()).isEqualTo(Change.Verdict.CHANGED);
  }

  @Test
  void aDifferenceWithinItsUncertaintyIsNoChange() {
    Comparison c = Comparison.of(examination(offset(1, 0.03)), examination(offset(1.09, 0.04)));
    assertThat(c.changes().get(0).verdict()).isEqualTo(Change.Verdict.WITHIN_UNCERTAINTY);
  }

  @Test
  void whatOneSideLacksCannotBeCompared() {
    Comparison c = Comparison.of(examination(offset(1, 0.03)), examination(List.of()));
    assertThat(c.changes().get(0).verdict()).isEqualTo(Change.Verdict.NOT_COMPARABLE);
  }

  @Test
  void withoutAFaultOnEitherSideThatIsSaid() {
    assertThat(
            ComparisonText.verdict(Comparison.of(examination(List.of()), examination(List.of()))))
        .isEqualTo("No fault before or after.");
  }

  @Test
  void differentWheelsAreSaidFirst() {
    RecordedExamination other =
        new RecordedExamination(
            "b.csv",
            Optional.empty(),
            "",
            Optional.of("60-2"),
            Optional.empty(),
            List.of(),
            List.of());
    assertThat(ComparisonText.verdict(Comparison.of(examination(List.of()), other)))
        .startsWith("The captures show different wheels, 36-1 and 60-2.");
  }
}
