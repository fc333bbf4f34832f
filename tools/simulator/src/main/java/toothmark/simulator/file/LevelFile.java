package toothmark.simulator.file;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import toothmark.simulator.LevelChanges;
import toothmark.simulator.LevelChanges.Level;
import toothmark.simulator.SimulatedCapture;
import toothmark.simulator.Trace;

/** Writes levels: a row where one changes, or a value change dump. */
final class LevelFile {
  private static final double DUMP_UNITS_PER_SECOND = 1e7;

  private final SimulatedCapture capture;
  private final Dialect dialect;
  private final List<Trace.Logic> traces = new ArrayList<>();
  private final List<String> names = new ArrayList<>();

  LevelFile(SimulatedCapture capture, Dialect dialect) {
    this.capture = capture;
    this.dialect = dialect;
    for (int i = 0; i < capture.traces().size(); i++) {
      traces.add((Trace.Logic) capture.traces().get(i));
      names.add(dialect.channelName(capture.traces(), i).orElseThrow());
    }
  }

  String text() {
    return dialect == Dialect.LOGIC_CHANGES ? rows() : dump();
  }

  /** Every moment of change with the channels that change then. */
  private TreeMap<Double, List<Integer>> moments() {
    TreeMap<Double, List<Integer>> moments = new TreeMap<>();
    for (int c = 0; c < traces.size(); c++) {
      LevelChanges levels = traces.get(c).levels();
      for (int i = 0; i < levels.count(); i++) {
        moments.computeIfAbsent(levels.seconds(i), t -> new ArrayList<>()).add(c);
      }
    }
    return moments;
  }

  private int[] firstLevels() {
    return traces.stream().mapToInt(t -> t.levels().first() == Level.HIGH ? 1 : 0).toArray();
  }

  private String rows() {
    StringBuilder out = new StringBuilder("Time [s], ").append(String.join(", ", names));
    int[] now = firstLevels();
    row(out.append('\n'), capture.startSeconds(), now);
    moments()
        .forEach(
            (time, channels) -> {
              channels.forEach(c -> now[c] = 1 - now[c]);
              row(out, time, now);
            });
    return out.toString();
  }

  private static void row(StringBuilder out, double time, int[] levels) {
    Decimals.append(out, time, 8);
    for (int level : levels) {
      out.append(", ").append(level);
    }
    out.append('\n');
  }

  private String dump() {
    StringBuilder out = new StringBuilder("$comment simulated $end\n$timescale 100 ns $end\n");
    out.append("$scope module recorder $end\n");
    for (int c = 0; c < names.size(); c++) {
      out.append("$var wire 1 ").append(symbol(c)).append(' ').append(names.get(c));
      out.append(" $end\n");
    }
    out.append("$upscope $end\n$enddefinitions $end\n#0\n$dumpvars\n");
    int[] now = firstLevels();
    for (int c = 0; c < now.length; c++) {
      out.append(now[c]).append(symbol(c)).append('\n');
    }
    out.append("$end\n");
    double start = capture.startSeconds();
    moments()
        .forEach(
            (time, channels) -> {
              out.append('#').append(Math.round((time - start) * DUMP_UNITS_PER_SECOND));
              out.append('\n');
              for (int c : channels) {
                now[c] = 1 - now[c];
                out.append(now[c]).append(symbol(c)).append('\n');
              }
            });
    double end = capture.scenario().recorder().durationSeconds();
    return out.append('#').append(Math.round(end * DUMP_UNITS_PER_SECOND)).append('\n').toString();
  }

  private static char symbol(int channel) {
    return (char) ('!' + channel);
  }
}
