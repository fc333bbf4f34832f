package toothmark.examination;

import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.tomlj.Toml;
import org.tomlj.TomlParseError;
import org.tomlj.TomlParseResult;
import toothmark.capture.UnreadableCaptureException;
import toothmark.edges.EdgeDirection;
import toothmark.edges.SensorKind;
import toothmark.ignition.Coil;
import toothmark.ignition.PickUp;
import toothmark.timing.IgnitionTable;
import toothmark.timing.IgnitionTableReader;
import toothmark.timing.PistonStop;
import toothmark.timing.StrobeReader;
import toothmark.timing.StrobeWorksheet;
import toothmark.timing.TdcReadings;
import toothmark.wheel.WheelPattern;

/** Reads a job sheet (TOML 1.0). */
public final class JobSheetReader {

  private static final int MOST_CYLINDERS = 12;

  /** What the sheet is called that lies beside captures. */
  public static final String USUAL_NAME = "job.toml";

  private static final String STOP = "stop_deg";
  private static final String TOOTH1_READ = "tooth1_deg";
  private static final String LIGHT = "light";

  private JobSheetReader() {}

  /**
   * Reads a file.
   *
   * @param file the sheet, UTF-8
   * @return what it states
   * @throws JobSheetException if it is no TOML, has an unknown key or a value out of range
   * @throws IOException if the file cannot be read
   */
  public static JobSheet read(Path file) throws JobSheetException, IOException {
    return JobSheetText.read(file).sheet();
  }

  /**
   * Reads a text; files that it names are sought from the working directory on.
   *
   * @param name what to call it in a complaint
   * @param toml the sheet
   * @return what it states
   * @throws JobSheetException if it is no TOML, has an unknown key or a value out of range
   */
  public static JobSheet parse(String name, String toml) throws JobSheetException {
    return parse(name, toml, Path.of(""));
  }

  static JobSheet parse(String name, String toml, Path folder) throws JobSheetException {
    TomlParseResult result = Toml.parse(toml);
    if (result.hasErrors()) {
      TomlParseError e = result.errors().get(0);
      throw new JobSheetException(name, OptionalInt.of(e.position().line()), "", e.getMessage());
    }
    SheetTable top = new SheetTable(name, "", result);
    top.allow(
        "job", "engine", "wheel", "sensor", "channels", "tdc", "coils", "commanded", "capture");
    JobSheet.Engine engine = engine(top.table("engine"));
    List<JobSheet.CoilEntry> coils = coils(top.tables("coils"));
    try {
      FiringOrders.of(engine, coils.stream().map(JobSheet.CoilEntry::coil).toList());
    } catch (JobSheetException e) {
      throw top.table("engine").complaint("firing", e.fault());
    }
    JobSheet.Wheel wheel = wheel(top.table("wheel"));
    JobSheet.Channels channels = channels(top.table("channels"));
    TdcReadings tdc = tdc(top.table("tdc"), folder);
    if (tdc.light().isPresent() && wheel.tooth1BtdcDegrees().isEmpty()) {
      throw top.table("tdc")
          .complaint(
              LIGHT,
              "shows how far sparks are off the angle that the controller is told; add"
                  + " wheel.tooth1_btdc_deg, that angle");
    }
    eachItsOwn(top, channels, coils);
    return new JobSheet(
        heading(top.table("job")),
        engine,
        wheel,
        sensor(top.table("sensor")),
        channels,
        tdc,
        coils,
        commanded(top.table("commanded"), folder),
        CaptureTable.read(top.table("capture")));
  }

  /** One channel holds one signal. */
  private static void eachItsOwn(
      SheetTable top, JobSheet.Channels channels, List<JobSheet.CoilEntry> coils)
      throws JobSheetException {
    Set<String> taken = new HashSet<>();
    channels.crank().ifPresent(taken::add);
    if (channels.tdc().isPresent() && !taken.add(channels.tdc().get())) {
      throw top.table("channels").complaint("tdc", twice(channels.tdc().get()));
    }
    List<SheetTable> tables = top.tables("coils");
    for (int i = 0; i < coils.size(); i++) {
      if (!taken.add(coils.get(i).channel())) {
        throw tables.get(i).complaint("channel", twice(coils.get(i).channel()));
      }
    }
  }

  private static String twice(String channel) {
    return "\"" + channel + "\" is named twice; each signal has a channel of its own";
  }

  private static JobSheet.Heading heading(SheetTable t) throws JobSheetException {
    t.allow("shop", "title", "notes");
    return new JobSheet.Heading(
        t.text("shop").orElse(""), t.text("title").orElse(""), t.text("notes").orElse(""));
  }

  private static JobSheet.Engine engine(SheetTable t) throws JobSheetException {
    t.allow("cylinders", "firing");
    var cylinders = t.number("cylinders", 1, MOST_CYLINDERS);
    SheetTable firing = t.table("firing").allow("order", "angles_deg");
    List<Integer> order = whole(firing, "order");
    List<Double> angles = firing.numbers("angles_deg", 0, 720);
    if (cylinders.isPresent() && cylinders.getAsDouble() != Math.rint(cylinders.getAsDouble())) {
      throw t.complaint("cylinders", "is no whole number: " + cylinders.getAsDouble());
    }
    if (cylinders.isPresent()
        && !order.isEmpty()
        && order.size() != (int) cylinders.getAsDouble()) {
      throw firing.complaint(
          "order",
          "names "
              + order.size()
              + " cylinders, but engine.cylinders is "
              + (int) cylinders.getAsDouble());
    }
    if (!angles.isEmpty() && angles.size() != order.size()) {
      throw firing.complaint(
          "angles_deg", "needs one angle for each cylinder of engine.firing.order");
    }
    return new JobSheet.Engine(
        cylinders.isPresent() ? OptionalInt.of((int) cylinders.getAsDouble()) : OptionalInt.empty(),
        order,
        angles);
  }

  private static JobSheet.Wheel wheel(SheetTable t) throws JobSheetException {
    t.allow("pattern", "tooth1_btdc_deg", "sensor_circle_mm");
    Optional<String> pattern = t.text("pattern");
    Optional<WheelPattern> wheel = Optional.empty();
    if (pattern.isPresent()) {
      try {
        wheel = Optional.of(WheelPattern.parse(pattern.get()));
      } catch (IllegalArgumentException e) {
        throw t.complaint("pattern", e.getMessage());
      }
    }
    return new JobSheet.Wheel(
        wheel, t.number("tooth1_btdc_deg", -360, 720), t.number("sensor_circle_mm", 1, 5000));
  }

  private static JobSheet.Sensor sensor(SheetTable t) throws JobSheetException {
    t.allow("kind", "edge");
    Optional<String> kind = t.text("kind");
    Optional<String> edge = t.text("edge");
    return new JobSheet.Sensor(
        kind.isEmpty() ? Optional.empty() : Optional.of(kind(t, kind.get())),
        edge.isEmpty() ? Optional.empty() : Optional.of(edge(t, edge.get())));
  }

  private static SensorKind kind(SheetTable t, String word) throws JobSheetException {
    return switch (word) {
      case "variable-reluctance" -> SensorKind.VARIABLE_RELUCTANCE;
      case "hall" -> SensorKind.HALL;
      default ->
          throw t.complaint(
              "kind",
              "must be \"variable-reluctance\", \"hall\" or \"auto\", got \"" + word + "\"");
    };
  }

  private static EdgeDirection edge(SheetTable t, String word) throws JobSheetException {
    return switch (word) {
      case "falling" -> EdgeDirection.FALLING;
      case "rising" -> EdgeDirection.RISING;
      default ->
          throw t.complaint(
              "edge", "must be \"falling\", \"rising\" or \"auto\", got \"" + word + "\"");
    };
  }

  private static JobSheet.Channels channels(SheetTable t) throws JobSheetException {
    t.allow("crank", "tdc");
    return new JobSheet.Channels(t.text("crank"), t.text("tdc"));
  }

  private static TdcReadings tdc(SheetTable t, Path folder) throws JobSheetException {
    t.allow(STOP, TOOTH1_READ, LIGHT, "reading_uncertainty_deg");
    double u =
        t.number("reading_uncertainty_deg", 0.01, 10).orElse(TdcReadings.USUAL_UNCERTAINTY_DEGREES);
    List<Double> touches = t.numbers(STOP, -360, 360);
    List<Double> tooth1 = t.numbers(TOOTH1_READ, -360, 720);
    Optional<String> light = t.text(LIGHT);
    if (touches.size() % 2 != 0) {
      throw t.complaint(
          STOP, "touches come in pairs, before and after top dead centre; got " + touches.size());
    }
    if (touches.isEmpty() && !tooth1.isEmpty()) {
      throw t.complaint(
          TOOTH1_READ,
          "says nothing without the touches of a piston stop; add tdc." + STOP + " = [21, 15]");
    }
    if (!touches.isEmpty() && tooth1.isEmpty() && light.isEmpty()) {
      throw t.complaint(
          STOP,
          "tell where the pointer's zero lies, not where tooth 1 does; add tdc."
              + TOOTH1_READ
              + ", what the pointer reads with tooth 1 at the sensor, or tdc."
              + LIGHT
              + ", readings with a timing light");
    }
    List<PistonStop> stops = new ArrayList<>();
    for (int i = 0; i < touches.size(); i += 2) {
      try {
        stops.add(new PistonStop(touches.get(i), touches.get(i + 1), u));
      } catch (IllegalArgumentException e) {
        throw t.complaint(STOP, e.getMessage());
      }
    }
    Optional<TdcReadings.Light> seen =
        light.isEmpty() ? Optional.empty() : Optional.of(light(t, folder, light.get()));
    return new TdcReadings(stops, tooth1, seen, u);
  }

  private static TdcReadings.Light light(SheetTable t, Path folder, String file)
      throws JobSheetException {
    try {
      Path path = folder.resolve(file);
      List<StrobeWorksheet.Reading> readings = StrobeReader.read(path);
      if (readings.isEmpty()) {
        throw t.complaint(LIGHT, "\"" + file + "\" holds no readings below its first line");
      }
      return new TdcReadings.Light(path, readings);
    } catch (UnreadableCaptureException e) {
      throw t.complaint(LIGHT, e.getMessage());
    } catch (InvalidPathException | IOException e) {
      throw t.complaint(LIGHT, unreadable(file, "light readings"));
    }
  }

  private static List<JobSheet.CoilEntry> coils(List<SheetTable> tables) throws JobSheetException {
    List<JobSheet.CoilEntry> coils = new ArrayList<>();
    for (SheetTable t : tables) {
      t.allow("name", "channel", "cylinders", "signal");
      String name = t.text("name").filter(n -> !n.isBlank()).orElse("coil " + (coils.size() + 1));
      if (coils.stream().anyMatch(c -> c.coil().name().equals(name))) {
        throw t.complaint("name", "two coils are called \"" + name + "\"; give one another name");
      }
      String channel =
          t.text("channel")
              .orElseThrow(() -> t.complaint("channel", "each coil needs the name of its channel"));
      List<Integer> cylinders = whole(t, "cylinders");
      if (cylinders.isEmpty()) {
        throw t.complaint(
            "cylinders", "each coil needs the cylinders that it fires, such as [1, 4]");
      }
      coils.add(new JobSheet.CoilEntry(new Coil(name, cylinders, pickUp(t)), channel));
    }
    return coils;
  }

  private static JobSheet.Commanded commanded(SheetTable t, Path folder) throws JobSheetException {
    t.allow("advance_deg", "table", "load");
    Optional<String> file = t.text("table");
    return new JobSheet.Commanded(
        t.number("advance_deg", -60, 90),
        file.isPresent() ? Optional.of(ignitionTable(t, folder, file.get())) : Optional.empty(),
        t.number("load", -1e6, 1e6));
  }

  private static IgnitionTable ignitionTable(SheetTable t, Path folder, String file)
      throws JobSheetException {
    try {
      return IgnitionTableReader.read(folder.resolve(file));
    } catch (UnreadableCaptureException e) {
      throw t.complaint("table", e.getMessage());
    } catch (InvalidPathException | IOException e) {
      throw t.complaint("table", unreadable(file, "an ignition table"));
    }
  }

  private static String unreadable(String file, String what) {
    return "\""
        + file
        + "\" cannot be read; write the name of "
        + what
        + " (CSV), from the folder of the job sheet on";
  }

  private static PickUp pickUp(SheetTable t) throws JobSheetException {
    String word = t.text("signal").orElse(PickUp.LOGIC.label());
    for (PickUp p : PickUp.values()) {
      if (p.label().equals(word)) {
        return p;
      }
    }
    throw t.complaint(
        "signal",
        "must be one of "
            + Arrays.stream(PickUp.values()).map(PickUp::label).toList()
            + ", got \""
            + word
            + "\"");
  }

  /** Numbers of cylinders, none twice. */
  private static List<Integer> whole(SheetTable t, String key) throws JobSheetException {
    List<Double> numbers = t.numbers(key, 1, MOST_CYLINDERS);
    List<Integer> whole = numbers.stream().map(Double::intValue).toList();
    if (numbers.stream().anyMatch(d -> d != Math.rint(d))) {
      throw t.complaint(key, "numbers cylinders, which are whole: " + numbers);
    }
    if (Set.copyOf(whole).size() != whole.size()) {
      throw t.complaint(key, "names a cylinder twice: " + whole);
    }
    return whole;
  }
}
