package toothmark.capture.vcd;

import ch.randelshofer.fastdoubleparser.JavaDoubleParser;
import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import toothmark.capture.UnreadableCaptureException;

/**
 * The part of a dump behind {@code $enddefinitions}: times and values. Source: IEEE Std 1364-2005,
 * 18.2.1 and 18.2.2.
 */
final class ValueChanges {

  private final String file;
  private final Words words;
  private final Map<String, Values> byCode;
  private final Map<Long, Values> byPackedCode = new HashMap<>();
  private final Values[] byCharacter = new Values[128];
  private final double ticksPerSecond;
  private final double secondsPerTick;
  private long ticks;
  private double now;
  private boolean started;

  /**
   * Starts reading.
   *
   * @param tickPower a tick is 10^tickPower seconds
   */
  ValueChanges(String file, Words words, Map<String, Values> byCode, int tickPower) {
    this.file = file;
    this.words = words;
    this.byCode = byCode;
    this.ticksPerSecond = tickPower < 0 ? Math.pow(10, -tickPower) : 0;
    this.secondsPerTick = Math.pow(10, tickPower);
    byCode.forEach(this::index);
  }

  private void index(String code, Values values) {
    if (code.length() == 1 && code.charAt(0) < 128) {
      byCharacter[code.charAt(0)] = values;
    } else if (code.length() <= 8) {
      long packed = 0;
      for (int i = 0; i < code.length(); i++) {
        packed = packed << 8 | code.charAt(i);
      }
      byPackedCode.put(packed, values);
    }
  }

  /** Reads to the end of the file. */
  void read() throws IOException, UnreadableCaptureException {
    while (words.next()) {
      byte kind = words.at(0);
      switch (kind) {
        case '#' -> time();
        case '0', '1', 'x', 'X', 'z', 'Z' -> scalar(kind);
        case 'b', 'B' -> vector();
        case 'r', 'R' -> real();
        case 's', 'S' -> words.next();
        case '$' -> keyword();
        default ->
            throw broken(
                "'" + words.text(0) + "' is neither a time nor a value change; mend the line");
      }
    }
  }

  private void time() throws UnreadableCaptureException {
    long t = 0;
    boolean digits = words.length() > 1 && words.length() < 20;
    for (int i = 1; i < words.length(); i++) {
      int d = words.at(i) - '0';
      digits &= d >= 0 && d <= 9;
      t = 10 * t + d;
    }
    if (!digits || t < 0) {
      throw broken("'" + words.text(0) + "' is no time; mend the line");
    }
    if (started && t < ticks) {
      throw broken("the time goes back from #" + ticks + " to #" + t + "; split the file there");
    }
    ticks = t;
    now = seconds(t);
    started = true;
  }

  private double seconds(long t) {
    return ticksPerSecond > 0 ? t / ticksPerSecond : t * secondsPerTick;
  }

  private void scalar(byte value) throws IOException, UnreadableCaptureException {
    if (words.length() > 1) {
      values(1).scalar(now, value);
    } else {
      code().scalar(now, value);
    }
  }

  private void vector() throws IOException, UnreadableCaptureException {
    byte[] digits = new byte[words.length() - 1];
    for (int i = 0; i < digits.length; i++) {
      digits[i] = words.at(i + 1);
      if ("01xXzZ".indexOf(digits[i]) < 0) {
        throw broken("'" + words.text(0) + "' is no vector of 0, 1, x and z; mend the line");
      }
    }
    if (digits.length == 0) {
      throw broken("'b' without digits; mend the line");
    }
    code().vector(now, digits);
  }

  private void real() throws IOException, UnreadableCaptureException {
    String text = words.text(1);
    double value;
    try {
      value = JavaDoubleParser.parseDouble(text);
    } catch (NumberFormatException e) {
      throw broken("'r" + text + "' is no real number; mend the line");
    }
    if (Double.isFinite(value)) {
      code().real(now, value);
    } else {
      code().scalar(now, (byte) 'x');
    }
  }

  private Values code() throws IOException, UnreadableCaptureException {
    if (!words.next()) {
      throw broken("the dump ends within a value change; copy the file again");
    }
    return values(0);
  }

  private Values values(int from) throws UnreadableCaptureException {
    int n = words.length() - from;
    Values values;
    if (n == 1) {
      values = byCharacter[words.at(from) & 127];
    } else {
      values = n <= 8 ? byPackedCode.get(words.packed(from)) : byCode.get(words.text(from));
    }
    if (values == null) {
      throw broken(
          "no $var declares the identifier code '" + words.text(from) + "'; mend the line");
    }
    return values;
  }

  private void keyword() throws IOException, UnreadableCaptureException {
    if (words.is("$comment")) {
      while (!words.is("$end")) {
        if (!words.next()) {
          throw broken("$comment is not closed by $end; copy the file again");
        }
      }
    } else if (!words.is("$end")
        && !words.is("$dumpvars")
        && !words.is("$dumpall")
        && !words.is("$dumpon")
        && !words.is("$dumpoff")) {
      throw broken("'" + words.text(0) + "' is no keyword of the standard; mend the line");
    }
  }

  private UnreadableCaptureException broken(String what) {
    return new UnreadableCaptureException(file + ": line " + words.line() + ": " + what);
  }

  /** Time of the last time mark, s. */
  double end() {
    return now;
  }

  double secondsPerTick() {
    return ticksPerSecond > 0 ? 1 / ticksPerSecond : secondsPerTick;
  }
}
