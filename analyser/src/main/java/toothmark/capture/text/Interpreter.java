package toothmark.capture.text;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import toothmark.capture.Capture;
import toothmark.capture.Channel;
import toothmark.capture.EventSignal;
import toothmark.capture.ReadingOptions;
import toothmark.capture.SampledSignal;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.store.NumberBlock;
import toothmark.capture.store.SampleStore;
import toothmark.capture.store.StoredColumn;

/** Turns the columns of a table into the channels of a capture. */
final class Interpreter {

  /** Departure of a written time from the clock that is worth a word, in intervals. */
  private static final double NOTICEABLE = 0.02;

  /** Rows of a log are this far apart, or more, s. */
  private static final double SLOWEST_CAPTURE = 2e-3;

  private static final String NO_TIME =
      "neither a column of times nor a sampling interval was found; state capture.interval_s or"
          + " capture.rate_hz in the job sheet, or what the column holds: [[capture.columns]] with"
          + " role = \"period\" or \"time\", and its unit, or as scale the seconds that a count"
          + " lasts";

  private static final String NO_VALUES =
      "no column holds values for the sampling interval; leave the interval out, or state role ="
          + " \"channel\" in [[capture.columns]] of the job sheet";

  private final Table table;
  private final Layout layout;
  private final ReadingOptions options;
  private final SampleStore store;
  private final Notes notes;
  private final TimeBase base;
  private long[] segmentRows;
  private final long[] shorter;

  Interpreter(Table table, ReadingOptions options, SampleStore store, Notes notes) {
    this.table = table;
    this.layout = table.layout();
    this.options = options;
    this.store = store;
    this.notes = notes;
    this.base = new TimeBase(table, options.layout().clock(), notes);
    this.shorter = new long[layout.columns().size()];
  }

  Capture capture(String format) throws UnreadableCaptureException, IOException {
    segmentRows = new SegmentColumn(table).rows();
    List<Channel> channels = channels();
    noteCells();
    for (String doubt : table.doubts()) {
      notes.doubt(doubt);
    }
    notePoints();
    if (!holdsStore(channels)) {
      store.close();
    }
    return new Capture(table.file(), channels, notes.reading(format));
  }

  private static boolean holdsStore(List<Channel> channels) {
    return channels.stream().anyMatch(c -> c.signal() instanceof SampledSignal);
  }

  private List<Channel> channels() throws UnreadableCaptureException, IOException {
    List<Group> groups = groups();
    boolean sampled = options.layout().clock().intervalSeconds().isPresent();
    if (groups.isEmpty() || sampled) {
      int period = layout.first(Role.PERIOD);
      List<Integer> pair = layout.pair();
      if (!pair.isEmpty() && !sampled) {
        return new EventBuilder(table, notes).fromPairs(pair.get(0), pair.get(1), base);
      }
      if (period >= 0 && !sampled) {
        noteOtherPeriods(period);
        return new EventBuilder(table, notes).fromPeriods(period, base.secondsPerStep(period));
      }
      return withoutTimes();
    }
    boolean lists = values().isEmpty();
    List<Channel> channels = new ArrayList<>();
    List<Group> kept = new ArrayList<>();
    for (Group group : groups) {
      if (group.values().isEmpty() && !lists) {
        notes.doubt("column " + (group.time() + 1) + " holds times without values; left out");
      } else {
        List<Channel> own = channels(group);
        if (!lists || channels.isEmpty() || !isKnown(group.time(), own, channels)) {
          channels.addAll(own);
          kept.add(group);
        }
      }
    }
    return lists && channels.size() > 1 ? named(channels, kept) : channels;
  }

  private void noteOtherPeriods(int used) {
    for (int c = used + 1; c < layout.columns().size(); c++) {
      if (layout.columns().get(c).role() == Role.PERIOD) {
        notes.doubt("column " + (c + 1) + " holds periods as well; left out");
      }
    }
  }

  /** Whether a list of times is an earlier one counted from another zero. */
  private boolean isKnown(int time, List<Channel> list, List<Channel> known) {
    EventSignal own = (EventSignal) list.get(0).signal();
    for (Channel c : known) {
      if (c.signal() instanceof EventSignal e && isSame(e, own)) {
        notes.doubt(
            "column "
                + (time + 1)
                + " holds the times of another column, counted from another zero; left out");
        return true;
      }
    }
    return false;
  }

  private static boolean isSame(EventSignal one, EventSignal other) {
    boolean same = one.size() == other.size();
    double rounding = 2 * Math.max(one.resolutionSeconds(), other.resolutionSeconds());
    for (int i = 0; same && i < one.size(); i++) {
      double apart = other.time(i) - one.time(i) - other.time(0) + one.time(0);
      same = Math.abs(apart) <= rounding;
    }
    return same;
  }

  /** Several lists of edge times go by the names of their columns. */
  private List<Channel> named(List<Channel> lists, List<Group> groups) {
    List<Channel> named = new ArrayList<>();
    for (int k = 0; k < lists.size(); k++) {
      String name = layout.columns().get(groups.get(k).time()).name();
      String number = String.valueOf(k + 1);
      named.add(new Channel(name.isEmpty() ? number : name, "", lists.get(k).signal()));
    }
    return named;
  }

  /** A column of times and the columns of values that belong to it. */
  private record Group(int time, List<Integer> values) {}

  private List<Group> groups() {
    List<Group> groups = new ArrayList<>();
    List<Integer> before = new ArrayList<>();
    for (int c = 0; c < layout.columns().size(); c++) {
      Role role = layout.columns().get(c).role();
      if (role == Role.TIME) {
        groups.add(new Group(c, new ArrayList<>()));
      } else if (role == Role.VALUE) {
        (groups.isEmpty() ? before : groups.get(groups.size() - 1).values()).add(c);
      }
    }
    if (!groups.isEmpty()) {
      groups.get(0).values().addAll(0, before);
    }
    return groups;
  }

  private List<Channel> withoutTimes() throws UnreadableCaptureException {
    OptionalDouble interval = base.statedInterval();
    if (interval.isEmpty() || values().isEmpty()) {
      throw new UnreadableCaptureException(
          table.file() + ": " + table.place(0) + ": " + (interval.isEmpty() ? NO_TIME : NO_VALUES));
    }
    notes.fact(
        "sampling interval",
        Shown.seconds(interval.getAsDouble())
            + " ("
            + Shown.hertz(1 / interval.getAsDouble())
            + "), "
            + base.statedBy());
    SampleBuilder builder = new SampleBuilder(table, store, notes, segmentRows);
    return builder.counted(values(), interval.getAsDouble(), start(interval.getAsDouble()));
  }

  private List<Integer> values() {
    List<Integer> values = new ArrayList<>();
    for (int c = 0; c < layout.columns().size(); c++) {
      if (layout.columns().get(c).role() == Role.VALUE) {
        values.add(c);
      }
    }
    return values;
  }

  private double start(double interval) throws UnreadableCaptureException {
    Settings.Value stated = layout.settings().first(Settings.Key.START);
    int time = layout.first(Role.TIME);
    if (time >= 0) {
      return table.column(time).at(0) * base.secondsPerStep(time);
    }
    if (stated != null) {
      notes.fact("start", Shown.seconds(stated.number().doubleValue()) + ", " + stated.place());
      return stated.number().doubleValue();
    }
    int index = layout.first(Role.INDEX);
    double first = index < 0 ? 0 : table.column(index).at(0);
    return first == 1 ? 0 : first * interval;
  }

  private List<Channel> channels(Group group) throws UnreadableCaptureException, IOException {
    Times times = times(group);
    if (group.values().isEmpty()) {
      return new EventBuilder(table, notes).fromTimes(times);
    }
    ClockFinder finder = new ClockFinder(times, announced(times.count()), base.statedInterval());
    Clock clock = finder.find();
    List<Channel> lanes =
        clock == null ? Lanes.split(table, times, group.values(), notes) : List.of();
    if (!lanes.isEmpty()) {
      return lanes;
    }
    if (isOneWay(group.values()) && (clock == null || isHoled(times, clock))) {
      String name = layout.columns().get(group.values().get(0)).name();
      notes.fact("which edges", "all go one way, by the column " + name);
      return new EventBuilder(table, notes).fromTimes(times);
    }
    StepBuilder steps = new StepBuilder(table, times, notes);
    if (allTwoLevel(group.values())
        && (clock == null || steps.isChangesOnly(group.values(), clock))) {
      return steps.channels(group.values());
    }
    SampleBuilder samples = new SampleBuilder(table, store, notes, segmentRows);
    checkLog(group.values(), clock == null ? finder.typicalStep() : clock.intervalSeconds());
    if (clock == null) {
      return samples.uneven(group.values(), times, finder.typicalStep());
    }
    noteClock(clock, times.count());
    return samples.timed(group.values(), times, clock);
  }

  /** The times of a group of columns, up to the last row that has one. */
  private Times times(Group group) throws UnreadableCaptureException {
    StoredColumn column = table.column(group.time());
    long rows = table.rows() - column.missingAtEnd();
    shorter[group.time()] = column.missingAtEnd();
    for (int c : group.values()) {
      shorter[c] = column.missingAtEnd();
    }
    if (rows == 0) {
      throw new UnreadableCaptureException(
          table.file() + ": column " + (group.time() + 1) + ": no row has a time");
    }
    Times times = new Times(column, base.secondsPerStep(group.time()), rows);
    times = new Wraps(table, group.time(), notes).unrolled(times, segmentRows.length);
    if (layout.columns().get(group.time()).kind() == ColumnKind.CLOCK) {
      notes.fact("time zero", Shown.timeOfDay(times.at(0)) + ", the first row");
      times = times.fromFirstRow();
    }
    return times;
  }

  /** Whether a column beside uneven times says of every row that the edge rose, or fell. */
  private boolean isOneWay(List<Integer> values) {
    ColumnPlan plan = layout.columns().get(values.get(0));
    StoredColumn column = table.column(values.get(0));
    boolean level = plan.kind() == ColumnKind.WORD || Words.isLevel(plan.name());
    return values.size() == 1 && level && column.lowest() == column.highest();
  }

  /** Whether ticks of the clock have no row, as where a wheel has a gap. */
  private static boolean isHoled(Times times, Clock clock) {
    double span = times.at(times.count() - 1) - times.at(0);
    return span / clock.intervalSeconds() > times.count() - 0.5;
  }

  private long[] announced(long rows) {
    int n = segmentRows.length;
    while (n > 1 && segmentRows[n - 1] >= rows) {
      n--;
    }
    return Arrays.copyOf(segmentRows, n);
  }

  private boolean allTwoLevel(List<Integer> values) {
    for (int c : values) {
      ColumnKind kind = layout.columns().get(c).kind();
      boolean logic = kind.isBus() || kind == ColumnKind.WORD;
      if (!logic && !table.column(c).isTwoLevel()) {
        return false;
      }
    }
    return true;
  }

  /** A log of speeds is no capture; its steps must not pass for teeth. */
  private void checkLog(List<Integer> values, double interval) throws UnreadableCaptureException {
    for (int c : values) {
      ColumnPlan plan = layout.columns().get(c);
      if (interval >= SLOWEST_CAPTURE && Words.isSpeed(plan.name(), plan.unit().symbol())) {
        throw new UnreadableCaptureException(
            table.file()
                + ": column "
                + (c + 1)
                + " ("
                + plan.name()
                + ") holds speeds, "
                + Shown.seconds(interval)
                + " apart: this is a log, in which no tooth can be seen; give it with --log beside"
                + " a capture of the crank sensor");
      }
    }
  }

  private void noteClock(Clock clock, long rows) throws UnreadableCaptureException {
    double interval = clock.intervalSeconds();
    String shown = Shown.seconds(interval) + " (" + Shown.hertz(1 / interval) + ")";
    boolean coarse =
        clock.roundedToSeconds() > interval / 10 && clock.worstSeconds() > NOTICEABLE * interval;
    if (coarse) {
      notes.fact("sampling interval", shown + ", fitted over all times");
      notes.doubt(
          "times are rounded to "
              + Shown.seconds(clock.roundedToSeconds())
              + ", coarse for the sampling interval; the steady clock of "
              + Shown.seconds(interval)
              + " was recovered from all "
              + rows
              + " rows");
    } else {
      notes.fact("sampling interval", shown + ", from the column of times");
    }
    if (clock.worstSeconds() > Math.max(clock.roundedToSeconds(), 1e-6 * interval)) {
      notes.doubt(
          "times scatter by up to "
              + Shown.seconds(clock.worstSeconds())
              + " around a steady clock; the clock was followed");
    }
    OptionalDouble stated = base.statedInterval();
    if (stated.isPresent() && Math.abs(stated.getAsDouble() / interval - 1) > 1e-3) {
      notes.doubt(
          "the interval "
              + base.statedBy()
              + " is "
              + Shown.seconds(stated.getAsDouble())
              + ", but the times are "
              + Shown.seconds(interval)
              + " apart; the times were followed");
    }
  }

  private void notePoints() {
    Settings.Value points = layout.settings().first(Settings.Key.POINTS);
    boolean whole = options.firstBytes().isEmpty();
    if (whole && points != null && points.number().doubleValue() != table.rows()) {
      notes.doubt(
          points.place()
              + " states "
              + points.number().toPlainString()
              + " points, but there are "
              + Shown.count(table.rows(), "row"));
    }
  }

  private void noteCells() {
    for (int c = 0; c < layout.columns().size(); c++) {
      ColumnPlan plan = layout.columns().get(c);
      String name = "column " + (c + 1) + (plan.name().isEmpty() ? "" : " (" + plan.name() + ")");
      if (plan.kind() == ColumnKind.TEXT) {
        notes.doubt(name + " holds text and was left out");
      }
      if (plan.isStored() && table.column(c).lowest() <= table.column(c).highest()) {
        noteCells(name, table.column(c), shorter[c]);
      }
    }
  }

  private void noteCells(String name, StoredColumn column, long shorterBy) {
    long missing = column.marked(NumberBlock.MISSING) - Math.min(shorterBy, column.missingAtEnd());
    if (missing > 0) {
      notes.doubt(
          name
              + ": "
              + Shown.count(missing, "cell")
              + " without a number, filled from the neighbours");
    }
    long over = column.marked(NumberBlock.ABOVE_RANGE) + column.marked(NumberBlock.BELOW_RANGE);
    if (over > 0) {
      notes.doubt(
          name + ": " + Shown.count(over, "cell") + " over range, read as the column's extreme");
    }
  }
}
