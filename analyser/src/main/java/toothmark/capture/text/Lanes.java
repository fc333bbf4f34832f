package toothmark.capture.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import toothmark.capture.Channel;
import toothmark.capture.EventSignal;
import toothmark.capture.Signal;
import toothmark.capture.StepSignal;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.store.StoredColumn;

/** Events of several channels in one list, with a column that numbers the channels. */
final class Lanes {

  private static final int CHUNK = 8192;
  private static final int MOST_CHANNELS = 64;
  private static final Set<String> NAMES =
      Words.set("channel,ch,chan,kanal,canal,canale,voie,pin,input,eingang,source,sensor");

  private final Table table;
  private final Times times;
  private final Notes notes;
  private final int column;
  private final int levels;
  private final TreeMap<Long, Events> byNumber = new TreeMap<>();

  /** Of one channel; no levels where the list has none. */
  private record Events(DoubleList times, DoubleList levels) {}

  private Lanes(Table table, Times times, Notes notes, int column, int levels) {
    this.table = table;
    this.times = times;
    this.notes = notes;
    this.column = column;
    this.levels = levels;
  }

  /** Whether a column goes by such a name. */
  static boolean isNamed(String name) {
    return NAMES.contains(Words.normal(name));
  }

  /**
   * The channels of a list.
   *
   * @param columns beside the times: the number of the channel, perhaps a level
   * @return no channels where it is no such list
   */
  static List<Channel> split(Table table, Times times, List<Integer> columns, Notes notes)
      throws UnreadableCaptureException {
    int lane = -1;
    int level = -1;
    for (int c : columns) {
      ColumnPlan plan = table.layout().columns().get(c);
      boolean whole = plan.kind() == ColumnKind.NUMBER && table.column(c).writtenStep() >= 1;
      if (lane < 0 && isNamed(plan.name()) && plan.unit().isNone() && whole) {
        lane = c;
      } else {
        level = table.column(c).isTwoLevel() ? c : level;
      }
    }
    boolean list = lane >= 0 && columns.size() == (level < 0 ? 1 : 2);
    return list ? new Lanes(table, times, notes, lane, level).channels() : List.of();
  }

  private List<Channel> channels() throws UnreadableCaptureException {
    StoredColumn numbers = table.column(column);
    if (numbers.lowest() == numbers.highest() || levels < 0 && alternates()) {
      return List.of();
    }
    fill();
    if (byNumber.size() > MOST_CHANNELS) {
      return List.of();
    }
    notes.fact("what it holds", "events of " + byNumber.size() + " channels, " + times.count());
    String name = table.layout().columns().get(column).name();
    double end = times.at(times.count() - 1);
    List<Channel> channels = new ArrayList<>();
    byNumber.forEach(
        (number, own) -> channels.add(new Channel(name + " " + number, "", signal(own, end))));
    return channels;
  }

  private Signal signal(Events own, double end) {
    double[] t = own.times().toArray();
    return levels < 0
        ? new EventSignal(t, times.writtenStep())
        : new StepSignal(t, own.levels().toArray(), times.writtenStep(), end);
  }

  /** Whether numbers change with every row, as the level of one channel does. */
  private boolean alternates() {
    StoredColumn numbers = table.column(column);
    boolean changes = numbers.isTwoLevel();
    double[] chunk = new double[(int) Math.min(CHUNK, times.count())];
    numbers.read(0, chunk, 0, chunk.length);
    for (int i = 1; i < chunk.length; i++) {
      changes &= chunk[i] != chunk[i - 1];
    }
    return changes;
  }

  /** Takes the list apart, as long as there are not too many channels. */
  private void fill() throws UnreadableCaptureException {
    double before = Double.NEGATIVE_INFINITY;
    double[] t = new double[CHUNK];
    double[] number = new double[CHUNK];
    double[] level = new double[CHUNK];
    for (long first = 0;
        first < times.count() && byNumber.size() <= MOST_CHANNELS;
        first += CHUNK) {
      int n = (int) Math.min(CHUNK, times.count() - first);
      times.read(first, t, n);
      table.column(column).read(first, number, 0, n);
      if (levels >= 0) {
        table.column(levels).read(first, level, 0, n);
      }
      for (int i = 0; i < n; i++) {
        if (t[i] < before) {
          throw EventBuilder.goesBack(table, before, t[i], first + i);
        }
        before = t[i];
        add(number[i], t[i], level[i]);
      }
    }
  }

  /** Adds an event; one at the time of the event before of that channel, or no change, is none. */
  private void add(double number, double time, double level) {
    Events own =
        byNumber.computeIfAbsent(
            Math.round(number), n -> new Events(new DoubleList(), new DoubleList()));
    boolean any = own.times().size() > 0;
    if (any && (own.times().last() == time || levels >= 0 && own.levels().last() == level)) {
      return;
    }
    own.times().add(time);
    if (levels >= 0) {
      own.levels().add(level);
    }
  }
}
