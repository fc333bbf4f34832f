package toothmark.timing;

import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.OptionalDouble;
import toothmark.capture.UnreadableCaptureException;
import toothmark.units.PlainNumber;

/**
 * Reads an ignition table: delimited text with the speeds in its first line, from the second cell
 * on, and below them a line for each load: the load, then the advance at each speed.
 */
public final class IgnitionTableReader {

  private static final int FEWEST = 2;
  private static final double SURELY_RPM = 1000;
  private static final double LEAST_DEGREES = -60;
  private static final double MOST_DEGREES = 90;

  private final String file;
  private final Delimited text;

  private IgnitionTableReader(String file, Delimited text) {
    this.file = file;
    this.text = text;
  }

  /**
   * Reads a table. Loads may fall from line to line, as some controllers show them.
   *
   * @param path the table, UTF-8
   * @return its speeds, loads and advances, loads rising
   * @throws UnreadableCaptureException if an axis is too short or out of order, a line is too short
   *     or too long, or a cell is no number or no advance; the message names file, line and cure
   * @throws IOException if the file cannot be read
   */
  public static IgnitionTable read(Path path) throws UnreadableCaptureException, IOException {
    String name = String.valueOf(path.getFileName());
    return Delimited.read(
        path, (lines, text) -> new IgnitionTableReader(name, text).table(path, lines));
  }

  /**
   * Whether a file is an ignition table and can be nothing else: a word, or nothing, stands in its
   * corner, and its speeds are those of an engine.
   *
   * @param path any file
   * @return false too where it is no text
   * @throws IOException if the file cannot be read
   */
  public static boolean isTable(Path path) throws IOException {
    try {
      return Delimited.isText(path)
          && Delimited.read(
              path,
              (lines, text) -> {
                CsvRecord first = lines.iterator().next();
                return text.number(first.getField(0)).isEmpty();
              })
          && read(path).rpms().stream().anyMatch(rpm -> rpm >= SURELY_RPM);
    } catch (UnreadableCaptureException | NoSuchElementException e) {
      return false;
    }
  }

  private IgnitionTable table(Path path, Iterable<CsvRecord> lines)
      throws UnreadableCaptureException {
    List<Double> speeds = new ArrayList<>();
    List<Double> loads = new ArrayList<>();
    List<List<Double>> degrees = new ArrayList<>();
    for (CsvRecord line : lines) {
      List<String> cells = cells(line);
      if (cells.isEmpty()) {
        continue;
      }
      if (speeds.isEmpty()) {
        speeds.addAll(speeds(line, cells));
      } else {
        loads.add(load(line, cells, loads));
        degrees.add(degrees(line, cells, speeds.size()));
      }
    }
    if (loads.size() < FEWEST) {
      throw new UnreadableCaptureException(
          file
              + ": an ignition table needs two or more loads, a line for each, got "
              + loads.size()
              + "; where load does not matter write the same advances at two loads");
    }
    if (loads.get(0) > loads.get(1)) {
      Collections.reverse(loads);
      Collections.reverse(degrees);
    }
    return new IgnitionTable(path, speeds, loads, degrees);
  }

  /** The cells of a line without the empty ones at its end. */
  private static List<String> cells(CsvRecord line) {
    int n = line.getFieldCount();
    while (n > 0 && line.getField(n - 1).isBlank()) {
      n--;
    }
    return line.getFields().subList(0, n);
  }

  private List<Double> speeds(CsvRecord line, List<String> cells)
      throws UnreadableCaptureException {
    if (cells.size() < 1 + FEWEST) {
      throw complaint(
          line,
          "an ignition table needs two or more speeds, got "
              + (cells.size() - 1)
              + "; write them in the first line, from the second cell on, with comma, semicolon or"
              + " tab between cells");
    }
    return row(
        line,
        cells,
        "speed",
        "write a speed in rev/min",
        (speed, before) ->
            before.isEmpty() || speed > last(before)
                ? Optional.empty()
                : Optional.of(
                    PlainNumber.significant(speed)
                        + " rev/min comes after "
                        + PlainNumber.significant(last(before))
                        + " rev/min; put the columns in order of rising speed"));
  }

  private double load(CsvRecord line, List<String> cells, List<Double> above)
      throws UnreadableCaptureException {
    double load = number(line, cells, 0, "load", "write the load of the line");
    int n = above.size();
    boolean inOrder =
        n == 0
            || load != above.get(n - 1)
                && (n == 1 || load > above.get(n - 1) == above.get(1) > above.get(0));
    if (!inOrder) {
      throw complaint(
          line,
          0,
          "load",
          PlainNumber.significant(load)
              + " comes after "
              + PlainNumber.significant(above.get(n - 1))
              + "; put the lines in order of rising or falling load");
    }
    return load;
  }

  private List<Double> degrees(CsvRecord line, List<String> cells, int speeds)
      throws UnreadableCaptureException {
    if (cells.size() != speeds + 1) {
      throw complaint(
          line,
          (cells.size() - 1)
              + " advances, but there are "
              + speeds
              + " speeds; write the load and then one advance for each speed");
    }
    return row(
        line,
        cells,
        "advance",
        "write degrees before TDC",
        (advance, before) ->
            advance >= LEAST_DEGREES && advance <= MOST_DEGREES
                ? Optional.empty()
                : Optional.of(
                    PlainNumber.significant(advance)
                        + "° is not from -60 to 90; write degrees before TDC of the crank"));
  }

  /** What is wrong with a number after those before it in its line; empty where nothing is. */
  private interface Check {
    Optional<String> fault(double value, List<Double> before);
  }

  /** The numbers of a line from the second cell on. */
  private List<Double> row(
      CsvRecord line, List<String> cells, String what, String cure, Check check)
      throws UnreadableCaptureException {
    List<Double> row = new ArrayList<>();
    for (int i = 1; i < cells.size(); i++) {
      double value = number(line, cells, i, what, cure);
      Optional<String> fault = check.fault(value, row);
      if (fault.isPresent()) {
        throw complaint(line, i, what, fault.get());
      }
      row.add(value);
    }
    return row;
  }

  private static double last(List<Double> values) {
    return values.get(values.size() - 1);
  }

  private double number(CsvRecord line, List<String> cells, int i, String what, String cure)
      throws UnreadableCaptureException {
    OptionalDouble value = text.number(cells.get(i));
    if (value.isEmpty()) {
      throw complaint(line, i, what, "\"" + cells.get(i) + "\" is no number; " + cure);
    }
    return value.getAsDouble();
  }

  private UnreadableCaptureException complaint(CsvRecord line, int i, String what, String fault) {
    return new UnreadableCaptureException(
        place(line) + ", column " + (i + 1) + " (" + what + "): " + fault);
  }

  private UnreadableCaptureException complaint(CsvRecord line, String fault) {
    return new UnreadableCaptureException(place(line) + ": " + fault);
  }

  private String place(CsvRecord line) {
    return file + ", line " + line.getStartingLineNumber();
  }
}
