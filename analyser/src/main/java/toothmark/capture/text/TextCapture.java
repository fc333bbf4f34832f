package toothmark.capture.text;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import toothmark.capture.Capture;
import toothmark.capture.Channel;
import toothmark.capture.EventSignal;
import toothmark.capture.Reading;
import toothmark.capture.ReadingOptions;
import toothmark.capture.SampledSignal;
import toothmark.capture.StepSignal;
import toothmark.capture.UnreadableCaptureException;

/** Reads delimited text. */
public final class TextCapture {

  private final String file;
  private final ReadingOptions options;
  private final List<String> lines;
  private char delimiter;
  private char decimal;
  private int firstRow;
  private String[] names = {};
  private String[] units = {};
  private double interval = Double.NaN;
  private double start;

  private TextCapture(String file, List<String> lines, ReadingOptions options) {
    this.file = file;
    this.lines = lines;
    this.options = options;
  }

  /**
   * Reads a text file.
   *
   * @param file name for messages
   * @param bytes the whole file
   * @param options what the user states
   * @return the capture
   * @throws UnreadableCaptureException if it cannot be understood
   */
  public static Capture read(String file, byte[] bytes, ReadingOptions options)
      throws UnreadableCaptureException {
    int skip = 0;
    Charset charset = StandardCharsets.UTF_8;
    if (bytes.length > 2 && (bytes[0] & 0xff) == 0xef && (bytes[1] & 0xff) == 0xbb) {
      skip = 3;
    } else if (bytes.length > 1 && (bytes[0] & 0xff) == 0xff && (bytes[1] & 0xff) == 0xfe) {
      skip = 2;
      charset = StandardCharsets.UTF_16LE;
    } else if (bytes.length > 1 && (bytes[0] & 0xff) == 0xfe && (bytes[1] & 0xff) == 0xff) {
      skip = 2;
      charset = StandardCharsets.UTF_16BE;
    }
    String text = new String(bytes, skip, bytes.length - skip, charset);
    TextCapture t = new TextCapture(file, Arrays.asList(text.split("\r\n|\n|\r")), options);
    t.layout();
    t.header();
    return t.interpret(t.rows());
  }

  private String[] cells(String line) {
    String[] c =
        delimiter == ' ' ? line.strip().split("\\s+") : line.split(String.valueOf(delimiter), -1);
    for (int i = 0; i < c.length; i++) {
      c[i] = c[i].strip();
      if (c[i].length() > 1 && c[i].startsWith("\"") && c[i].endsWith("\"")) {
        c[i] = c[i].substring(1, c[i].length() - 1).strip();
      }
    }
    return c;
  }

  private boolean numeric(String line) {
    if (line.isBlank()) {
      return false;
    }
    for (String c : cells(line)) {
      if (Double.isNaN(number(c))) {
        return false;
      }
    }
    return true;
  }

  private double number(String cell) {
    String c = decimal == ',' ? cell.replace(',', '.') : cell;
    if (c.isEmpty() || Character.isLetter(c.charAt(c.length() - 1))) {
      return Double.NaN;
    }
    try {
      return Double.parseDouble(c);
    } catch (NumberFormatException e) {
      return Double.NaN;
    }
  }

  private void layout() throws UnreadableCaptureException {
    int best = 0;
    char[][] tries = {{';', ','}, {'\t', '.'}, {';', '.'}, {',', '.'}, {'\t', ','}, {' ', '.'}};
    char bestDelimiter = 0;
    char bestDecimal = 0;
    int n = Math.min(lines.size(), 400);
    for (char[] t : tries) {
      delimiter = t[0];
      decimal = t[1];
      int score = 0;
      for (int i = 0; i < n; i++) {
        score += numeric(lines.get(i)) ? Math.min(3, cells(lines.get(i)).length) : 0;
      }
      if (score > best) {
        best = score;
        bestDelimiter = delimiter;
        bestDecimal = decimal;
      }
    }
    if (best == 0) {
      throw new UnreadableCaptureException(
          file
              + ": no row of numbers was found; export the capture as text or as a value change"
              + " dump");
    }
    delimiter = options.delimiter().orElse(bestDelimiter);
    decimal = options.decimalMark().orElse(bestDecimal);
    while (!numeric(lines.get(firstRow))) {
      firstRow++;
    }
  }

  private void header() {
    int width = cells(lines.get(firstRow)).length;
    List<String[]> head = new ArrayList<>();
    for (int i = 0; i < firstRow; i++) {
      String line = lines.get(i);
      String[] c = cells(line.startsWith("#") ? line.substring(1) : line);
      if (!line.startsWith("#") && !line.isBlank() && c.length == width) {
        head.add(c);
      }
      setting(c);
    }
    names = new String[width];
    units = new String[width];
    Arrays.fill(units, "");
    for (int i = 0; i < width; i++) {
      names[i] = width == 1 ? "1" : "column " + (i + 1);
    }
    if (head.isEmpty()) {
      return;
    }
    String[] last = head.get(head.size() - 1);
    boolean unitRow = head.size() > 1 && last[0].matches("[\\[(].*[\\])]");
    String[] top = unitRow ? head.get(head.size() - 2) : last;
    for (int i = 0; i < width; i++) {
      String whole = top[i] + (unitRow ? " " + last[i] : "");
      int open = Math.max(whole.lastIndexOf('('), whole.lastIndexOf('['));
      if (open >= 0 && whole.matches(".*[\\])]")) {
        units[i] = whole.substring(open + 1, whole.length() - 1).strip();
        whole = whole.substring(0, open).strip();
      }
      names[i] = whole;
    }
  }

  private void setting(String[] c) {
    if (c.length < 2) {
      return;
    }
    String key = c[0].toLowerCase(Locale.ROOT).strip();
    double v = number(c[1]);
    double scale = c.length > 2 ? timeScale(c[2], 1) : 1;
    if (key.contains("interval")) {
      interval = v * scale;
    } else if (key.equals("start")) {
      start = v * scale;
    }
  }

  private static double timeScale(String unit, double otherwise) {
    return switch (unit.toLowerCase(Locale.ROOT).replace('\u00b5', 'u').replace('\u03bc', 'u')) {
              case "s", "sec" -> 1;
              case "ms" -> 1e3;
              case "us" -> 1e6;
              case "ns" -> 1e9;
              default -> -otherwise;
            }
            < 0
        ? otherwise
        : 1
            / switch (unit.toLowerCase(Locale.ROOT).replace('\u00b5', 'u').replace('\u03bc', 'u')) {
              case "ms" -> 1e3;
              case "us" -> 1e6;
              case "ns" -> 1e9;
              default -> 1.0;
            };
  }

  private double[][] rows() throws UnreadableCaptureException {
    int width = names.length;
    double[][] columns = new double[width][lines.size() - firstRow];
    int n = 0;
    for (int i = firstRow; i < lines.size(); i++) {
      if (lines.get(i).isBlank()) {
        continue;
      }
      String[] c = cells(lines.get(i));
      if (c.length != width && i == lines.size() - 1) {
        break;
      }
      if (c.length != width) {
        throw new UnreadableCaptureException(
            file + ": line " + (i + 1) + ": " + c.length + " cells where the others have " + width);
      }
      for (int k = 0; k < width; k++) {
        columns[k][n] = number(c[k]);
        if (Double.isNaN(columns[k][n])) {
          throw new UnreadableCaptureException(
              file + ": line " + (i + 1) + ", column " + (k + 1) + ": '" + c[k] + "' is no number");
        }
      }
      n++;
    }
    for (int k = 0; k < width; k++) {
      columns[k] = Arrays.copyOf(columns[k], n);
    }
    return columns;
  }

  private Capture interpret(double[][] columns) throws UnreadableCaptureException {
    String first = names[0].toLowerCase(Locale.ROOT);
    if (columns.length == 1 && (first.contains("period") || first.contains("time"))) {
      double scale = timeScale(options.timeUnit().orElse(units[0]), 1);
      return events(columns[0], scale, first.contains("period"));
    }
    boolean timed = first.startsWith("time") || first.startsWith("zeit") || first.equals("t");
    List<Channel> channels = new ArrayList<>();
    double[] time = null;
    if (timed) {
      double scale = timeScale(options.timeUnit().orElse(units[0]), 1);
      time = new double[columns[0].length];
      for (int i = 0; i < time.length; i++) {
        time[i] = columns[0][i] / Math.rint(1 / scale);
      }
      interval = (time[time.length - 1] - time[0]) / (time.length - 1);
      start = time[0];
    }
    interval = options.intervalSeconds().orElse(interval);
    if (Double.isNaN(interval)) {
      throw new UnreadableCaptureException(
          file + ": neither a time column nor a sampling interval was found; state the interval");
    }
    for (int k = timed ? 1 : 0; k < columns.length; k++) {
      String unit = units[k].startsWith("m") ? units[k].substring(1) : units[k];
      for (int i = 0; unit.length() < units[k].length() && i < columns[k].length; i++) {
        columns[k][i] /= 1000;
      }
      channels.add(
          uniform(time)
              ? new Channel(names[k], unit, SampledSignal.of(start, interval, columns[k]))
              : new Channel(names[k], unit, steps(time, columns[k])));
    }
    return new Capture(file, channels, reading(uniform(time) ? "samples" : "changes of level"));
  }

  private boolean uniform(double[] time) {
    for (int i = 1; time != null && i < time.length; i++) {
      if (Math.abs(time[i] - start - i * interval) > 1.5 * interval) {
        return false;
      }
    }
    return true;
  }

  private static StepSignal steps(double[] time, double[] level) {
    double[] t = new double[time.length];
    double[] v = new double[time.length];
    int n = 0;
    for (int i = 0; i < time.length; i++) {
      if (i == 0 || level[i] != v[n - 1]) {
        t[n] = time[i];
        v[n++] = level[i];
      }
    }
    return new StepSignal(Arrays.copyOf(t, n), Arrays.copyOf(v, n), 0, time[time.length - 1]);
  }

  private Capture events(double[] values, double scale, boolean periods) {
    double[] times = new double[values.length + (periods ? 1 : 0)];
    double sum = 0;
    for (int i = 0; i < times.length; i++) {
      times[i] = (periods ? sum : values[i]) / Math.rint(1 / scale);
      sum += periods && i < values.length ? values[i] : 0;
    }
    return new Capture(
        file,
        List.of(new Channel("1", "", new EventSignal(times, scale))),
        reading(periods ? "tooth periods" : "edge times"));
  }

  private Reading reading(String what) {
    return new Reading(
        "delimited text, " + what,
        List.of(
            new Reading.Fact("delimiter", String.valueOf(delimiter)),
            new Reading.Fact("decimal mark", String.valueOf(decimal)),
            new Reading.Fact("rows of numbers from", "line " + (firstRow + 1)),
            new Reading.Fact("columns", String.join(", ", names))),
        List.of());
  }
}
