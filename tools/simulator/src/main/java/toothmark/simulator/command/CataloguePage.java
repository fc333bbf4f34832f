package toothmark.simulator.command;

import java.util.List;

/** The page that introduces the samples. */
final class CataloguePage {
  private static final String HEAD =
      """
      # Signal samples

      Captures of one engine over one season, good days and bad. All of it is invented and
      simulated: the red hill-climb car, its 1.6 litre four-cylinder engine, and its keeper,
      Ottilie Farrow, who looks after it in the two bays of Quillmere Motor Works. Coil sensor and 36-1 wheel on
      the front pulley, two coils that share their sparks; the spare engine has a 60-2 wheel.

      Each folder holds the capture, the `job.toml` that goes with it, perhaps the controller's log and its ignition table,
      and the truth: `truth.json` and `truth-teeth.csv`, which come from the simulated machine and
      not from any look at the signal. Their keys are described in `tools/simulator/README.md`.
      `expected.json` is another matter: the examination that was last looked at and approved. A build
      whose examination differs fails and leaves the new one beside it, as `expected.new.json`.

          tools/toothmark examine signal-samples/clean-idle/capture.csv.gz \\
              --job signal-samples/clean-idle/job.toml

      `tools/make-samples` writes this folder anew, byte for byte apart from the compression, which
      the Java runtime decides.

      | sample | what happened | what it shows | faults |
      |---|---|---|---|
      """;

  private CataloguePage() {}

  static String of(List<Sample> samples) {
    StringBuilder page = new StringBuilder(HEAD);
    for (Sample sample : samples) {
      List<String> faults = sample.scenario().faults();
      page.append("| [").append(sample.name()).append("](").append(sample.name()).append("/) | ");
      page.append(sample.story()).append(" | ").append(sample.shows()).append(" | ");
      page.append(faults.isEmpty() ? "none" : "`" + String.join("`, `", faults) + "`");
      page.append(" |\n");
    }
    return page.toString();
  }
}
