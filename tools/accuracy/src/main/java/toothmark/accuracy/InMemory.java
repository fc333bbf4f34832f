package toothmark.accuracy;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import toothmark.capture.Capture;
import toothmark.capture.Channel;
import toothmark.capture.EventSignal;
import toothmark.capture.Reading;
import toothmark.capture.SampledSignal;
import toothmark.capture.Signal;
import toothmark.capture.StepSignal;
import toothmark.examination.Examination;
import toothmark.examination.Examiner;
import toothmark.examination.JobSheet;
import toothmark.examination.JobSheetException;
import toothmark.examination.JobSheetReader;
import toothmark.simulator.LevelChanges;
import toothmark.simulator.Recorder;
import toothmark.simulator.SimulatedCapture;
import toothmark.simulator.Trace;
import toothmark.simulator.file.CaseFolder;
import toothmark.simulator.file.CaseFolder.Compression;
import toothmark.simulator.file.Dialect;
import toothmark.timing.ControllerLog;

/**
 * Hands what the simulator recorded to the analyser without a file between them. Channels bear the
 * names that the plain files give them.
 */
public final class InMemory {

  private InMemory() {}

  /**
   * A whole capture.
   *
   * @param simulated what was recorded
   * @return the same as the analyser's readers would give it
   */
  public static Capture capture(SimulatedCapture simulated) {
    Recorder recorder = simulated.scenario().recorder();
    String name =
        switch (recorder.kind()) {
          case OSCILLOSCOPE -> "CH%d";
          case LOGIC_ANALYSER -> "D%d";
          case EDGE_LOGGER -> "edge time";
        };
    int first = recorder.kind() == Recorder.Kind.LOGIC_ANALYSER ? 0 : 1;
    List<Channel> channels = new ArrayList<>();
    for (Trace trace : simulated.traces()) {
      String own = String.format(Locale.ROOT, name, first + channels.size());
      String unit = trace instanceof Trace.Analogue ? "V" : "";
      channels.add(new Channel(own, unit, signal(trace, recorder)));
    }
    return new Capture(
        simulated.scenario().name(), channels, new Reading("simulated", List.of(), List.of()));
  }

  /**
   * Runs the whole chain with the job sheet that an installer would have, and the controller's log
   * when there is one.
   *
   * @param simulated what was recorded
   * @return what was found
   * @throws IllegalStateException when the job sheet does not fit
   */
  public static Examination examine(SimulatedCapture simulated) {
    String toml = new CaseFolder(simulated, dialect(simulated), Compression.NONE).jobSheet();
    try (Capture capture = capture(simulated)) {
      JobSheet sheet = JobSheetReader.parse("job.toml", toml);
      return Examiner.examine(capture, sheet, log(simulated.log()));
    } catch (JobSheetException e) {
      throw new IllegalStateException(e);
    }
  }

  private static Optional<ControllerLog> log(List<toothmark.simulator.ControllerLog.Row> rows) {
    if (rows.isEmpty()) {
      return Optional.empty();
    }
    double[] seconds = rows.stream().mapToDouble(r -> r.seconds()).toArray();
    double[] rpm = rows.stream().mapToDouble(r -> r.rpm()).toArray();
    double[] advance = rows.stream().mapToDouble(r -> r.advanceDegrees()).toArray();
    return Optional.of(new ControllerLog(seconds, rpm, advance));
  }

  /**
   * The plainest way to write a capture.
   *
   * @param simulated what was recorded
   * @return a dialect that its recorder can have
   */
  public static Dialect dialect(SimulatedCapture simulated) {
    return switch (simulated.scenario().recorder().kind()) {
      case OSCILLOSCOPE -> Dialect.PLAIN;
      case LOGIC_ANALYSER -> Dialect.LOGIC_CHANGES;
      case EDGE_LOGGER -> Dialect.EDGES;
    };
  }

  /**
   * The crank channel alone.
   *
   * @param simulated what was recorded
   * @return its signal
   */
  public static Signal crank(SimulatedCapture simulated) {
    return signal(simulated.crank(), simulated.scenario().recorder());
  }

  private static Signal signal(Trace trace, Recorder recorder) {
    double step = 1.0 / recorder.sampleRateHz();
    if (trace instanceof Trace.Analogue analogue) {
      return SampledSignal.of(recorder.startSeconds(), step, analogue.toDoubles());
    }
    if (trace instanceof Trace.Logic logic) {
      return levels(logic.levels(), recorder, step);
    }
    List<Double> edges = ((Trace.Edges) trace).edges();
    return new EventSignal(edges.stream().mapToDouble(Double::doubleValue).toArray(), step);
  }

  private static StepSignal levels(LevelChanges changes, Recorder recorder, double step) {
    double[] times = new double[changes.count() + 1];
    double[] levels = new double[times.length];
    times[0] = recorder.startSeconds();
    levels[0] = changes.first() == LevelChanges.Level.HIGH ? 1 : 0;
    for (int i = 0; i < changes.count(); i++) {
      times[i + 1] = changes.seconds(i);
      levels[i + 1] = changes.after(i) == LevelChanges.Level.HIGH ? 1 : 0;
    }
    return new StepSignal(
        times, levels, step, recorder.startSeconds() + recorder.durationSeconds());
  }
}
