package toothmark.desktop;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import toothmark.edges.SensorKind;
import toothmark.examination.JobSheet;
import toothmark.examination.JobSheetException;
import toothmark.examination.JobSheetReader;
import toothmark.examination.JobSheetText;
import toothmark.ignition.PickUp;
import toothmark.timing.TdcReadings;
import toothmark.units.PlainNumber;

/**
 * A job sheet as it is being typed: text in every field, right or not.
 *
 * <p>It is checked by writing it as TOML and reading that as any sheet is read, so the window
 * accepts what the command line accepts and complains in the same words. What is written is the
 * text that was opened, changed where the form was.
 *
 * @param fields text by field; a missing one is empty
 * @param coils the coils
 * @param opened what was opened
 */
record JobDraft(Map<Field, String> fields, List<CoilDraft> coils, Opened opened) {

  private static final String COILS = "coils";
  private static final String AUTO = "auto";

  private static final Set<String> UNNAMED = Set.of("", AUTO);

  /** What is written for nothing. */
  private static final Set<String> EMPTY = Set.of("\"\"", "[]");

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
    ORDER("engine.firing", "order", Form.WHOLE_LIST),
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
    LIGHT("tdc", "light", Form.FILE),
    /** Standard uncertainty of one reading. */
    READING("tdc", "reading_uncertainty_deg", Form.NUMBER),
    /** Fixed timing. */
    ADVANCE("commanded", "advance_deg", Form.NUMBER),
    /** Ignition table. */
    TABLE("commanded", "table", Form.FILE),
    /** Load at which to read it. */
    LOAD("commanded", "load", Form.NUMBER);

    private final String table;
    private final String key;
    private final Form form;
    private final String emptied;

    Field(String table, String key, Form form) {
      this.table = table;
      this.key = key;
      this.form = form;
      this.emptied = table.equals("job") ? "" : AUTO;
    }

    /** Full name of the key in the file. */
    String path() {
      return table + "." + key;
    }
  }

  /** What was opened: the text, and what the form showed of it. */
  record Opened(JobSheetText text, Map<Field, String> fields, List<CoilDraft> coils) {}

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

  /** The draft that states what a text states. */
  static JobDraft of(JobSheetText text) throws JobSheetException {
    JobSheet sheet = text.sheet();
    Map<Field, String> f = fields(sheet);
    sheet.commanded().table().ifPresent(t -> file(f, Field.TABLE, text.folder(), t.file()));
    sheet.tdc().light().ifPresent(l -> file(f, Field.LIGHT, text.folder(), l.file()));
    List<CoilDraft> coils = new ArrayList<>();
    for (JobSheet.CoilEntry c : sheet.coils()) {
      coils.add(
          new CoilDraft(
              isNamed(text, coils.size()) ? c.coil().name() : "",
              c.channel(),
              join(c.coil().cylinders()),
              c.coil().pickUp().label(),
              OptionalInt.of(coils.size())));
    }
    f.values().removeIf(String::isEmpty);
    return new JobDraft(f, coils, new Opened(text, Map.copyOf(f), List.copyOf(coils)));
  }

  /** Whether a coil has a name of its own, which it keeps when others are taken out before it. */
  private static boolean isNamed(JobSheetText text, int coil) {
    return text.value(COILS + "." + coil + ".name")
        .filter(v -> !UNNAMED.contains(v.substring(1, v.length() - 1)))
        .isPresent();
  }

  /** The draft that states nothing, for a folder. */
  static JobDraft empty(Path folder) {
    JobSheetText text = new JobSheetText(JobSheetReader.USUAL_NAME, "", folder);
    return new JobDraft(Map.of(), List.of(), new Opened(text, Map.of(), List.of()));
  }

  /** A file as it is named from a folder on; whole where there is no way. */
  private static Path from(Path folder, Path file) {
    Path whole = folder.resolve(file).toAbsolutePath().normalize();
    Path start = folder.toAbsolutePath().normalize();
    return whole.getRoot().equals(start.getRoot()) ? start.relativize(whole) : whole;
  }

  private static void file(Map<Field, String> f, Field field, Path folder, Path file) {
    f.put(field, from(folder, file).toString());
  }

  private static Map<Field, String> fields(JobSheet sheet) {
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
    number(f, Field.LOAD, sheet.commanded().load());
    return f;
  }

  private static void readings(Map<Field, String> f, TdcReadings read) {
    f.put(
        Field.STOP,
        plain(
            read.stops().stream()
                .flatMap(s -> Stream.of(s.beforeDegrees(), s.afterDegrees()))
                .toList()));
    f.put(Field.TOOTH1_READ, plain(read.tooth1Degrees()));
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
    return new JobDraft(next, coils, opened);
  }

  /** Names a file, from the folder of the sheet on. */
  JobDraft withFile(Field field, Path file) {
    return with(field, from(opened.text().folder(), file).toString());
  }

  JobDraft withCoils(List<CoilDraft> next) {
    return new JobDraft(fields, next, opened);
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
      next.add(c.on(its));
    }
    return withCoils(next).withoutMark(channel);
  }

  /**
   * Adds a coil on a channel, which may be empty, and takes the role that the channel had.
   *
   * @param known what it is called so far
   */
  JobDraft withNewCoil(String channel, Optional<String> known) {
    JobDraft free = channel.isEmpty() ? this : withoutRole(channel);
    List<CoilDraft> next = new ArrayList<>(free.coils());
    Set<String> taken =
        IntStream.range(0, next.size()).mapToObj(free::name).collect(Collectors.toSet());
    String name =
        Stream.concat(
                known.stream(),
                IntStream.iterate(next.size(), i -> i + 1).mapToObj(CoilDraft::nameAt))
            .filter(n -> !taken.contains(n))
            .findFirst()
            .orElseThrow();
    next.add(new CoilDraft(name, channel, "", PickUp.LOGIC.label()));
    return free.withCoils(next);
  }

  /** What a coil is called: by its place where it has no name. */
  String name(int coil) {
    return coils.get(coil).name(coil);
  }

  JobSheet sheet() throws JobSheetException {
    return text(opened.text().folder()).sheet();
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

  /** The text that was opened, changed where the form was, for a file in a folder. */
  JobSheetText text(Path folder) {
    JobSheetText next = opened.text();
    for (Field f : Field.values()) {
      next = f.form == Form.FILE ? withFile(next, f, folder) : written(next, f, get(f));
    }
    return withCoils(next);
  }

  private JobSheetText written(JobSheetText text, Field f, String typed) {
    if (typed.equals(opened.fields().getOrDefault(f, ""))) {
      return text;
    }
    if (!typed.isBlank()) {
      return text.with(f.path(), f.form.toml(typed));
    }
    return text.states(f.path()) ? text.with(f.path(), Form.TEXT.toml(f.emptied)) : text;
  }

  /** A file is named from the folder of the sheet on, wherever that goes. */
  private JobSheetText withFile(JobSheetText text, Field f, Path folder) {
    String typed = get(f);
    Path home = opened.text().folder();
    boolean isSame = typed.equals(opened.fields().getOrDefault(f, ""));
    if (typed.isBlank() || isSame && folder.equals(home)) {
      return written(text, f, typed);
    }
    try {
      String name = from(folder, home.resolve(typed.strip())).toString().replace('\\', '/');
      return text.with(f.path(), f.form.toml(name));
    } catch (InvalidPathException e) {
      return written(text, f, typed); // the reader says what is wrong with it
    }
  }

  private JobSheetText withCoils(JobSheetText text) {
    JobSheetText next = text;
    for (CoilDraft c : coils) {
      if (c.place().isPresent()) {
        next = written(next, c, opened.coils().get(c.place().getAsInt()));
      }
    }
    for (int i = opened.coils().size() - 1; i >= 0; i--) {
      OptionalInt place = OptionalInt.of(i);
      if (coils.stream().noneMatch(c -> c.place().equals(place))) {
        next = next.withoutItem(COILS, i);
      }
    }
    for (CoilDraft c : coils) {
      if (c.place().isEmpty()) {
        Map<String, String> keys = c.keys();
        keys.values().removeIf(EMPTY::contains);
        next = next.withItem(COILS, keys);
      }
    }
    return next;
  }

  private static JobSheetText written(JobSheetText text, CoilDraft now, CoilDraft before) {
    JobSheetText next = text;
    Map<String, String> was = before.keys();
    for (Map.Entry<String, String> e : now.keys().entrySet()) {
      if (!e.getValue().equals(was.get(e.getKey()))) {
        String key = COILS + "." + before.place().getAsInt() + "." + e.getKey();
        next = next.with(key, EMPTY.contains(e.getValue()) ? Form.TEXT.toml(AUTO) : e.getValue());
      }
    }
    return next;
  }
}
