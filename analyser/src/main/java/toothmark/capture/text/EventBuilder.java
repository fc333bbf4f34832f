package toothmark.capture.text;

import java.util.List;
import toothmark.capture.Channel;
import toothmark.capture.EventSignal;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.store.StoredColumn;

/** Builds the one channel of a list of edge times or of tooth periods. */
final class EventBuilder {

  private static final String NAME = "1";
  private static final int CHUNK = 8192;

  /** Of 60 teeth at 100 000 rev/min, s. */
  private static final double CLOSEST = 10e-6;

  private final Table table;
  private final Notes notes;

  EventBuilder(Table table, Notes notes) {
    this.table = table;
    this.notes = notes;
  }

  /** A list of edge times. */
  List<Channel> fromTimes(Times times) throws UnreadableCaptureException {
    DoubleList instants = new DoubleList();
    double[] chunk = new double[CHUNK];
    long repeated = 0;
    for (long first = 0; first < times.count(); first += CHUNK) {
      int n = (int) Math.min(CHUNK, times.count() - first);
      times.read(first, chunk, n);
      for (int i = 0; i < n; i++) {
        double t = chunk[i];
        if (instants.size() > 0 && t <= instants.last()) {
          if (t < instants.last()) {
            throw goesBack(table, instants.last(), t, first + i);
          }
          repeated++;
          continue;
        }
        instants.add(t);
      }
    }
    if (repeated > 0) {
      notes.doubt(Shown.count(repeated, "edge") + " at the time of the edge before left out");
    }
    notes.fact("what it holds", "edge times, " + instants.size());
    checkPace(instants);
    return channel(instants, times.writtenStep());
  }

  /** What is wrong with a list of events whose times go back at a row. */
  static UnreadableCaptureException goesBack(Table table, double before, double time, long row) {
    String cure = "edge times must rise. Split the file there, or name the column a period";
    return goesBack(table, before, time, row, cure);
  }

  /** The same, with what must rise and how to mend it. */
  static UnreadableCaptureException goesBack(
      Table table, double before, double time, long row, String cure) {
    return new UnreadableCaptureException(
        table.file()
            + ": "
            + table.place(row)
            + ": the time goes back from "
            + Shown.seconds(before)
            + " to "
            + Shown.seconds(time)
            + "; "
            + cure);
  }

  /**
   * A list of periods, with or without the level that each lasts.
   *
   * @param column of the periods
   * @param secondsPerStep what one step of the column is worth
   */
  List<Channel> fromPeriods(int column, double secondsPerStep) throws UnreadableCaptureException {
    StoredColumn periods = table.column(column);
    double step = periods.writtenStep();
    DoubleList instants = new DoubleList();
    DoubleList levels = new DoubleList();
    int level = levelColumn();
    double[] chunk = new double[CHUNK];
    double sum = 0;
    instants.add(0);
    for (long first = 0; first < periods.count(); first += CHUNK) {
      int n = (int) Math.min(CHUNK, periods.count() - first);
      periods.read(first, chunk, 0, n);
      for (int i = 0; i < n; i++) {
        if (!(chunk[i] > 0)) {
          throw notPositive(chunk[i] * secondsPerStep, first + i);
        }
        sum += step > 0 ? Math.rint(chunk[i] / step) : chunk[i];
        instants.add(seconds(sum, step, secondsPerStep));
        levels.add(level < 0 ? 0 : table.column(level).at(first + i));
      }
    }
    double resolution = step > 0 ? step * secondsPerStep : 0;
    if (level >= 0) {
      notes.fact("what it holds", "levels and how long each lasts, " + levels.size());
      return StepBuilder.fromRuns(instants, levels, resolution, name(level));
    }
    notes.fact("what it holds", "tooth periods, " + (instants.size() - 1));
    checkPace(instants);
    return channel(instants, resolution);
  }

  /**
   * Levels by how long the high and the low one of each pulse last.
   *
   * @param first column of the level that comes first in a row
   * @param second column of the other
   * @param base of the times
   */
  List<Channel> fromPairs(int first, int second, TimeBase base) throws UnreadableCaptureException {
    int[] columns = {first, second};
    double[] levelOf = new double[2];
    double[] scale = new double[2];
    for (int k = 0; k < 2; k++) {
      levelOf[k] = Words.levelOf(table.layout().columns().get(columns[k]).name());
      scale[k] = base.secondsPerStep(columns[k]);
    }
    double written = table.column(first).writtenStep();
    boolean alike = scale[0] == scale[1] && table.column(second).writtenStep() == written;
    double step = alike ? written : 0;
    DoubleList instants = new DoubleList();
    DoubleList levels = new DoubleList();
    double[][] chunk = new double[2][CHUNK];
    double sum = 0;
    instants.add(sum);
    for (long from = 0; from < table.rows(); from += CHUNK) {
      int n = (int) Math.min(CHUNK, table.rows() - from);
      table.column(first).read(from, chunk[0], 0, n);
      table.column(second).read(from, chunk[1], 0, n);
      for (int i = 0; i < 2 * n; i++) {
        int k = i % 2;
        double lasts = chunk[k][i / 2] * scale[k] / scale[0];
        if (!(lasts > 0)) {
          throw notPositive(lasts * scale[0], from + i / 2);
        }
        sum += step > 0 ? Math.rint(lasts / step) : lasts;
        instants.add(seconds(sum, step, scale[0]));
        levels.add(levelOf[k]);
      }
    }
    notes.fact("what it holds", "how long each level lasts, " + levels.size());
    return StepBuilder.fromRuns(instants, levels, step * scale[0], NAME);
  }

  /** Whole steps add up without rounding; they are turned into seconds at the end. */
  private static double seconds(double sum, double step, double secondsPerStep) {
    double whole = step > 0 ? step * secondsPerStep : secondsPerStep;
    double rate = Math.rint(1 / whole);
    return Math.abs(rate * whole - 1) < 1e-12 ? sum / rate : sum * whole;
  }

  private UnreadableCaptureException notPositive(double seconds, long row) {
    return new UnreadableCaptureException(
        table.file()
            + ": "
            + table.place(row)
            + ": a period is "
            + Shown.seconds(seconds)
            + ", but must be above 0; remove the row, or name the column a time");
  }

  /**
   * A unit that is a thousand times off, or a mark of thousands, must not pass for a fast crank.
   */
  private void checkPace(DoubleList instants) throws UnreadableCaptureException {
    double[] t = instants.toArray();
    double apart = t.length < 2 ? CLOSEST : (t[t.length - 1] - t[0]) / (t.length - 1);
    if (apart < CLOSEST) {
      throw new UnreadableCaptureException(
          table.file()
              + ": "
              + table.place(0)
              + ": the edges would be "
              + Shown.seconds(apart)
              + " apart, but teeth that pass a sensor are at least "
              + Shown.seconds(CLOSEST)
              + " apart; state capture.time_unit in the job sheet, or capture.decimal_mark if a"
              + " mark of thousands was taken for that of decimals");
    }
  }

  private int levelColumn() {
    int found = -1;
    List<ColumnPlan> columns = table.layout().columns();
    for (int c = 0; c < columns.size(); c++) {
      ColumnPlan plan = columns.get(c);
      boolean level = plan.kind() == ColumnKind.WORD || Words.isLevel(plan.name());
      if (plan.role() == Role.VALUE) {
        if (found < 0 && level && table.column(c).isTwoLevel()) {
          found = c;
        } else {
          notes.doubt("column " + (c + 1) + " beside the periods was left out");
        }
      }
    }
    return found;
  }

  private String name(int column) {
    String name = table.layout().columns().get(column).name();
    return name.isEmpty() ? NAME : name;
  }

  private static List<Channel> channel(DoubleList instants, double resolution) {
    return List.of(new Channel(NAME, "", new EventSignal(instants.toArray(), resolution)));
  }
}
