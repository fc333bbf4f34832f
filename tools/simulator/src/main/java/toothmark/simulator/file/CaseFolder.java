package toothmark.simulator.file;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.GZIPOutputStream;
import toothmark.simulator.Controller;
import toothmark.simulator.ControllerLog;
import toothmark.simulator.SimulatedCapture;

/**
 * A folder with a capture, its job sheet, the controller's log when there is one, and the truth.
 */
public final class CaseFolder {
  /** Whether the capture is compressed. */
  public enum Compression {
    /** As it is. */
    NONE,
    /** With gzip. */
    GZIP
  }

  private static final double DEGREES_A_LOAD = 0.1;

  private final SimulatedCapture capture;
  private final Dialect dialect;
  private final Compression compression;

  /**
   * A folder to be written.
   *
   * @param capture what was recorded
   * @param dialect how the recorder writes it
   * @param compression of the capture's file
   * @throws IllegalArgumentException when the recorder did not keep what the dialect writes
   */
  public CaseFolder(SimulatedCapture capture, Dialect dialect, Compression compression) {
    if (capture.scenario().recorder().kind() != dialect.recorderKind()) {
      throw new IllegalArgumentException(
          dialect
              + " needs a recorder of kind "
              + dialect.recorderKind()
              + ", not "
              + capture.scenario().recorder().kind());
    }
    this.capture = capture;
    this.dialect = dialect;
    this.compression = compression;
  }

  /**
   * Writes the folder.
   *
   * @param folder made when missing; files of the same name are replaced
   * @param note a line on what the case shows, for the truth
   * @throws IOException when a file cannot be written
   */
  public void write(Path folder, String note) throws IOException {
    Files.createDirectories(folder);
    String name = dialect.fileName() + (compression == Compression.GZIP ? ".gz" : "");
    try (OutputStream out = open(folder.resolve(name))) {
      writeCapture(out);
    }
    TruthFiles truth = new TruthFiles(capture, dialect);
    Files.writeString(folder.resolve("job.toml"), jobSheet());
    Files.writeString(folder.resolve("truth.json"), truth.json(name, note));
    Files.writeString(folder.resolve("truth-teeth.csv"), truth.teethCsv());
    if (!capture.log().isEmpty()) {
      Files.writeString(folder.resolve("controller.csv"), log());
      Files.writeString(folder.resolve("ignition-table.csv"), ignitionTable());
    }
  }

  /**
   * What the installer knows of the engine.
   *
   * @return the text of {@code job.toml}
   */
  public String jobSheet() {
    return new JobSheet(capture, dialect).toml();
  }

  private OutputStream open(Path file) throws IOException {
    OutputStream plain = new BufferedOutputStream(Files.newOutputStream(file), 1 << 16);
    return compression == Compression.GZIP ? new GZIPOutputStream(plain, 1 << 16) : plain;
  }

  /**
   * Writes the capture alone.
   *
   * @param out gets the bytes, uncompressed; stays open
   * @throws IOException when it cannot be written
   */
  public void writeCapture(OutputStream out) throws IOException {
    if (dialect == Dialect.WAV) {
      out.write(WavFile.bytes(capture));
      return;
    }
    Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
    switch (dialect.recorderKind()) {
      case OSCILLOSCOPE -> new TableFile(capture, dialect).write(writer);
      case LOGIC_ANALYSER -> writer.write(new LevelFile(capture, dialect).text());
      case EDGE_LOGGER -> writer.write(EdgeFile.text(capture, dialect));
    }
    writer.flush();
  }

  private String log() {
    StringBuilder out = new StringBuilder("Time,RPM,Load,Advance\n");
    for (ControllerLog.Row row : capture.log()) {
      Decimals.append(out, row.seconds(), 2);
      Decimals.append(out.append(','), row.rpm(), 0);
      Decimals.append(out.append(','), row.loadPercent(), 0);
      Decimals.append(out.append(','), row.advanceDegrees(), 1);
      out.append('\n');
    }
    return out.toString();
  }

  /** The controller's map at the logged load, which less load advances and more retards. */
  private String ignitionTable() {
    Controller.AdvanceMap map = capture.scenario().controller().advance();
    double load = capture.log().get(0).loadPercent();
    double[] speeds = {500.0, map.fromRpm(), map.toRpm(), 7000.0};
    StringBuilder out = new StringBuilder("load \\ rpm");
    for (double rpm : speeds) {
      Decimals.append(out.append(','), rpm, 0);
    }
    for (double row : new double[] {10.0, 20.0, 60.0, 100.0}) {
      Decimals.append(out.append('\n'), row, 0);
      for (double rpm : speeds) {
        double degrees = map.degreesAt(rpm) + DEGREES_A_LOAD * (load - row);
        Decimals.append(out.append(','), degrees, 1);
      }
    }
    return out.append('\n').toString();
  }
}
