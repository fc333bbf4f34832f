package toothmark.capture.text;

import java.util.List;
import java.util.OptionalDouble;
import toothmark.capture.StatedLayout;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.store.StoredColumn;
import toothmark.capture.text.Settings.Key;
import toothmark.capture.text.Settings.Value;

/** Finds what one step of a time column is worth, and the sampling interval that is stated. */
final class TimeBase {

  private static final double SHORTEST_LIKELY_PERIOD_US = 20;
  private static final double LONGEST_LIKELY_PERIOD_US = 500_000;

  /** Samples that are farther apart show no teeth even on the starter, s. */
  private static final double LONGEST_LIKELY_INTERVAL = 0.01;

  private static final double SECONDS_IN_A_MINUTE = 60;

  private final Table table;
  private final StatedLayout.Clock clock;
  private final Notes notes;

  TimeBase(Table table, StatedLayout.Clock clock, Notes notes) {
    this.table = table;
    this.clock = clock;
    this.notes = notes;
  }

  /** The interval that the user or the preamble states, s. */
  OptionalDouble statedInterval() throws UnreadableCaptureException {
    if (clock.intervalSeconds().isPresent()) {
      return clock.intervalSeconds();
    }
    Value stated = statement();
    if (stated == null) {
      return OptionalDouble.empty();
    }
    Settings settings = table.layout().settings();
    boolean interval = stated == settings.first(Key.INTERVAL) && !isFrequency(stated);
    double number = stated.number().doubleValue();
    double seconds = interval || stated.unit().isTime() ? number : 1 / number;
    return OptionalDouble.of(positive(stated, interval ? Key.INTERVAL : Key.RATE, seconds));
  }

  /** What the preamble says of the sampling clock; null when it says nothing. */
  private Value statement() {
    Layout layout = table.layout();
    for (Key key : new Key[] {Key.INTERVAL, Key.RATE, Key.CLOCK}) {
      Value value = layout.settings().first(key);
      boolean ofSamples = layout.count(Role.TIME) + layout.count(Role.PERIOD) == 0;
      if (value != null && (key != Key.CLOCK || ofSamples && isFrequency(value))) {
        return value;
      }
    }
    return null;
  }

  private static boolean isFrequency(Value value) {
    return value.unit().symbol().equals("Hz");
  }

  private double positive(Value value, Key key, double seconds) throws UnreadableCaptureException {
    if (!(seconds > 0) || Double.isInfinite(seconds)) {
      throw new UnreadableCaptureException(
          table.file()
              + ": "
              + value.place()
              + ": the "
              + key.text
              + " is "
              + value.number()
              + ", but must be positive; mend the line or state the interval");
    }
    return seconds;
  }

  /** Where the stated interval comes from, for showing. */
  String statedBy() {
    if (clock.intervalSeconds().isPresent()) {
      return "stated in the job sheet";
    }
    return "stated in " + statement().place();
  }

  /**
   * Seconds for one step of a column of times or periods.
   *
   * @param column index of the column
   * @throws UnreadableCaptureException if the unit is not stated and cannot be told
   */
  double secondsPerStep(int column) throws UnreadableCaptureException {
    ColumnPlan plan = table.layout().columns().get(column);
    Unit unit = plan.unit();
    if (clock.timeUnit().isPresent()) {
      return powerOfTen(userUnit().power() - plan.shift());
    }
    if (plan.stated().isScaled()) {
      return plan.value(1);
    }
    if (unit.isMinute()) {
      return SECONDS_IN_A_MINUTE;
    }
    if (unit.isTime() || plan.kind() == ColumnKind.CLOCK) {
      return 1;
    }
    Value counter = table.layout().settings().counter();
    if (counter != null && isWhole(column)) {
      double c = counter.number().doubleValue();
      Value prescaler = table.layout().settings().first(Key.PRESCALER);
      double divided = prescaler == null ? 1 : prescaler.number().doubleValue();
      double seconds =
          positive(counter, Key.TIMER, divided * (counter.unit().isTime() ? c : 1 / c));
      notes.fact("counter clock", Shown.seconds(seconds) + " a count, " + counter.place());
      return seconds;
    }
    Value stated = table.layout().settings().first(Key.TIME_UNIT);
    if (stated != null && stated.unit().isTime()) {
      return powerOfTen(stated.unit().power());
    }
    return guessed(column, plan);
  }

  private Unit userUnit() {
    Unit unit = Unit.parse(clock.timeUnit().get());
    if (unit == null || !unit.isTime()) {
      throw new IllegalArgumentException(
          "'" + clock.timeUnit().get() + "' is no unit of time; use s, ms, us or ns");
    }
    return unit;
  }

  private double guessed(int column, ColumnPlan plan) throws UnreadableCaptureException {
    OptionalDouble interval = statedInterval();
    double step = typicalStep(column, plan.role());
    if (interval.isPresent() && plan.role() == Role.TIME) {
      for (int power = 0; power >= -12; power -= 3) {
        double seconds = powerOfTen(power);
        if (Math.abs(step * seconds / interval.getAsDouble() - 1) < 0.01) {
          notes.fact("unit of time", Shown.seconds(seconds) + ", from the stated interval");
          return seconds;
        }
      }
      if (step == 1 && isWhole(column)) {
        notes.fact("unit of time", "the column counts samples; the interval is stated");
        return interval.getAsDouble();
      }
    }
    if (plan.unit().isCount()) {
      throw new UnreadableCaptureException(
          table.file()
              + ": column "
              + (column + 1)
              + ": counts of a clock that nothing states; add a line such as '# timer clock: 2 MHz'"
              + " above, or state scale and unit in [[capture.columns]] of the job sheet");
    }
    if (!isWhole(column)) {
      return decimals(column, plan.role(), step);
    }
    boolean list = plan.role() == Role.PERIOD || table.layout().count(Role.VALUE) == 0;
    boolean likely = step >= SHORTEST_LIKELY_PERIOD_US && step <= LONGEST_LIKELY_PERIOD_US;
    if (list && likely) {
      notes.doubt("the whole numbers have no unit; taken as microseconds");
      return 1e-6;
    }
    throw new UnreadableCaptureException(
        table.file()
            + ": column "
            + (column + 1)
            + ": the times are whole numbers without a unit, such as "
            + (long) table.column(column).at(table.rows() - 1)
            + "; state capture.time_unit in the job sheet");
  }

  /** Decimals are seconds, unless teeth could not be seen at such a pace. */
  private double decimals(int column, Role role, double step) {
    double longest =
        role == Role.PERIOD || allTwoLevel()
            ? LONGEST_LIKELY_PERIOD_US * 1e-6
            : LONGEST_LIKELY_INTERVAL;
    int power = 0;
    while (power > -6 && step * powerOfTen(power) > longest) {
      power -= 3;
    }
    if (power == 0) {
      notes.doubt("the column of times has no unit; taken as seconds");
    } else {
      notes.doubt(
          "the times in column "
              + (column + 1)
              + " have no unit; in seconds they would be "
              + Shown.seconds(step)
              + " apart, too far for teeth: taken as "
              + (power == -3 ? "milliseconds" : "microseconds"));
    }
    return powerOfTen(power);
  }

  /** Whether rows are events or changes of level: no column holds more than two levels. */
  private boolean allTwoLevel() {
    List<ColumnPlan> columns = table.layout().columns();
    boolean two = true;
    for (int c = 0; c < columns.size(); c++) {
      ColumnPlan plan = columns.get(c);
      boolean number = plan.role() == Role.VALUE && plan.kind() == ColumnKind.NUMBER;
      two &= !number || table.column(c).isTwoLevel();
    }
    return two;
  }

  private boolean isWhole(int column) {
    return table.column(column).writtenStep() >= 1;
  }

  private double typicalStep(int column, Role role) {
    StoredColumn c = table.column(column);
    int n = (int) Math.min(1001, c.count());
    double[] values = new double[n];
    c.read(0, values, 0, n);
    if (role != Role.PERIOD) {
      for (int i = 0; i + 1 < n; i++) {
        values[i] = Math.abs(values[i + 1] - values[i]);
      }
      n--;
    }
    java.util.Arrays.sort(values, 0, Math.max(n, 0));
    return n < 1 ? 0 : values[n / 2];
  }

  private static double powerOfTen(int power) {
    return power < 0 ? 1 / Math.pow(10, -power) : Math.pow(10, power);
  }
}
