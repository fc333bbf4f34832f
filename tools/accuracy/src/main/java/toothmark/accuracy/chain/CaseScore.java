package toothmark.accuracy.chain;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import toothmark.accuracy.TextbookFollower;

/**
 * How one examined case compares with its truth.
 *
 * @param name of the case
 * @param failure why there are no results; empty when there are
 * @param wheelRight whether the wheel was named; empty where no tooth gave an edge
 * @param polarityRight whether the polarity was; empty where it cannot be seen
 * @param teeth labels and instants
 * @param sparks found and their advance
 * @param alignment error of tooth 1; empty where it was not measured or has no one value
 * @param delay error in µs, where a delay is there to be found
 * @param sync losses reported, and counted again; empty for wheels without one gap
 * @param findings missed and false
 */
record CaseScore(
    String name,
    Optional<String> failure,
    Optional<Boolean> wheelRight,
    Optional<Boolean> polarityRight,
    ToothScore teeth,
    SparkScore sparks,
    Optional<Error> alignment,
    Optional<Error> delay,
    Optional<Sync> sync,
    Findings findings) {

  /** An error, and the standard uncertainty stated beside the value. */
  record Error(double error, double stated) {
    boolean covered() {
      return Math.abs(error) <= 2 * stated;
    }
  }

  /** Losses reported, and counted again over the reported edges. */
  record Sync(int said, int again) {}

  /** Ids of findings. */
  record Findings(int wanted, List<String> missed, List<String> falseFaults) {}

  static CaseScore failed(String name, String why) {
    return new CaseScore(
        name,
        Optional.of(why),
        Optional.empty(),
        Optional.empty(),
        ToothScore.NOTHING,
        SparkScore.NOTHING,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        new Findings(0, List.of(), List.of()));
  }

  /** Compares the result files of a folder with the truth of another. */
  static CaseScore of(Path caseFolder, Path results) throws IOException {
    JsonTree truth = JsonTree.read(caseFolder.resolve("truth.json"));
    JsonTree said = JsonTree.read(results.resolve("examination.json"));
    String wheel = truth.text("wheel").orElseThrow();
    ToothScore teeth =
        ToothScore.of(
            caseFolder.resolve("truth-teeth.csv"),
            results.resolve("teeth.csv"),
            Integer.parseInt(wheel.split("[-+]")[0]),
            truth.has("time_origin"));
    boolean silent = SparkScore.faults(truth).contains("no-crank-signal");
    boolean crankOnly = isOneOf(truth, "periods", "edges") || truth.has("slip") || silent;
    return new CaseScore(
        truth.text("name").orElseThrow(),
        Optional.empty(),
        silent
            ? Optional.empty()
            : Optional.of(said.text("wheel", "pattern").filter(wheel::equals).isPresent()),
        silent ? Optional.empty() : polarity(truth, said),
        silent ? ToothScore.NOTHING : teeth,
        crankOnly ? SparkScore.NOTHING : SparkScore.of(truth, results.resolve("sparks.csv")),
        crankOnly ? Optional.empty() : alignment(truth, said),
        crankOnly ? Optional.empty() : delay(truth, said),
        silent ? Optional.empty() : sync(truth, said, results.resolve("receiver-edges.csv")),
        findings(truth, said));
  }

  private static boolean isOneOf(JsonTree truth, String... dialects) {
    return List.of(dialects).contains(truth.text("dialect").orElse(""));
  }

  private static Optional<Boolean> polarity(JsonTree truth, JsonTree said) {
    boolean visible =
        truth.text("sensor").filter("vr"::equals).isPresent()
            && !isOneOf(truth, "periods", "edges", "logic-changes", "vcd");
    return visible
        ? Optional.of(said.text("sensor", "polarity").equals(truth.text("polarity")))
        : Optional.empty();
  }

  private static Optional<Error> alignment(JsonTree truth, JsonTree said) {
    return error(said, truth.number("alignment_error").orElseThrow(), "alignment", "error_deg");
  }

  /** Only where there is a delay and the speed varies enough to show it. */
  private static Optional<Error> delay(JsonTree truth, JsonTree said) {
    boolean shown =
        truth.number("rpm_max").orElseThrow() > 1.5 * truth.number("rpm_min").orElseThrow();
    return shown && SparkScore.faults(truth).contains("timing-delay")
        ? error(said, truth.number("delay_us").orElseThrow(), "advance", "delay_us")
        : Optional.empty();
  }

  private static Optional<Error> error(JsonTree said, double truth, String group, String key) {
    Optional<Double> value = said.number(group, key, "value");
    Optional<Double> stated = said.number(group, key, "standard_uncertainty");
    return value.map(v -> new Error(v - truth, stated.orElse(0.0)));
  }

  /**
   * The losses are counted for the wheel that was told, so a wrong one on the sheet is left out.
   */
  private static Optional<Sync> sync(JsonTree truth, JsonTree said, Path edges) throws IOException {
    String wheel = truth.text("wheel").orElseThrow();
    boolean told = SparkScore.faults(truth).contains("wheel-pattern-mismatch");
    Optional<Double> losses = said.number("sync", "losses");
    if (!wheel.matches("\\d+-\\d+") || told || losses.isEmpty() || !Files.exists(edges)) {
      return Optional.empty();
    }
    double[] times =
        CsvRows.read(edges).stream().mapToDouble(r -> CsvRows.number(r, "time_s")).toArray();
    String[] parts = wheel.split("-");
    TextbookFollower follower =
        new TextbookFollower(times, Integer.parseInt(parts[0]), Integer.parseInt(parts[1]));
    return Optional.of(new Sync(losses.get().intValue(), follower.losses()));
  }

  private static Findings findings(JsonTree truth, JsonTree said) {
    List<String> wanted = SparkScore.faults(truth);
    List<String> fair =
        truth.list("fair_findings").stream().map(f -> f.text().orElseThrow()).toList();
    List<JsonTree> found = said.list("findings");
    List<String> ids = found.stream().map(f -> f.text("id").orElseThrow()).toList();
    List<String> faults =
        found.stream()
            .filter(f -> f.text("severity").filter("fault"::equals).isPresent())
            .map(f -> f.text("id").orElseThrow())
            .filter(id -> !wanted.contains(id) && !fair.contains(id))
            .toList();
    List<String> missed = wanted.stream().filter(id -> !ids.contains(id)).toList();
    return new Findings(wanted.size(), missed, faults);
  }

  /** How bad it is, for the list of worst cases; 0 when all is well. */
  double badness() {
    double labels = teeth.teeth() == 0 ? 0 : 1 - teeth.recall();
    double bad = failure.isPresent() ? 10 : wheelRight.orElse(true) ? 0 : 3;
    bad += labels > 1e-4 ? 2 * labels : 0;
    bad += findings.missed.size() + findings.falseFaults.size();
    bad += alignment.filter(e -> Math.abs(e.error) > 0.1).map(e -> 0.5).orElse(0.0);
    bad += delay.filter(e -> Math.abs(e.error) > 5).map(e -> 0.5).orElse(0.0);
    bad += sync.filter(s -> s.said != s.again).map(s -> 1.0).orElse(0.0);
    return bad + (sparks.found() < sparks.sparks() ? 0.3 : 0);
  }

  /** One line with all of it. */
  String words() {
    return failure.orElseGet(
        () ->
            String.format(
                Locale.ROOT,
                "wheel %s, polarity %s, labels %.4f, lost %d of %d located, sparks %d of %d,"
                    + " advance rms %.3f°, alignment %s°, delay %s µs, sync %s, missed %s, false %s",
                rightOrWrong(wheelRight),
                rightOrWrong(polarityRight),
                teeth.recall(),
                teeth.lostRight(),
                teeth.lost(),
                sparks.found(),
                sparks.sparks(),
                sparks.advanceRmsDegrees(),
                alignment.map(CaseScore::signed).orElse("–"),
                delay.map(CaseScore::signed).orElse("–"),
                sync.map(s -> s.said + "/" + s.again).orElse("–"),
                findings.missed,
                findings.falseFaults));
  }

  private static String rightOrWrong(Optional<Boolean> right) {
    return right.map(r -> r ? "right" : "wrong").orElse("–");
  }

  private static String signed(Error e) {
    return String.format(Locale.ROOT, "%+.3f (u %.3f)", e.error, e.stated);
  }
}
