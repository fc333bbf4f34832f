package toothmark.capture.vcd;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import toothmark.capture.Capture;
import toothmark.capture.Channel;
import toothmark.capture.Reading;
import toothmark.capture.StepSignal;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.source.ByteSource;

/** Reads value change dumps. Source: IEEE Std 1364-2005, clause 18. */
public final class ValueChangeDump {

  private final String file;
  private final byte[] text;
  private int position;
  private double tickSeconds = 1.0;
  private final List<String> scope = new ArrayList<>();
  private final List<Variable> variables = new ArrayList<>();
  private final Map<String, Changes> byCode = new HashMap<>();

  private ValueChangeDump(String file, byte[] text) {
    this.file = file;
    this.text = text;
  }

  private record Variable(String scope, String name, Changes changes) {}

  private static final class Changes {
    private double[] times = new double[16];
    private double[] levels = new double[16];
    private int size;

    void add(double time, double level) {
      if (size > 0 && levels[size - 1] == level) {
        return;
      }
      if (size > 0 && times[size - 1] == time) {
        levels[size - 1] = level;
        return;
      }
      if (size == times.length) {
        times = Arrays.copyOf(times, 2 * size);
        levels = Arrays.copyOf(levels, 2 * size);
      }
      times[size] = time;
      levels[size++] = level;
    }
  }

  /**
   * Whether a file begins as a value change dump does: with a {@code $} keyword.
   *
   * @param head first bytes of the file
   * @return true when the first word starts with {@code $} and is a keyword of the standard
   */
  public static boolean looksLike(byte[] head) {
    int i = 0;
    while (i < head.length && head[i] <= ' ') {
      i++;
    }
    String word =
        new String(head, i, Math.min(16, head.length - i), StandardCharsets.ISO_8859_1)
            .split("\\s", 2)[0];
    return List.of("$date", "$version", "$comment", "$timescale", "$scope", "$var").contains(word);
  }

  /**
   * Reads a dump.
   *
   * @param source the file
   * @return the capture
   * @throws IOException if the system cannot read the file
   * @throws UnreadableCaptureException if the text breaks the standard
   */
  public static Capture read(ByteSource source) throws UnreadableCaptureException, IOException {
    byte[] text = new byte[1 << 16];
    int size = 0;
    int n = source.read(text, 0, text.length);
    while (n > 0) {
      size += n;
      text = size == text.length ? Arrays.copyOf(text, 2 * size) : text;
      n = source.read(text, size, text.length - size);
    }
    ValueChangeDump dump = new ValueChangeDump(source.name(), Arrays.copyOf(text, size));
    dump.declarations();
    return dump.values();
  }

  private void declarations() throws UnreadableCaptureException {
    for (String word = next(); word != null; word = next()) {
      switch (word) {
        case "$enddefinitions" -> {
          body();
          return;
        }
        case "$timescale" -> tickSeconds = timescale(String.join("", body()));
        case "$scope" -> scope.add(body().get(1));
        case "$upscope" -> {
          body();
          scope.remove(scope.size() - 1);
        }
        case "$var" -> declare(body());
        default -> body();
      }
    }
    throw new UnreadableCaptureException(
        file + ": the value change dump ends before $enddefinitions; copy the file again");
  }

  private void declare(List<String> words) {
    Changes changes = byCode.computeIfAbsent(words.get(2), k -> new Changes());
    String name = words.get(3);
    variables.add(new Variable(String.join(".", scope), name, changes));
  }

  private double timescale(String words) throws UnreadableCaptureException {
    int unit = 0;
    while (unit < words.length() && Character.isDigit(words.charAt(unit))) {
      unit++;
    }
    int power = List.of("s", "ms", "us", "ns", "ps", "fs").indexOf(words.substring(unit));
    int number = List.of("1", "10", "100").indexOf(words.substring(0, unit));
    if (power < 0 || number < 0) {
      throw new UnreadableCaptureException(
          file
              + ": $timescale is '"
              + words
              + "', but must be 1, 10 or 100 of s, ms, us, ns, ps or fs");
    }
    return Double.parseDouble("1e" + (number - 3 * power));
  }

  private List<String> body() throws UnreadableCaptureException {
    List<String> words = new ArrayList<>();
    for (String word = next(); word != null; word = next()) {
      if (word.equals("$end")) {
        return words;
      }
      words.add(word);
    }
    throw new UnreadableCaptureException(file + ": a section is not closed by $end");
  }

  private Capture values() throws UnreadableCaptureException {
    double now = 0;
    double start = Double.NaN;
    for (String word = next(); word != null; word = next()) {
      char kind = word.charAt(0);
      if (kind == '#') {
        now = ticks(word.substring(1)) * tickSeconds;
        start = Double.isNaN(start) ? now : start;
      } else if (word.equals("$comment")) {
        body();
      } else if ("01xXzZ".indexOf(kind) >= 0) {
        if (kind == '0' || kind == '1') {
          changesOf(word.substring(1)).add(now, kind - '0');
        }
      } else if (kind == 'b' || kind == 'B') {
        vector(word.substring(1), now);
      } else if (kind == 'r' || kind == 'R') {
        changesOf(next()).add(now, Double.parseDouble(word.substring(1)));
      }
    }
    return capture(now);
  }

  private void vector(String bits, double now) throws UnreadableCaptureException {
    Changes changes = changesOf(next());
    double level = 0;
    for (int i = 0; i < bits.length(); i++) {
      if (bits.charAt(i) != '0' && bits.charAt(i) != '1') {
        return;
      }
      level = 2 * level + bits.charAt(i) - '0';
    }
    changes.add(now, level);
  }

  private Changes changesOf(String code) throws UnreadableCaptureException {
    Changes changes = byCode.get(code);
    if (changes == null) {
      throw new UnreadableCaptureException(
          file + ": byte " + position + ": no $var declares the identifier '" + code + "'");
    }
    return changes;
  }

  private double ticks(String digits) throws UnreadableCaptureException {
    try {
      return Long.parseLong(digits);
    } catch (NumberFormatException e) {
      throw new UnreadableCaptureException(
          file + ": byte " + position + ": '#" + digits + "' is no time", e);
    }
  }

  private Capture capture(double end) throws UnreadableCaptureException {
    List<Channel> channels = new ArrayList<>();
    for (Variable v : variables) {
      Changes c = v.changes;
      if (c.size > 0) {
        long alike = variables.stream().filter(o -> o.name.equals(v.name)).count();
        channels.add(
            new Channel(
                alike > 1 ? v.scope + "." + v.name : v.name,
                "",
                new StepSignal(
                    Arrays.copyOf(c.times, c.size),
                    Arrays.copyOf(c.levels, c.size),
                    tickSeconds,
                    end)));
      }
    }
    if (channels.isEmpty()) {
      throw new UnreadableCaptureException(
          file + ": the value change dump holds no value; record the capture again");
    }
    return new Capture(
        file,
        channels,
        new Reading(
            "value change dump",
            List.of(new Reading.Fact("timescale", tickSeconds + " s")),
            List.of()));
  }

  private String next() {
    while (position < text.length && text[position] <= ' ') {
      position++;
    }
    int start = position;
    while (position < text.length && text[position] > ' ') {
      position++;
    }
    return start == position
        ? null
        : new String(text, start, position - start, StandardCharsets.ISO_8859_1);
  }
}
