package toothmark.accuracy.chain;

import java.nio.file.Path;
import java.util.List;
import toothmark.accuracy.Suite;

/** From file to result files. */
public final class ChainSuite {

  private ChainSuite() {}

  /**
   * The suite.
   *
   * @param root of the repository
   * @return its studies in the order of the page
   */
  public static Suite suite(Path root) {
    return new Suite(
        "chain",
        "The whole chain",
        "Captures are written to disk, read and examined with the job sheet an installer would have, and the result files compared with the truth.",
        List.of(new RandomCases(), new Samples(root.resolve("signal-samples"))));
  }
}
