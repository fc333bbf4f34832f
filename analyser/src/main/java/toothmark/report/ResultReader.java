package toothmark.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import toothmark.chart.RunOutline;
import toothmark.compare.RecordedExamination;
import toothmark.compare.RecordedFigure;
import toothmark.compare.RecordedFinding;
import toothmark.examination.Examination;
import toothmark.units.Measured;
import toothmark.units.Say;

/** Reads back what {@link ExaminationJson} wrote. */
public final class ResultReader {

  /** The file of a result folder that holds an examination. */
  public static final String FILE = "examination.json";

  private static final String SCHEMA = "toothmark.examination/1";
  private static final double SECONDS_PER_MINUTE = 60;
  private static final double MILLI = 1e3;

  private final Object root;
  private final List<RecordedFigure> figures = new ArrayList<>();

  private ResultReader(Object root) {
    this.root = root;
  }

  /**
   * Reads the examination of a result folder.
   *
   * @param folder as {@link ResultFolder#write} left it
   * @return what is on record
   * @throws IOException if it cannot be read or is no examination
   */
  public static RecordedExamination read(Path folder) throws IOException {
    return new ResultReader(root(folder)).record();
  }

  /**
   * Reads from a result folder what a comparison draws.
   *
   * @param folder as {@link ResultFolder#write} left it
   * @return the outline; without what an older version did not write
   * @throws IOException if a file of it cannot be read or is broken
   */
  public static RunOutline outline(Path folder) throws IOException {
    return new OutlineReader(folder, root(folder)).read();
  }

  /**
   * Whether results lack tables of which a comparison draws, as those of older versions do.
   *
   * @param folder of results
   * @return true where one is missing
   */
  public static boolean isBare(Path folder) {
    return OutlineReader.TABLES.stream().anyMatch(t -> Files.notExists(folder.resolve(t)));
  }

  private static Object root(Path folder) throws IOException {
    Path file = folder.resolve(FILE);
    try (InputStream in = Files.newInputStream(file)) {
      return root(in, file.toString());
    }
  }

  /**
   * The record that an examination would leave.
   *
   * @param examination just made
   * @return the same as reading back its file
   * @throws IOException never in practice
   */
  public static RecordedExamination of(Examination examination) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ExaminationJson.write(examination, out);
    return new ResultReader(root(new ByteArrayInputStream(out.toByteArray()), FILE)).record();
  }

  private static Object root(InputStream in, String name) throws IOException {
    try (JsonParser parser = new JsonFactory().createParser(in)) {
      parser.nextToken();
      Object root = value(parser);
      if (!SCHEMA.equals(at(root, "schema"))) {
        throw new FileSystemException(name, null, "is no examination (\"" + SCHEMA + "\")");
      }
      return root;
    } catch (JsonProcessingException e) {
      throw new FileSystemException(name, null, "is broken JSON: " + e.getOriginalMessage());
    }
  }

  private static Object value(JsonParser parser) throws IOException {
    return switch (parser.currentToken()) {
      case START_OBJECT -> {
        Map<String, Object> map = new LinkedHashMap<>();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
          String key = parser.currentName();
          parser.nextToken();
          map.put(key, value(parser));
        }
        yield map;
      }
      case START_ARRAY -> {
        List<Object> list = new ArrayList<>();
        while (parser.nextToken() != JsonToken.END_ARRAY) {
          list.add(value(parser));
        }
        yield list;
      }
      case VALUE_NUMBER_FLOAT, VALUE_NUMBER_INT -> parser.getDoubleValue();
      case VALUE_NULL -> null;
      default -> parser.getText();
    };
  }

  private RecordedExamination record() {
    figure(Wording.of("figure.alignment"), "°", measured(root, "alignment", "error_deg"));
    figure(Wording.of("figure.offset"), "°", measured(root, "advance", "offset_deg"));
    figure(Wording.of("figure.delay"), Say.THIN + "µs", measured(root, "advance", "delay_us"));
    double minutes = number(root, "capture", "duration_s").orElse(0.0) / SECONDS_PER_MINUTE;
    rate(Wording.of("figure.running"), minutes, "sync", "running");
    rate(Wording.of("figure.cranking"), minutes, "sync", "cranking");
    rate(Wording.of("figure.missing"), minutes, "teeth", "missing");
    rate(Wording.of("figure.strays"), minutes, "teeth", "stray");
    list(root, "coils").forEach(this::coil);
    return new RecordedExamination(
        text(root, "capture", "file"),
        saved(),
        text(root, "verdict"),
        Optional.ofNullable((String) at("wheel", "pattern")),
        tdcSource(),
        figures,
        list(root, "findings").stream()
            .map(f -> new RecordedFinding(text(f, "id"), text(f, "severity"), text(f, "title")))
            .toList());
  }

  private Optional<Instant> saved() {
    try {
      return Optional.of(Instant.parse(text(root, "capture", "saved")));
    } catch (DateTimeParseException e) {
      return Optional.empty(); // from standard input, or of an older examination
    }
  }

  /** Older examinations only say whether top dead centre was measured: by marks, then. */
  private Optional<String> tdcSource() {
    String source = text(root, "alignment", "source");
    String by = "measured".equals(text(root, "advance", "reference")) ? "mark-channel" : "";
    String from = "nominal".equals(text(root, "advance", "reference")) ? "nominal-setting" : by;
    return Optional.of(source.isEmpty() ? from : source).filter(s -> !s.isEmpty());
  }

  /**
   * Charges that all fall alike on the samples share the doubt of one, which no mean takes away.
   */
  private void coil(Object coil) {
    Optional<Double> mean = number(coil, "dwell_ms", "mean");
    double sparks = number(coil, "sparks").orElse(0.0);
    double sd = number(coil, "dwell_ms", "standard_deviation").orElse(0.0);
    double rate = number(root, "capture", "sample_rate_hz").orElse(0.0);
    double sample = rate > 0 ? MILLI / rate / Math.sqrt(12) : 0;
    String name = text(coil, "name");
    figure(
        Wording.of("figure.dwell", name),
        Say.THIN + "ms",
        mean.map(m -> new Measured(m, Math.hypot(sd / Math.sqrt(Math.max(1, sparks)), sample))));
  }

  /** A count as a rate; n events at random have a standard deviation of the root of n (Poisson). */
  private void rate(String name, double minutes, String... path) {
    if (minutes > 0) {
      figure(
          name,
          " a minute",
          number(root, path)
              .map(n -> new Measured(n / minutes, Math.sqrt(Math.max(1, n)) / minutes)));
    }
  }

  private void figure(String name, String unit, Optional<Measured> value) {
    value.ifPresent(v -> figures.add(new RecordedFigure(name, unit, v)));
  }

  static Optional<Measured> measured(Object from, String... path) {
    Object m = at(from, path);
    return number(m, "value")
        .flatMap(v -> number(m, "standard_uncertainty").map(u -> new Measured(v, u)));
  }

  static Optional<Double> number(Object from, String... path) {
    return at(from, path) instanceof Double d ? Optional.of(d) : Optional.empty();
  }

  static String text(Object from, String... path) {
    return at(from, path) instanceof String s ? s : "";
  }

  static List<?> list(Object from, String... path) {
    return at(from, path) instanceof List<?> l ? l : List.of();
  }

  private Object at(String... path) {
    return at(root, path);
  }

  /** What lies at the end of a path of keys; null when the path ends early. */
  private static Object at(Object from, String... path) {
    Object here = from;
    for (String key : path) {
      here = here instanceof Map<?, ?> map ? map.get(key) : null;
    }
    return here;
  }
}
