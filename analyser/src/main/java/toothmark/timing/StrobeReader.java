package toothmark.timing;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import toothmark.capture.UnreadableCaptureException;

/** Reads a timing-light worksheet: the columns speed, commanded and seen. */
public final class StrobeReader {

  private static final List<String> COLUMNS = List.of("speed", "commanded", "seen");

  /** No engine that carries a trigger wheel turns faster. */
  private static final double FASTEST_RPM = 30_000;

  private StrobeReader() {}

  /**
   * Reads a worksheet.
   *
   * @param path text of columns parted by commas (RFC 4180), semicolons or tabs, UTF-8, its first
   *     line naming them; a decimal comma is read as a point
   * @return the readings, in the order of the file
   * @throws UnreadableCaptureException if a column is missing, a value is no number or a speed none
   *     of an engine
   * @throws IOException if the file cannot be read
   */
  public static List<StrobeWorksheet.Reading> read(Path path)
      throws UnreadableCaptureException, IOException {
    String file = String.valueOf(path.getFileName());
    List<StrobeWorksheet.Reading> readings = new ArrayList<>();
    String text = Files.readString(path).toLowerCase(Locale.ROOT).replace("\ufeff", "");
    try (CsvReader<NamedCsvRecord> rows =
        CsvReader.builder()
            .detectBomHeader(false)
            .fieldSeparator(separator(text))
            .ofNamedCsvRecord(text)) {
      for (NamedCsvRecord row : rows) {
        double[] v = new double[COLUMNS.size()];
        for (int i = 0; i < v.length; i++) {
          v[i] = value(file, row, COLUMNS.get(i));
        }
        if (!(v[0] > 0 && v[0] <= FASTEST_RPM)) {
          throw new UnreadableCaptureException(
              file
                  + ", line "
                  + row.getStartingLineNumber()
                  + " (speed): "
                  + row.getField(COLUMNS.get(0)).strip()
                  + " is no speed of an engine; write rev/min, above 0 and up to "
                  + (int) FASTEST_RPM);
        }
        readings.add(new StrobeWorksheet.Reading(v[0], v[2], v[1]));
      }
    } catch (CsvParseException e) {
      throw new UnreadableCaptureException(file + ": " + e.getMessage(), e);
    }
    return readings;
  }

  /** What parts the names of the first line: a semicolon or a tab where there is one. */
  private static char separator(String text) {
    String names = text.lines().findFirst().orElse("");
    return names.indexOf(';') >= 0 ? ';' : names.indexOf('\t') >= 0 ? '\t' : ',';
  }

  private static double value(String file, NamedCsvRecord row, String column)
      throws UnreadableCaptureException {
    String cell =
        row.findField(column)
            .orElseThrow(
                () ->
                    new UnreadableCaptureException(
                        file
                            + ": no column \""
                            + column
                            + "\"; the first line must be speed,commanded,seen"));
    try {
      return Double.parseDouble(cell.strip().replace(',', '.').replace('\u2212', '-'));
    } catch (NumberFormatException e) {
      throw new UnreadableCaptureException(
          file
              + ", line "
              + row.getStartingLineNumber()
              + " ("
              + column
              + "): \""
              + cell
              + "\" is no number",
          e);
    }
  }
}
