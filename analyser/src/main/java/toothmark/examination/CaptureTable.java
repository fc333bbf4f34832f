package toothmark.examination;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import toothmark.capture.NumberType;
import toothmark.capture.StatedColumn;
import toothmark.capture.StatedLayout;

/**
 * The table {@code [capture]} of a job sheet: how a capture is laid out, where the guess is wrong.
 */
public final class CaptureTable {

  private static final Map<String, Character> DELIMITERS = Map.of("tab", '\t', "blanks", ' ');
  private static final List<String> TIME_UNITS = List.of("s", "ms", "us", "µs", "ns");
  private static final double LONGEST_INTERVAL_SECONDS = 3600;
  private static final double HIGHEST_RATE_HZ = 1e12;
  private static final double LARGEST = 1e300;
  private static final int MOST_HEADER_LINES = 100_000;
  private static final double MOST_HEADER_BYTES = 1L << 40;

  private CaptureTable() {}

  static StatedLayout read(SheetTable t) throws JobSheetException {
    t.allow(
        "delimiter",
        "decimal_mark",
        "header_lines",
        "time_unit",
        "interval_s",
        "rate_hz",
        "columns",
        "raw");
    List<StatedColumn> columns = new ArrayList<>();
    for (SheetTable column : t.tables("columns")) {
      columns.add(column(column));
    }
    OptionalDouble lines = t.number("header_lines", 0, MOST_HEADER_LINES);
    return new StatedLayout(
        new StatedLayout.Text(
            delimiter(t),
            word(t, "decimal_mark", List.of(".", ",")).map(m -> m.charAt(0)),
            lines.isPresent() ? OptionalInt.of((int) lines.getAsDouble()) : OptionalInt.empty()),
        new StatedLayout.Clock(word(t, "time_unit", TIME_UNITS), interval(t)),
        columns,
        raw(t.table("raw"), lines.isPresent()));
  }

  private static Optional<Character> delimiter(SheetTable t) throws JobSheetException {
    Optional<String> text = t.text("delimiter");
    if (text.isPresent() && DELIMITERS.containsKey(text.get())) {
      return Optional.of(DELIMITERS.get(text.get()));
    }
    if (text.isPresent() && text.get().length() != 1) {
      throw t.complaint(
          "delimiter", "must be one character, \"tab\" or \"blanks\", got \"" + text.get() + "\"");
    }
    return text.map(s -> s.charAt(0));
  }

  private static OptionalDouble interval(SheetTable t) throws JobSheetException {
    OptionalDouble interval = t.number("interval_s", Double.MIN_NORMAL, LONGEST_INTERVAL_SECONDS);
    OptionalDouble rate = t.number("rate_hz", 1 / LONGEST_INTERVAL_SECONDS, HIGHEST_RATE_HZ);
    if (interval.isPresent() && rate.isPresent()) {
      throw t.complaint("rate_hz", "states the same as capture.interval_s; keep one of the two");
    }
    return rate.isPresent() ? OptionalDouble.of(1 / rate.getAsDouble()) : interval;
  }

  private static StatedColumn column(SheetTable t) throws JobSheetException {
    t.allow("name", "unit", "role", "scale", "offset");
    List<String> roles = Arrays.stream(StatedColumn.Use.values()).map(u -> u.word()).toList();
    Optional<StatedColumn.Use> use =
        word(t, "role", roles).map(w -> StatedColumn.Use.valueOf(w.toUpperCase(Locale.ROOT)));
    OptionalDouble scale = t.number("scale", -LARGEST, LARGEST);
    OptionalDouble offset = t.number("offset", -LARGEST, LARGEST);
    if (scale.isPresent() && scale.getAsDouble() == 0) {
      throw t.complaint("scale", "must not be 0; state what one count is worth");
    }
    boolean times = use.filter(StatedColumn.Use::isCount).isPresent();
    if (times && offset.isPresent()) {
      throw t.complaint("offset", "is for channels only; remove it from a " + use.get().word());
    }
    if (times && scale.isPresent() && scale.getAsDouble() < 0) {
      throw t.complaint("scale", "must be above 0 for a " + use.get().word());
    }
    return new StatedColumn(t.text("name"), t.text("unit"), use, scale, offset);
  }

  private static Optional<StatedLayout.RawNumbers> raw(SheetTable t, boolean hasHeaderLines)
      throws JobSheetException {
    t.allow("numbers", "byte_order", "header_bytes");
    List<String> types = Arrays.stream(NumberType.values()).map(NumberType::word).toList();
    Optional<NumberType> type = word(t, "numbers", types).flatMap(NumberType::named);
    Optional<String> order = word(t, "byte_order", List.of("little", "big"));
    OptionalDouble header = t.number("header_bytes", 0, MOST_HEADER_BYTES);
    if (type.isEmpty()) {
      if (order.isPresent() || header.isPresent()) {
        throw t.complaint("numbers", "is missing; state how a number is written: " + types);
      }
      return Optional.empty();
    }
    if (hasHeaderLines) {
      throw t.complaint("header_bytes", "counts for bare numbers, not capture.header_lines");
    }
    return Optional.of(
        new StatedLayout.RawNumbers(
            type.get(),
            order.filter("big"::equals).isPresent()
                ? StatedLayout.Order.BIG
                : StatedLayout.Order.LITTLE,
            (long) header.orElse(0)));
  }

  private static Optional<String> word(SheetTable t, String key, List<String> known)
      throws JobSheetException {
    Optional<String> word = t.text(key);
    if (word.isPresent() && !known.contains(word.get())) {
      String all = known.stream().map(k -> '"' + k + '"').collect(Collectors.joining(", "));
      throw t.complaint(key, "must be one of " + all + ", got \"" + word.get() + "\"");
    }
    return word;
  }
}
