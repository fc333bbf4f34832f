package toothmark.capture.text;

import java.util.ArrayList;
import java.util.List;
import toothmark.capture.Channel;
import toothmark.capture.StepSignal;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.store.StoredColumn;

/** Builds channels from rows that were written when a level changed. */
final class StepBuilder {

  private static final int CHUNK = 8192;

  /** Share of rows with a change above which even steadily timed rows are changes, not samples. */
  private static final double CHANGES_ONLY = 0.95;

  private static final int ROWS_TO_TELL = 8;

  private final Table table;
  private final Times times;
  private final Notes notes;

  StepBuilder(Table table, Times times, Notes notes) {
    this.table = table;
    this.times = times;
    this.notes = notes;
  }

  /**
   * Whether rows of levels on a steady clock are changes all the same: in nearly every one some
   * level differs from the row before, which samples of a signal never show.
   */
  boolean isChangesOnly(List<Integer> columns, Clock clock) {
    if (times.count() < ROWS_TO_TELL) {
      return clock.pieces().size() > 1;
    }
    long rows = Math.min(times.count(), CHUNK);
    double[][] values = new double[columns.size()][(int) rows];
    for (int c = 0; c < values.length; c++) {
      table.column(columns.get(c)).read(0, values[c], 0, (int) rows);
    }
    int changes = 0;
    for (int r = 1; r < rows; r++) {
      boolean change = false;
      for (double[] column : values) {
        change |= column[r] != column[r - 1];
      }
      changes += change ? 1 : 0;
    }
    return changes >= CHANGES_ONLY * (rows - 1);
  }

  /** One channel for each column, or for each bit of a bus. */
  List<Channel> channels(List<Integer> columns) throws UnreadableCaptureException {
    List<Channel> channels = new ArrayList<>();
    ChannelNames names = new ChannelNames(table.layout(), columns);
    checkOrder();
    notes.fact("what it holds", "changes of level, " + Shown.count(times.count(), "row"));
    notes.fact("times written in steps of", Shown.seconds(times.writtenStep()));
    for (int k = 0; k < columns.size(); k++) {
      int c = columns.get(k);
      StoredColumn column = table.column(c);
      ColumnPlan plan = table.layout().columns().get(c);
      if (plan.kind().isBus()) {
        for (int bit = 0; bit < Bits.count(column.highest()); bit++) {
          channels.add(channel(names.bit(k, bit), "", changes(column, bit)));
        }
      } else {
        channels.add(channel(names.of(k), plan.unit().symbol(), changes(column, -1)));
      }
    }
    return channels;
  }

  private void checkOrder() throws UnreadableCaptureException {
    double before = Double.NEGATIVE_INFINITY;
    double[] chunk = new double[CHUNK];
    for (long first = 0; first < times.count(); first += CHUNK) {
      int n = (int) Math.min(CHUNK, times.count() - first);
      times.read(first, chunk, n);
      for (int i = 0; i < n; i++) {
        if (chunk[i] < before) {
          String cure = "times of changes must rise. Split the file there";
          throw EventBuilder.goesBack(table, before, chunk[i], first + i, cure);
        }
        before = chunk[i];
      }
    }
  }

  private record Changes(DoubleList times, DoubleList levels) {}

  /** The changes of a column, or of one bit of it. */
  private Changes changes(StoredColumn column, int bit) {
    Changes changes = new Changes(new DoubleList(), new DoubleList());
    double[] t = new double[CHUNK];
    double[] v = new double[CHUNK];
    for (long first = 0; first < times.count(); first += CHUNK) {
      int n = (int) Math.min(CHUNK, times.count() - first);
      times.read(first, t, n);
      column.read(first, v, 0, n);
      for (int i = 0; i < n; i++) {
        add(changes.times, changes.levels, t[i], bit < 0 ? v[i] : Bits.of(v[i], bit));
      }
    }
    return changes;
  }

  /** Adds a level; one that is repeated is no change, and the last one at a time counts. */
  private static void add(DoubleList times, DoubleList levels, double time, double level) {
    int last = times.size() - 1;
    if (last >= 0 && levels.last() == level) {
      return;
    }
    if (last >= 0 && times.last() == time) {
      times.removeLast();
      levels.removeLast();
      add(times, levels, time, level);
      return;
    }
    times.add(time);
    levels.add(level);
  }

  private Channel channel(String name, String unit, Changes changes) {
    double end = times.at(times.count() - 1);
    return new Channel(
        name,
        unit,
        new StepSignal(
            changes.times.toArray(), changes.levels.toArray(), times.writtenStep(), end));
  }

  /**
   * A channel from levels and how long each lasts.
   *
   * @param instants one more than levels: when each begins, and the end
   */
  static List<Channel> fromRuns(
      DoubleList instants, DoubleList levels, double resolution, String name) {
    DoubleList times = new DoubleList();
    DoubleList kept = new DoubleList();
    for (int i = 0; i < levels.size(); i++) {
      add(times, kept, instants.get(i), levels.get(i));
    }
    return List.of(
        new Channel(
            name,
            "",
            new StepSignal(times.toArray(), kept.toArray(), resolution, instants.last())));
  }
}
