package toothmark.timing;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.MalformedInputException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import toothmark.capture.UnreadableCaptureException;

/**
 * Reads a controller log: delimited text with a column each for time, speed and commanded advance,
 * found by their usual names.
 */
public final class ControllerLogReader {

  private static final int PREAMBLE_LINES = 50;

  private final String file;
  private final char delimiter;
  private final Map<LogColumn, Integer> columns = new EnumMap<>(LogColumn.class);
  private final Map<LogColumn, Double> factors = new EnumMap<>(LogColumn.class);

  private ControllerLogReader(String file, char delimiter) {
    this.file = file;
    this.delimiter = delimiter;
  }

  /**
   * Reads a log. A row whose time does not rise, as some controllers write twice, is dropped.
   *
   * @param path the log, UTF-8
   * @return its rows
   * @throws UnreadableCaptureException if a column is missing or a value is no number
   * @throws IOException if the file cannot be read
   */
  public static ControllerLog read(Path path) throws UnreadableCaptureException, IOException {
    String name = String.valueOf(path.getFileName());
    try {
      char delimiter = delimiter(path);
      try (CsvReader<CsvRecord> records =
          CsvReader.builder()
              .fieldSeparator(delimiter)
              .detectBomHeader(true)
              .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
              .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
              .ofCsvRecord(path)) {
        return new ControllerLogReader(name, delimiter).rows(records);
      }
    } catch (CsvParseException e) {
      throw new UnreadableCaptureException(name + ": " + e.getMessage(), e);
    } catch (MalformedInputException e) {
      throw new UnreadableCaptureException(name + ": not UTF-8; save the log as UTF-8 text", e);
    }
  }

  /** Tab or semicolon where the head of the file holds any, else comma. */
  private static char delimiter(Path path) throws IOException {
    try (var lines = Files.lines(path)) {
      String head = lines.limit(PREAMBLE_LINES).collect(Collectors.joining());
      return head.indexOf('\t') >= 0 ? '\t' : head.indexOf(';') >= 0 ? ';' : ',';
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  private ControllerLog rows(CsvReader<CsvRecord> records) throws UnreadableCaptureException {
    double[][] out = new double[3][256];
    int n = 0;
    CsvRecord heading = null;
    boolean data = false;
    for (CsvRecord record : records) {
      if (heading == null) {
        heading = columns(record) ? record : null;
      } else if (!data && !isNumber(record)) {
        factors(heading.getFields(), record.getFields());
      } else if (!blank(record)) {
        data = true;
        n += add(record, out, n) ? 1 : 0;
        if (n == out[0].length) {
          for (int i = 0; i < 3; i++) {
            out[i] = Arrays.copyOf(out[i], 2 * n);
          }
        }
      }
    }
    if (heading == null) {
      throw missing();
    }
    return new ControllerLog(
        Arrays.copyOf(out[0], n), Arrays.copyOf(out[1], n), Arrays.copyOf(out[2], n));
  }

  private static boolean blank(CsvRecord record) {
    return record.getFields().stream().allMatch(String::isBlank);
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
    if (found.size() == LogColumn.values().length) {
      factors(record.getFields(), List.of());
      return true;
    }
    if (record.getStartingLineNumber() > PREAMBLE_LINES) {
      throw missing();
    }
    return false;
  }

  private UnreadableCaptureException missing() {
    String absent =
        Arrays.stream(LogColumn.values())
            .filter(c -> !columns.containsKey(c))
            .map(LogColumn::label)
            .collect(Collectors.joining(", "));
    return new UnreadableCaptureException(
        file
            + ": no line among the first "
            + PREAMBLE_LINES
            + " names the columns Time, RPM and Advance of a controller log; "
            + absent
            + " is missing");
  }

  private void factors(List<String> headings, List<String> units) {
    for (LogColumn c : LogColumn.values()) {
      int i = columns.get(c);
      factors.put(c, c.factor(headings.get(i), i < units.size() ? units.get(i) : ""));
    }
  }

  private boolean isNumber(CsvRecord record) {
    int i = columns.get(LogColumn.TIME);
    return i < record.getFieldCount() && number(record.getField(i)) != null;
  }

  private boolean add(CsvRecord record, double[][] out, int n) throws UnreadableCaptureException {
    for (LogColumn c : LogColumn.values()) {
      int i = columns.get(c);
      String cell = i < record.getFieldCount() ? record.getField(i) : "";
      Double value = number(cell);
      if (value == null) {
        throw new UnreadableCaptureException(
            file
                + ", line "
                + record.getStartingLineNumber()
                + ", column "
                + (i + 1)
                + " ("
                + c.label()
                + "): \""
                + cell
                + "\" is no number; remove the line or write the number");
      }
      out[c.ordinal()][n] = value * factors.get(c);
    }
    return n == 0 || out[0][n] > out[0][n - 1];
  }

  private Double number(String cell) {
    String text = cell.strip();
    try {
      return Double.valueOf(delimiter == ',' ? text : text.replace(',', '.'));
    } catch (NumberFormatException e) {
      return null;
    }
  }
}
