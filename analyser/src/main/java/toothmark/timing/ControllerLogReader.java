package toothmark.timing;

import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import toothmark.capture.UnreadableCaptureException;

/**
 * Reads a controller log: delimited text with a column each for time, speed, and commanded advance
 * or load, found by their usual names.
 */
public final class ControllerLogReader {

  private final String file;
  private final Delimited text;
  private final Map<LogColumn, Integer> columns = new EnumMap<>(LogColumn.class);
  private final Map<LogColumn, Double> factors = new EnumMap<>(LogColumn.class);

  private ControllerLogReader(String file, Delimited text) {
    this.file = file;
    this.text = text;
  }

  /**
   * Reads a log. A row whose time does not rise, as some controllers write twice, is dropped. A
   * load that is no number is not known.
   *
   * @param path the log, UTF-8
   * @return its rows
   * @throws UnreadableCaptureException if a column is missing or a value is no number
   * @throws IOException if the file cannot be read
   */
  public static ControllerLog read(Path path) throws UnreadableCaptureException, IOException {
    String name = String.valueOf(path.getFileName());
    return Delimited.read(path, (lines, text) -> new ControllerLogReader(name, text).rows(lines));
  }

  /**
   * Whether a file is a controller log by the names of its columns; the rest of it is not read.
   *
   * @param path any file
   * @return false too where it is no text
   * @throws IOException if the file cannot be read
   */
  public static boolean isLog(Path path) throws IOException {
    try {
      return Delimited.isText(path)
          && Delimited.read(path, (lines, text) -> new ControllerLogReader("", text).isHead(lines));
    } catch (UnreadableCaptureException e) {
      return false;
    }
  }

  private boolean isHead(Iterable<CsvRecord> records) throws UnreadableCaptureException {
    for (CsvRecord record : records) {
      if (columns(record)) {
        return true;
      }
    }
    return false;
  }

  private ControllerLog rows(Iterable<CsvRecord> records) throws UnreadableCaptureException {
    List<double[]> rows = new ArrayList<>();
    CsvRecord heading = null;
    for (CsvRecord record : records) {
      if (heading == null) {
        heading = columns(record) ? record : null;
      } else if (rows.isEmpty() && !isNumber(record)) {
        factors(heading.getFields(), record.getFields());
      } else if (!record.getFields().stream().allMatch(String::isBlank)) {
        double[] row = row(record);
        if (rows.isEmpty() || row[0] > rows.get(rows.size() - 1)[0]) {
          rows.add(row);
        }
      }
    }
    if (heading == null) {
      throw missing();
    }
    return new ControllerLog(
        column(rows, LogColumn.TIME),
        column(rows, LogColumn.RPM),
        column(rows, LogColumn.ADVANCE),
        column(rows, LogColumn.LOAD));
  }

  private double[] column(List<double[]> rows, LogColumn column) {
    return columns.containsKey(column)
        ? rows.stream().mapToDouble(r -> r[column.ordinal()]).toArray()
        : new double[0];
  }

  private boolean columns(CsvRecord record) throws UnreadableCaptureException {
    Map<LogColumn, Integer> found = new EnumMap<>(LogColumn.class);
    for (LogColumn c : LogColumn.values()) {
      int best = Integer.MAX_VALUE;
      for (int i = 0; i < record.getFieldCount(); i++) {
        int rank = c.rank(record.getField(i));
        if (rank >= 0 && rank < best) {
          best = rank;
          found.put(c, i);
        }
      }
    }
    if (found.size() >= columns.size()) {
      columns.clear();
      columns.putAll(found);
    }
    if (suffice(found.keySet())) {
      factors(record.getFields(), List.of());
      return true;
    }
    if (record.getStartingLineNumber() > Delimited.PREAMBLE_LINES) {
      throw missing();
    }
    return false;
  }

  /** Whether advance is known, or a table can tell it from the load. */
  private static boolean suffice(Set<LogColumn> found) {
    return found.containsAll(Set.of(LogColumn.TIME, LogColumn.RPM))
        && (found.contains(LogColumn.ADVANCE) || found.contains(LogColumn.LOAD));
  }

  private UnreadableCaptureException missing() {
    String absent =
        Arrays.stream(LogColumn.values())
            .filter(c -> c != LogColumn.LOAD && !columns.containsKey(c))
            .map(LogColumn::label)
            .collect(Collectors.joining(", "));
    return new UnreadableCaptureException(
        file
            + ": no line among the first "
            + Delimited.PREAMBLE_LINES
            + " names the columns Time, RPM and Advance of a controller log; "
            + absent
            + " is missing");
  }

  private void factors(List<String> headings, List<String> units) {
    columns.forEach(
        (c, i) -> factors.put(c, c.factor(headings.get(i), i < units.size() ? units.get(i) : "")));
  }

  private boolean isNumber(CsvRecord record) {
    return text.number(cell(record, LogColumn.TIME)).isPresent();
  }

  private String cell(CsvRecord record, LogColumn column) {
    int i = columns.get(column);
    return i < record.getFieldCount() ? record.getField(i) : "";
  }

  private double[] row(CsvRecord record) throws UnreadableCaptureException {
    double[] row = new double[LogColumn.values().length];
    for (LogColumn c : columns.keySet()) {
      OptionalDouble value = text.number(cell(record, c));
      if (value.isEmpty() && c != LogColumn.LOAD) {
        throw new UnreadableCaptureException(
            file
                + ", line "
                + record.getStartingLineNumber()
                + ", column "
                + (columns.get(c) + 1)
                + " ("
                + c.label()
                + "): \""
                + cell(record, c)
                + "\" is no number; remove the line or write the number");
      }
      row[c.ordinal()] = value.orElse(Double.NaN) * factors.get(c);
    }
    return row;
  }
}
