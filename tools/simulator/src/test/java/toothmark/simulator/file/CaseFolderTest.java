package toothmark.simulator.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import toothmark.simulator.ControllerLog;
import toothmark.simulator.Recorder;
import toothmark.simulator.Scenario;
import toothmark.simulator.Sensor;
import toothmark.simulator.SimulatedCapture;
import toothmark.simulator.Simulation;
import toothmark.simulator.Trace;

class CaseFolderTest {
  private static final Scenario SHORT =
      Scenario.healthy("short", 1).withRecorder(Recorder.oscilloscope(50e3, 0.2).withStart(-0.1));

  private static SimulatedCapture run(Dialect dialect) {
    Recorder recorder = SHORT.recorder().ofKind(dialect.recorderKind());
    return Simulation.of(SHORT.withSensor(Sensor.Hall.USUAL).withRecorder(recorder)).run();
  }

  private static String text(SimulatedCapture capture, Dialect dialect) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    new CaseFolder(capture, dialect, CaseFolder.Compression.NONE).writeCapture(out);
    return out.toString(StandardCharsets.UTF_8);
  }

  @Test
  void plainRowsHoldTheSamples() throws IOException {
    SimulatedCapture capture = run(Dialect.PLAIN);
    List<String> lines = text(capture, Dialect.PLAIN).lines().toList();

    assertThat(lines.get(0)).isEqualTo("Time (s),CH1 (V),CH2 (V),CH3 (V),CH4 (V)");
    assertThat(lines).hasSize(10_001);
    for (int row : new int[] {0, 777, 9_999}) {
      String[] cells = lines.get(row + 1).split(",");
      assertThat(Double.parseDouble(cells[0])).isCloseTo(-0.1 + row / 50e3, within(1e-9));
      for (int c = 0; c < 4; c++) {
        double volts = ((Trace.Analogue) capture.traces().get(c)).volts(row);
        assertThat(Double.parseDouble(cells[c + 1])).isCloseTo(volts, within(5.1e-5));
      }
    }
  }

  @Test
  void decimalCommasAndExponentsHoldTheSameSamples() throws IOException {
    SimulatedCapture capture = run(Dialect.PLAIN);
    String commas = text(capture, Dialect.DECIMAL_COMMA);
    List<String> exponents = text(capture, Dialect.NO_TIME).lines().toList();

    assertThat(commas).startsWith("\ufeffMessung;12\nAbtastzeit;0,020000;ms\n");
    String row = commas.lines().toList().get(6 + 123);
    double volts = capture.crankVolts().volts(123);
    assertThat(Double.parseDouble(row.split(";")[1].replace(',', '.')))
        .isCloseTo(volts, within(5.1e-5));
    assertThat(exponents.get(1)).isEqualTo("# sample interval,2.000000E-05,s");
    assertThat(exponents.get(2)).isEqualTo("# start,-1.000000E-01,s");
    assertThat(Double.parseDouble(exponents.get(4 + 123).split(",")[0]))
        .isCloseTo(volts, within(1e-5 * (1.0 + Math.abs(volts))));
  }

  /** Header words and changes of IEEE 1364-2005, clause 18. */
  @Test
  void valueChangeDumpGivesEachChangeItsTime() throws IOException {
    SimulatedCapture capture = run(Dialect.VALUE_CHANGE_DUMP);
    List<String> lines = text(capture, Dialect.VALUE_CHANGE_DUMP).lines().toList();
    Trace.Logic crank = (Trace.Logic) capture.crank();

    assertThat(lines).contains("$timescale 100 ns $end", "$var wire 1 ! crank $end");
    long changes = lines.stream().filter(l -> l.matches("[01]!")).count();
    assertThat(changes).isEqualTo(crank.levels().count() + 1L);
    long first = Math.round((crank.levels().seconds(0) + 0.1) * 1e7);
    assertThat(lines).contains("#" + first);
  }

  @Test
  void periodsAddUpToTheTimeFromFirstToLastEdge() throws IOException {
    Recorder recorder = Recorder.oscilloscope(1e6, 0.5).ofKind(Recorder.Kind.EDGE_LOGGER);
    SimulatedCapture capture = Simulation.of(SHORT.withRecorder(recorder)).run();
    List<Double> edges = ((Trace.Edges) capture.crank()).edges();

    long sum = text(capture, Dialect.PERIODS).lines().skip(1).mapToLong(Long::parseLong).sum();

    double seconds = edges.get(edges.size() - 1) - edges.get(0);
    assertThat(sum * 1e-6).isCloseTo(seconds, within(1e-9));
    assertThat(text(capture, Dialect.PERIODS_IN_COUNTS)).startsWith("# clock,2000000,Hz\n");
  }

  /** Chunk sizes of a canonical RIFF WAVE file with PCM data. */
  @Test
  void soundHasAHeaderThatFitsItsData() throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    SimulatedCapture capture = run(Dialect.WAV);
    new CaseFolder(capture, Dialect.WAV, CaseFolder.Compression.NONE).writeCapture(out);
    ByteBuffer bytes = ByteBuffer.wrap(out.toByteArray()).order(ByteOrder.LITTLE_ENDIAN);

    assertThat(bytes.getInt(4)).isEqualTo(bytes.limit() - 8);
    assertThat(bytes.getShort(22)).isEqualTo((short) 4);
    assertThat(bytes.getInt(24)).isEqualTo(50_000);
    assertThat(bytes.getInt(40)).isEqualTo(10_000 * 4 * 2);
  }

  @Test
  void folderHoldsTruthJobSheetAndLog(@TempDir Path folder) throws IOException {
    SimulatedCapture capture = Simulation.of(SHORT.withLog(ControllerLog.USUAL)).run();
    new CaseFolder(capture, Dialect.PLAIN, CaseFolder.Compression.GZIP).write(folder, "a note");

    String truth = Files.readString(folder.resolve("truth.json"));
    assertThat(truth).contains("\"wheel\": \"36-1\"", "\"capture\": \"capture.csv.gz\"");
    assertThat(truth).contains("\"time_shift\": -0.1", "\"slip\": null", "\"faults\": []");
    assertThat(Files.readAllLines(folder.resolve("truth-teeth.csv")))
        .hasSize(capture.truth().teeth().size() + 1);
    assertThat(Files.readString(folder.resolve("job.toml")))
        .contains("crank = \"CH1\"", "cylinders = [1, 4]")
        .doesNotContain("[commanded]");
    assertThat(Files.readAllLines(folder.resolve("controller.csv")).get(0))
        .isEqualTo("Time,RPM,Load,Advance");
  }

  @Test
  void dialectThatTheRecorderDidNotKeepIsRefused() {
    SimulatedCapture capture = run(Dialect.PLAIN);

    assertThatThrownBy(() -> new CaseFolder(capture, Dialect.EDGES, CaseFolder.Compression.NONE))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("EDGES needs a recorder of kind EDGE_LOGGER, not OSCILLOSCOPE");
  }
}
