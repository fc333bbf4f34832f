package toothmark.report;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.OptionalDouble;
import toothmark.units.PlainNumber;

/**
 * Writes one table as comma-separated values in UTF-8, a line feed after each row.
 *
 * <p>A text cell is quoted where RFC 4180 asks for it. Numbers are written straight into the
 * buffer, since a long capture has millions of teeth. The caller closes the stream after {@link
 * #flush()}.
 */
final class CsvTable {

  private static final int ROOM = 64;

  private final OutputStream out;
  private final byte[] buffer = new byte[1 << 15];
  private int used;
  private boolean rowStarted;

  /** Starts a table and writes its header as it stands. */
  CsvTable(OutputStream out, String header) throws IOException {
    this.out = out;
    put((header + "\n").getBytes(StandardCharsets.UTF_8));
  }

  /** A number with a fixed count of decimals, 0 to 9. */
  CsvTable fixed(double value, int decimals) throws IOException {
    separate();
    int length = PlainNumber.putFixed(value, decimals, buffer, used);
    if (length > 0) {
      used += length;
    } else {
      put(PlainNumber.fixed(value, decimals).getBytes(StandardCharsets.US_ASCII));
    }
    return this;
  }

  /** A number with a fixed count of decimals, or an empty cell where it is not known. */
  CsvTable fixed(OptionalDouble value, int decimals) throws IOException {
    return value.isPresent() ? fixed(value.getAsDouble(), decimals) : empty();
  }

  /** A whole number. */
  CsvTable whole(int value) throws IOException {
    return fixed(value, 0);
  }

  /** A cell without a value. */
  CsvTable empty() throws IOException {
    separate();
    return this;
  }

  /** A text cell. */
  CsvTable text(String value) throws IOException {
    separate();
    boolean quote = value.chars().anyMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r');
    String cell = quote ? '"' + value.replace("\"", "\"\"") + '"' : value;
    put(cell.getBytes(StandardCharsets.UTF_8));
    return this;
  }

  /** Ends the row. */
  void endRow() throws IOException {
    makeRoom(1);
    buffer[used++] = '\n';
    rowStarted = false;
  }

  /** Hands everything written so far to the stream. */
  void flush() throws IOException {
    out.write(buffer, 0, used);
    used = 0;
    out.flush();
  }

  private void separate() throws IOException {
    makeRoom(ROOM);
    if (rowStarted) {
      buffer[used++] = ',';
    }
    rowStarted = true;
  }

  private void put(byte[] bytes) throws IOException {
    if (bytes.length > ROOM) {
      flush();
      out.write(bytes);
      return;
    }
    makeRoom(bytes.length);
    System.arraycopy(bytes, 0, buffer, used, bytes.length);
    used += bytes.length;
  }

  private void makeRoom(int bytes) throws IOException {
    if (used + bytes > buffer.length) {
      out.write(buffer, 0, used);
      used = 0;
    }
  }
}
