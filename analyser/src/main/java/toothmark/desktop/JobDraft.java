package toothmark.desktop;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import toothmark.capture.StatedLayout;
import toothmark.edges.SensorKind;
import toothmark.examination.CaptureTable;
import toothmark.examination.JobSheet;
import toothmark.examination.JobSheetException;
import toothmark.examination.JobSheetReader;
import toothmark.ignition.PickUp;
import toothmark.timing.TdcReadings;
import toothmark.units.PlainNumber;

/**
 * A job sheet as it is being typed: text in every field, right or not.
 *
 * <p>It is checked by writing it as TOML and reading that as any sheet is read, so the window
 * accepts what the command line accepts and complains in the same words.
 *
 * @param fields text by field; a missing one is empty
 * @param coils the coils
 * @param layout how the capture is laid out, kept as the sheet had it
 */
record JobDraft(Map<Field, String> fields, List<CoilDraft> coils, StatedLayout layout) {

  private static final String NAME = "job sheet";
  private static final String AUTO = "auto";

  /** A field, and its table and key in the file. */
  enum Field {
    /** Who examines. */
    SHOP("job", "shop", Form.TEXT),
    /** Engine or vehicle. */
    TITLE("job", "title", Form.TEXT),
    /** Free text. */
    NOTES("job", "notes", Form.TEXT),
    /** How many cylinders. */
    CYLINDERS("engine", "cylinders", Form.NUMBER),
    /** Firing order. */
    ORDER("engine.firing", "order", Form.LIST),
    /** TDC of each cylinder of the order. */
    ANGLES("engine.firing", "angles_deg", Form.LIST),
    /** The wheel as the controller is told. */
    PATTERN("wheel", "pattern", Form.TEXT),
    /** Tooth 1 before TDC. */
    TOOTH1("wheel", "tooth1_btdc_deg", Form.NUMBER),
    /** Diameter at the tooth tips. */
    CIRCLE("wheel", "sensor_circle_mm", Form.NUMBER),
    /** Kind of sensor. */
    KIND("sensor", "kind", Form.TEXT),
    /** Edge that the controller times. */
    EDGE("sensor", "edge", Form.TEXT),
    /** Crank channel. */
    CRANK("channels", "crank", Form.TEXT),
    /** TDC channel. */
    TDC("channels", "tdc", Form.TEXT),
    /** Touches of a piston stop. */
    STOP("tdc", "stop_deg", Form.LIST),
    /** What its pointer reads with tooth 1 at the sensor. */
    TOOTH1_READ("tdc", "tooth1_deg", Form.LIST),
    /** Readings with a timing light. */
    LIGHT("tdc", "light", Form.TEXT),
    /** Standard uncertainty of one reading. */
    READING("tdc", "reading_uncertainty_deg", Form.NUMBER),
    /** Fixed timing. */
    ADVANCE("commanded", "advance_deg", Form.NUMBER),
    /** Ignition table. */
    TABLE("commanded", "table", Form.TEXT),
    /** Load at which to read it. */
    LOAD("commanded", "load", Form.NUMBER);

    private final String table;
    private final String key;
    private final Form form;

    Field(String table, String key, Form form) {
      this.table = table;
      this.key = key;
      this.form = form;
    }

    /** Full name of the key in the file. */
    String path() {
      return table + "." + key;
    }
  }

  /** How a value is written. */
  enum Form {
    /** In quotes. */
    TEXT,
    /** A number; in quotes when it is none, so that the reader says so. */
    NUMBER,
    /** Numbers in brackets. */
    LIST
  }

  /** A coil as it is being typed. */
  record CoilDraft(String name, String channel, String cylinders, String signal) {}

  JobDraft {
    Map<Field, String> kept = new EnumMap<>(Field.class);
    fields.forEach(
        (f, v) -> {
          if (!v.isEmpty()) {
            kept.put(f, v);
          }
        });
    fields = java.util.Collections.unmodifiableMap(kept);
    coils = List.copyOf(coils);
  }

  static JobDraft of(JobSheet sheet) {
    Map<Field, String> f = new EnumMap<>(Field.class);
    f.put(Field.SHOP, sheet.heading().shop());
    f.put(Field.TITLE, sheet.heading().title());
    f.put(Field.NOTES, sheet.heading().notes());
    sheet.engine().cylinders().ifPresent(n -> f.put(Field.CYLINDERS, Integer.toString(n)));
    f.put(Field.ORDER, join(sheet.engine().firingOrder()));
    f.put(Field.ANGLES, plain(sheet.engine().firingAngles()));
    sheet.wheel().pattern().ifPresent(p -> f.put(Field.PATTERN, p.toString()));
    number(f, Field.TOOTH1, sheet.wheel().tooth1BtdcDegrees());
    number(f, Field.CIRCLE, sheet.wheel().sensorCircleMillimetres());
    sheet.sensor().kind().map(SensorKind::label).ifPresent(k -> f.put(Field.KIND, k));
    sheet.sensor().edge().ifPresent(e -> f.put(Field.EDGE, e.name().toLowerCase(Locale.ROOT)));
    sheet.channels().crank().ifPresent(c -> f.put(Field.CRANK, c));
    sheet.channels().tdc().ifPresent(c -> f.put(Field.TDC, c));
    readings(f, sheet.tdc());
    number(f, Field.ADVANCE, sheet.commanded().advanceDegrees());
    sheet.commanded().table().ifPresent(t -> f.put(Field.TABLE, t.file().toString()));
    number(f, Field.LOAD, sheet.commanded().load());
    List<CoilDraft> coils = new ArrayList<>();
    for (JobSheet.CoilEntry c : sheet.coils()) {
      coils.add(
          new CoilDraft(
              c.coil().name(), c.channel(), join(c.coil().cylinders()), c.coil().pickUp().label()));
    }
    return new JobDraft(f, coils, sheet.layout());
  }

  private static void readings(Map<Field, String> f, TdcReadings read) {
    f.put(
        Field.STOP,
        plain(
            read.stops().stream()
                .flatMap(s -> Stream.of(s.beforeDegrees(), s.afterDegrees()))
                .toList()));
    f.put(Field.TOOTH1_READ, plain(read.tooth1Degrees()));
    read.light().ifPresent(l -> f.put(Field.LIGHT, l.file().toString()));
    if (read.readingUncertaintyDegrees() != TdcReadings.USUAL_UNCERTAINTY_DEGREES) {
      f.put(Field.READING, plain(read.readingUncertaintyDegrees()));
    }
  }

  private static String plain(List<Double> numbers) {
    return numbers.stream().map(JobDraft::plain).collect(Collectors.joining(", "));
  }

  private static void number(Map<Field, String> f, Field field, OptionalDouble value) {
    value.ifPresent(v -> f.put(field, plain(v)));
  }

  private static String plain(double v) {
    return v == Math.rint(v) ? Long.toString((long) v) : PlainNumber.significant(v);
  }

  private static String join(List<Integer> numbers) {
    return numbers.stream().map(String::valueOf).collect(Collectors.joining(", "));
  }

  String get(Field field) {
    return fields.getOrDefault(field, "");
  }

  JobDraft with(Field field, String text) {
    Map<Field, String> next = new EnumMap<>(Field.class);
    next.putAll(fields);
    next.put(field, text.strip().equals(AUTO) ? "" : text);
    return new JobDraft(next, coils, layout);
  }

  JobDraft withCoils(List<CoilDraft> next) {
    return new JobDraft(fields, next, layout);
  }

  /** Gives a channel a role, and takes the role from any other channel. */
  JobDraft withRole(Field role, String channel) {
    return withoutRole(channel).with(role, channel);
  }

  /** Takes its role from a channel: what it is is then found from the capture. */
  JobDraft withoutRole(String channel) {
    return withCoils(coils.stream().filter(c -> !c.channel().equals(channel)).toList())
        .withoutMark(channel);
  }

  private JobDraft withoutMark(String channel) {
    JobDraft next = this;
    for (Field f : List.of(Field.CRANK, Field.TDC)) {
      next = get(f).equals(channel) ? next.with(f, "") : next;
    }
    return next;
  }

  /** Gives a channel to a coil; the coil that had it gets the other's in turn. */
  JobDraft withCoil(int index, String channel) {
    String before = coils.get(index).channel();
    List<CoilDraft> next = new ArrayList<>();
    for (int i = 0; i < coils.size(); i++) {
      CoilDraft c = coils.get(i);
      String its = i == index ? channel : c.channel().equals(channel) ? before : c.channel();
      next.add(new CoilDraft(c.name(), its, c.cylinders(), c.signal()));
    }
    return withCoils(next).withoutMark(channel);
  }

  /** Adds a coil on a channel, which may be empty, and takes the role that the channel had. */
  JobDraft withNewCoil(String channel) {
    JobDraft free = channel.isEmpty() ? this : withoutRole(channel);
    List<CoilDraft> next = new ArrayList<>(free.coils());
    String name = Phrases.of("job.coil", Integer.toString(next.size() + 1));
    next.add(new CoilDraft(name, channel, "", PickUp.LOGIC.label()));
    return free.withCoils(next);
  }

  JobSheet sheet() throws JobSheetException {
    return JobSheetReader.parse(NAME, toToml());
  }

  /** What is wrong, without the place in a file that nobody sees; empty when all is right. */
  Optional<Fault> fault() {
    try {
      sheet();
      return Optional.empty();
    } catch (JobSheetException e) {
      Optional<Field> field =
          Arrays.stream(Field.values())
              .filter(f -> e.key().equals(Optional.of(f.path())))
              .findFirst();
      String place = field.isPresent() ? "" : e.key().map(k -> k + ": ").orElse("");
      return Optional.of(new Fault(field, place + e.fault()));
    }
  }

  /** A complaint about the draft and the field that it is about; none for the coils. */
  record Fault(Optional<Field> field, String message) {}

  /** Writes the sheet as a file of its own. */
  String toToml() {
    StringBuilder out = new StringBuilder();
    String table = "";
    for (Field f : Field.values()) {
      if (!get(f).isBlank()) {
        if (!f.table.equals(table)) {
          table = f.table;
          out.append(out.length() > 0 ? "\n" : "").append('[').append(table).append("]\n");
        }
        out.append(f.key).append(" = ").append(value(f.form, get(f))).append('\n');
      }
    }
    for (CoilDraft c : coils) {
      out.append(out.length() > 0 ? "\n" : "").append("[[coils]]\n");
      line(out, "name", Form.TEXT, c.name());
      line(out, "channel", Form.TEXT, c.channel());
      line(out, "cylinders", Form.LIST, c.cylinders());
      line(out, "signal", Form.TEXT, c.signal());
    }
    return out.append(CaptureTable.toToml(layout)).toString();
  }

  private static void line(StringBuilder out, String key, Form form, String text) {
    if (!text.isBlank()) {
      out.append(key).append(" = ").append(value(form, text)).append('\n');
    }
  }

  private static String value(Form form, String text) {
    String plain = text.strip();
    return switch (form) {
      case TEXT -> quoted(text);
      case NUMBER -> isNumber(plain) ? decimalPoint(plain) : quoted(plain);
      case LIST -> list(plain);
    };
  }

  private static String list(String text) {
    List<String> parts = new ArrayList<>();
    for (String p : text.replaceAll("[\\[\\]]", "").split("(?<=\\d)-|(?<=\\d)\\s+-\\s+|[,;\\s]+")) {
      if (!p.isEmpty()) {
        parts.add(isNumber(p) ? p : quoted(p));
      }
    }
    return "[" + String.join(", ", parts) + "]";
  }

  private static boolean isNumber(String text) {
    return text.matches("[+\u2212-]?(0|[1-9]\\d*)([.,]\\d+)?");
  }

  private static String decimalPoint(String number) {
    return number.replace(',', '.').replace('\u2212', '-');
  }

  private static String quoted(String text) {
    StringBuilder s = new StringBuilder("\"");
    for (char c : text.toCharArray()) {
      switch (c) {
        case '"' -> s.append("\\\"");
        case '\\' -> s.append("\\\\");
        case '\n' -> s.append("\\n");
        case '\t' -> s.append("\\t");
        default -> {
          if (c >= ' ' && c != 0x7f) {
            s.append(c);
          }
        }
      }
    }
    return s.append('"').toString();
  }
}
