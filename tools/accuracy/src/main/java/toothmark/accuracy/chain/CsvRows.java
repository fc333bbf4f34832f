package toothmark.accuracy.chain;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;

/** The rows of a table with named columns. */
final class CsvRows {

  private CsvRows() {}

  static List<NamedCsvRecord> read(Path file) throws IOException {
    try (CsvReader<NamedCsvRecord> rows = CsvReader.builder().ofNamedCsvRecord(file)) {
      return rows.stream().toList();
    }
  }

  static double number(NamedCsvRecord row, String column) {
    return Double.parseDouble(row.getField(column));
  }

  static OptionalDouble optional(NamedCsvRecord row, String column) {
    String text = row.getField(column);
    return text.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(text));
  }
}
