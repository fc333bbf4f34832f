package toothmark.timing;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.MalformedInputException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import toothmark.capture.UnreadableCaptureException;

/** Delimited text from a controller or a spreadsheet: comma, semicolon or tab between cells. */
final class Delimited {

  /** Lines above the rows of numbers, at most. */
  static final int PREAMBLE_LINES = 50;

  private static final int HEAD_BYTES = 512;

  private final char delimiter;

  private Delimited(char delimiter) {
    this.delimiter = delimiter;
  }

  /** False of a file of bare numbers, which may hold no end of a line at all. */
  static boolean isText(Path path) throws IOException {
    try (InputStream head = Files.newInputStream(path)) {
      for (byte b : head.readNBytes(HEAD_BYTES)) {
        if (b == 0) {
          return false;
        }
      }
      return true;
    }
  }

  /** What to make of the lines of a file. */
  interface Rows<T> {
    T read(Iterable<CsvRecord> lines, Delimited text) throws UnreadableCaptureException;
  }

  /**
   * Reads a file; lines without a cell and lines that begin with # are passed over.
   *
   * @param path UTF-8
   * @param rows what to make of it
   * @return what was made of it
   * @throws UnreadableCaptureException if the text is broken, or is not what it should be
   * @throws IOException if the file cannot be read
   */
  static <T> T read(Path path, Rows<T> rows) throws UnreadableCaptureException, IOException {
    String file = String.valueOf(path.getFileName());
    try {
      char delimiter = delimiter(path);
      try (CsvReader<CsvRecord> lines =
          CsvReader.builder()
              .fieldSeparator(delimiter)
              .detectBomHeader(true)
              .commentStrategy(CommentStrategy.SKIP)
              .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
              .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
              .ofCsvRecord(path)) {
        return rows.read(lines, new Delimited(delimiter));
      }
    } catch (CsvParseException e) {
      throw new UnreadableCaptureException(file + ": " + e.getMessage(), e);
    } catch (MalformedInputException e) {
      throw new UnreadableCaptureException(file + ": not UTF-8; save it as UTF-8 text", e);
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

  /** A cell as a finite number, with a decimal comma where no comma parts the cells. */
  OptionalDouble number(String cell) {
    String text = cell.strip();
    try {
      double value = Double.parseDouble(delimiter == ',' ? text : text.replace(',', '.'));
      return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
    } catch (NumberFormatException e) {
      return OptionalDouble.empty();
    }
  }
}
