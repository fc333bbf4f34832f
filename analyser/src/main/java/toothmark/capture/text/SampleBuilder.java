package toothmark.capture.text;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import toothmark.capture.Channel;
import toothmark.capture.SampledSignal;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.store.SampleStore;
import toothmark.capture.store.StoredColumn;
import toothmark.capture.store.StoredSignal;
import toothmark.capture.store.Ticks;

/** Builds channels of samples on a clock. */
final class SampleBuilder {

  /** A step that is longer than so many typical ones is a pause of the recorder. */
  private static final double PAUSE_STEPS = 20;

  private final Table table;
  private final SampleStore store;
  private final Notes notes;
  private final long[] segmentRows;

  SampleBuilder(Table table, SampleStore store, Notes notes, long[] segmentRows) {
    this.table = table;
    this.store = store;
    this.notes = notes;
    this.segmentRows = segmentRows;
  }

  /** Rows at a stated interval, without times. */
  List<Channel> counted(List<Integer> columns, double interval, double start)
      throws UnreadableCaptureException {
    long rows = table.rows();
    double[] times = new double[segmentRows.length];
    for (int s = 0; s < times.length; s++) {
      times[s] = start + segmentRows[s] * interval;
    }
    noteSegments(times.length, 0);
    Ticks ticks = new Ticks(interval, times, segmentRows, rows);
    return channels(columns, rows, plain(ticks));
  }

  /** Rows on a steady clock, perhaps with pauses and lost rows. */
  List<Channel> timed(List<Integer> columns, Times times, Clock clock)
      throws UnreadableCaptureException {
    Stretches stretches = Stretches.of(clock, times.count(), segmentRows);
    List<Stretch> list = stretches.list();
    noteSegments(list.size(), stretches.moved());
    if (stretches.filled() == 0) {
      Ticks ticks =
          new Ticks(
              clock.intervalSeconds(),
              Resampled.starts(list),
              Resampled.firsts(list),
              times.count());
      return channels(columns, times.count(), plain(ticks));
    }
    notes.doubt(
        Shown.count(stretches.filled(), "row")
            + " of the steady clock "
            + (stretches.filled() == 1 ? "is" : "are")
            + " missing; filled by straight lines");
    double same = clock.worstSeconds() + 1e-6 * clock.intervalSeconds();
    return channels(columns, times.count(), resampled(times, stretches, same));
  }

  /** Rows at uneven times: brought to a steady clock, as fine as most steps between them. */
  List<Channel> uneven(List<Integer> columns, Times times, double typicalStep)
      throws UnreadableCaptureException {
    if (!(typicalStep > 0)) {
      boolean falls = times.at(times.count() - 1) < times.at(0);
      throw new UnreadableCaptureException(
          table.file()
              + ": the times of the rows do not rise: "
              + Shown.seconds(times.at(0))
              + " in the first, "
              + Shown.seconds(times.at(times.count() - 1))
              + " in the last; "
              + (falls ? "sort the rows by time" : "state the sampling interval"));
    }
    double interval = RoundNumber.interval(typicalStep / 2, typicalStep / 8, 2).orElseThrow();
    Stretches stretches = Stretches.uneven(times, interval, PAUSE_STEPS * typicalStep, segmentRows);
    long ticks = Resampled.ticks(stretches.list());
    notes.fact("sampling interval", Shown.seconds(interval) + ", chosen for rows at uneven times");
    notes.doubt(
        "the rows come at uneven times, about "
            + Shown.seconds(typicalStep)
            + " apart; straight lines between them were sampled every "
            + Shown.seconds(interval)
            + " ("
            + ticks
            + " samples from "
            + Shown.count(times.count(), "row")
            + ")");
    noteSegments(stretches.list().size(), stretches.moved());
    return channels(columns, times.count(), resampled(times, stretches, 1e-9 * interval));
  }

  private void noteSegments(int segments, int moved) {
    if (segments > 1) {
      notes.fact("segments", String.valueOf(segments));
    }
    if (moved > 0) {
      notes.doubt(
          "times start again in "
              + Shown.count(moved, "segment")
              + "; placed behind one another, as the pauses between are not known");
    }
  }

  private Function<StoredColumn, SampledSignal> plain(Ticks ticks) {
    return column -> new StoredSignal(column, store, ticks);
  }

  private Function<StoredColumn, SampledSignal> resampled(
      Times times, Stretches stretches, double same) {
    return column ->
        new Resampled(times, column, stretches.list(), stretches.intervalSeconds(), same, store);
  }

  private List<Channel> channels(
      List<Integer> columns, long rows, Function<StoredColumn, SampledSignal> maker)
      throws UnreadableCaptureException {
    List<Channel> channels = new ArrayList<>();
    ChannelNames names = new ChannelNames(table.layout(), columns);
    for (int k = 0; k < columns.size(); k++) {
      int c = columns.get(k);
      StoredColumn column = table.column(c);
      ColumnPlan plan = table.layout().columns().get(c);
      if (column.lowest() > column.highest()) {
        notes.doubt("column " + (c + 1) + " (" + names.of(k) + ") holds no number; left out");
        continue;
      }
      SampledSignal signal = maker.apply(column);
      if (plan.kind().isBus()) {
        for (int bit = 0; bit < Bits.count(column.highest()); bit++) {
          channels.add(new Channel(names.bit(k, bit), "", Derived.bit(signal, bit)));
        }
      } else {
        channels.add(new Calibration(table, notes).apply(names.of(k), c, signal));
      }
    }
    return channels;
  }
}
