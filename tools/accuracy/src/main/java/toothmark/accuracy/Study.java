package toothmark.accuracy;

import toothmark.simulator.SimulatedCapture;
import toothmark.simulator.file.Dialect;

/** One question that many generated captures answer. */
public interface Study {

  /**
   * What a case's name begins with.
   *
   * @return a lower-case word
   */
  String name();

  /**
   * Makes one capture.
   *
   * @param name of this study
   * @return the same capture each time
   */
  SimulatedCapture capture(CaseName name);

  /**
   * How a case is written to disk.
   *
   * @param name of this study
   * @param capture made of it
   * @return a dialect that its recorder can have
   */
  default Dialect dialect(CaseName name, SimulatedCapture capture) {
    return InMemory.dialect(capture);
  }

  /**
   * Runs one case and says all there is to say of it.
   *
   * @param name of this study
   * @return lines of text
   */
  String explain(CaseName name);

  /**
   * Runs all cases.
   *
   * @param run how many, and where the tables go
   */
  void run(Run run);
}
