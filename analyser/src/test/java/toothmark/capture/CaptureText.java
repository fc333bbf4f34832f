package toothmark.capture;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;

/** Writes small captures and says in words what a reader made of them. */
public final class CaptureText {

  private CaptureText() {}

  /** Reads a text and says what was understood: channels first, then doubts. */
  public static String understood(Path folder, String text) throws Exception {
    return understood(folder, text, StandardCharsets.UTF_8, ReadingOptions.withDefaults());
  }

  /** The same with options. */
  public static String understood(Path folder, String text, ReadingOptions options)
      throws Exception {
    return understood(folder, text, StandardCharsets.UTF_8, options);
  }

  /** The same in another encoding. */
  public static String understood(Path folder, String text, Charset charset, ReadingOptions options)
      throws Exception {
    Path file = folder.resolve("capture.txt");
    Files.write(file, text.getBytes(charset));
    try (Capture capture = CaptureReader.read(file, options)) {
      return describe(capture);
    }
  }

  /** States a unit of time. */
  public static ReadingOptions timeUnit(String unit) {
    return stated(new StatedLayout.Clock(Optional.of(unit), OptionalDouble.empty()));
  }

  /** States a sampling interval. */
  public static ReadingOptions interval(double seconds) {
    return stated(new StatedLayout.Clock(Optional.empty(), OptionalDouble.of(seconds)));
  }

  private static ReadingOptions stated(StatedLayout.Clock clock) {
    return ReadingOptions.withDefaults().withLayout(StatedLayout.NOTHING.with(clock));
  }

  /** The message with which reading a text ends. */
  public static String refused(Path folder, String text) throws Exception {
    try {
      return "read as\n" + understood(folder, text);
    } catch (UnreadableCaptureException | UnsupportedCaptureException e) {
      return e.getMessage();
    }
  }

  /** The value of a fact of the reading. */
  public static String fact(Capture capture, String label) {
    for (Reading.Fact fact : capture.reading().facts()) {
      if (fact.label().equals(label)) {
        return fact.value();
      }
    }
    return "no such fact";
  }

  /** A line for each channel and each doubt. */
  public static String describe(Capture capture) {
    StringBuilder b = new StringBuilder();
    for (Channel c : capture.channels()) {
      b.append(c.name()).append(c.unit().isEmpty() ? "" : " in " + c.unit()).append(": ");
      if (c.signal() instanceof SampledSignal s) {
        samples(b, s);
      } else if (c.signal() instanceof StepSignal s) {
        steps(b, s);
      } else if (c.signal() instanceof EventSignal s) {
        events(b, s);
      }
      b.append('\n');
    }
    for (String doubt : capture.reading().doubts()) {
      b.append("! ").append(doubt).append('\n');
    }
    return b.toString();
  }

  private static void samples(StringBuilder b, SampledSignal s) {
    b.append("every ").append(s.intervalSeconds()).append(" s");
    for (int k = 0; k < s.segments(); k++) {
      long first = s.segmentStart(k);
      double[] v = new double[(int) (s.segmentStart(k + 1) - first)];
      s.read(first, v, v.length);
      b.append(k == 0 ? " from " : " | from ").append(s.timeOf(first)).append(" s:");
      for (double x : v) {
        b.append(' ').append(x);
      }
    }
  }

  private static void steps(StringBuilder b, StepSignal s) {
    b.append("levels");
    for (int i = 0; i < s.size(); i++) {
      b.append(' ').append(s.level(i)).append(" at ").append(s.time(i));
    }
    b.append(" until ").append(s.span().endExclusive());
    b.append(", step ").append(s.resolutionSeconds());
  }

  private static void events(StringBuilder b, EventSignal s) {
    b.append("instants");
    for (int i = 0; i < s.size(); i++) {
      b.append(' ').append(s.time(i));
    }
    b.append(", step ").append(s.resolutionSeconds());
  }
}
