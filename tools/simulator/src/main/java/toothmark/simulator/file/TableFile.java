package toothmark.simulator.file;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import toothmark.simulator.SimulatedCapture;
import toothmark.simulator.Trace;

/** Writes voltages as rows of text. */
final class TableFile {
  private static final int FLUSH_CHARACTERS = 1 << 16;
  private static final int SLOW_CHANNEL_EVERY = 2;

  private final SimulatedCapture capture;
  private final Dialect dialect;
  private final List<Trace.Analogue> traces = new ArrayList<>();
  private final List<String> names = new ArrayList<>();

  TableFile(SimulatedCapture capture, Dialect dialect) {
    this.capture = capture;
    this.dialect = dialect;
    for (int i = 0; i < capture.traces().size(); i++) {
      traces.add((Trace.Analogue) capture.traces().get(i));
      names.add(dialect.channelName(capture.traces(), i).orElseThrow());
    }
  }

  void write(Writer out) throws IOException {
    StringBuilder text = new StringBuilder();
    header(text);
    int rows = traces.get(0).size();
    for (int row = 0; row < rows; row++) {
      row(text, row);
      if (text.length() >= FLUSH_CHARACTERS) {
        out.append(text);
        text.setLength(0);
      }
    }
    out.append(text);
  }

  private void header(StringBuilder out) {
    double step = 1.0 / capture.sampleRateHz();
    switch (dialect) {
      case UNITS_ROW -> {
        out.append("Time,").append(String.join(",", names)).append("\n(us),(mV)");
        out.append(",(V)".repeat(names.size() - 1)).append("\n\n");
      }
      case DECIMAL_COMMA -> {
        out.append('\ufeff').append("Messung;12\nAbtastzeit;");
        Decimals.append(out, step * 1e3, 6, ',');
        out.append(";ms\nBereich;automatisch\n\nZeit;")
            .append(String.join(";", names))
            .append("\n(ms)");
        out.append(";(V)".repeat(names.size())).append('\n');
      }
      case NO_TIME -> {
        out.append("# points,").append(traces.get(0).size()).append("\n# sample interval,");
        Exponents.append(out, step, 6);
        out.append(",s\n# start,");
        Exponents.append(out, capture.startSeconds(), 6);
        out.append(",s\n").append(String.join(",", names)).append('\n');
      }
      case SAMPLE_NUMBERS -> {
        out.append("sample rate\t");
        Decimals.append(out, capture.sampleRateHz(), 0);
        out.append("\tHz\r\n\r\nsample\t").append(String.join(" (V)\t", names)).append(" (V)\r\n");
      }
      default -> out.append("Time (s),").append(String.join(" (V),", names)).append(" (V)\n");
    }
  }

  private void row(StringBuilder out, int row) {
    double time = capture.startSeconds() + row / capture.sampleRateHz();
    switch (dialect) {
      case UNITS_ROW -> Decimals.append(out, time * 1e6, 2);
      case DECIMAL_COMMA -> Decimals.append(out, time * 1e3, 5, ',');
      case NO_TIME -> {
        // the preamble holds start and interval
      }
      case SAMPLE_NUMBERS -> out.append(row);
      case WORDS_AND_GAPS -> Decimals.append(out, time, 8);
      default -> Decimals.append(out, time, 7);
    }
    for (int channel = 0; channel < traces.size(); channel++) {
      cell(out, channel, row);
    }
    out.append(dialect == Dialect.SAMPLE_NUMBERS ? "\r\n" : "\n");
  }

  private void cell(StringBuilder out, int channel, int row) {
    double volts = traces.get(channel).volts(row);
    switch (dialect) {
      case UNITS_ROW -> Decimals.append(out.append(','), (channel == 0 ? 1e3 : 1.0) * volts, 3);
      case DECIMAL_COMMA -> Decimals.append(out.append(';'), volts, 4, ',');
      case NO_TIME -> Exponents.append(channel == 0 ? out : out.append(','), volts, 5);
      case SAMPLE_NUMBERS -> Decimals.append(out.append('\t'), volts, 4);
      case WORDS_AND_GAPS -> wordOrGap(out.append(','), channel, row);
      default -> Decimals.append(out.append(','), volts, 4);
    }
  }

  private void wordOrGap(StringBuilder out, int channel, int row) {
    double volts = traces.get(channel).volts(row);
    double range = capture.scenario().recorder().front().rangeVolts();
    if (channel > 0 && row % SLOW_CHANNEL_EVERY != 0) {
      return;
    }
    if (channel == 0 && range > 0.0 && Math.abs(volts) > 0.999 * range) {
      out.append(volts > 0.0 ? "OVER" : "-OVER");
    } else {
      Decimals.append(out, volts, 3);
    }
  }
}
