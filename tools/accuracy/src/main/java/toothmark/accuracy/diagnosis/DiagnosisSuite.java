package toothmark.accuracy.diagnosis;

import java.util.List;
import toothmark.accuracy.Suite;

/** Findings against faults. */
public final class DiagnosisSuite {

  private DiagnosisSuite() {}

  /**
   * The suite.
   *
   * @return its one study
   */
  public static Suite suite() {
    return new Suite(
        "diagnosis",
        "Diagnosis",
        "What is said to be wrong against what is wrong, through the whole chain.",
        List.of(new FaultStudy()));
  }
}
