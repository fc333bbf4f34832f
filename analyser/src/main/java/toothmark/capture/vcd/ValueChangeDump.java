package toothmark.capture.vcd;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import toothmark.capture.Capture;
import toothmark.capture.Channel;
import toothmark.capture.EventSignal;
import toothmark.capture.Reading;
import toothmark.capture.StepSignal;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.source.ByteSource;

/**
 * Reads value change dumps. Source: IEEE Std 1364-2005, clause 18.
 *
 * <p>A variable of one bit, an integer or a real is one channel. A vector is one channel for its
 * value and one for each bit. Values x and z change no level: the level before holds on.
 */
public final class ValueChangeDump {

  private static final Set<String> FIRST_WORDS =
      Set.of("$date", "$version", "$comment", "$timescale", "$scope", "$var", "$enddefinitions");

  private final String file;
  private final Declarations declarations;
  private final ValueChanges changes;
  private final List<Channel> channels = new ArrayList<>();
  private final List<String> doubts = new ArrayList<>();

  private ValueChangeDump(String file, Declarations declarations, ValueChanges changes) {
    this.file = file;
    this.declarations = declarations;
    this.changes = changes;
  }

  /**
   * Whether a file begins as a value change dump does.
   *
   * @param head first bytes of the file
   * @return true when the first word is a keyword that the standard allows there
   */
  public static boolean looksLike(byte[] head) {
    int p = head.length > 2 && head[0] == (byte) 0xef && head[1] == (byte) 0xbb ? 3 : 0;
    while (p < head.length && head[p] >= 0 && head[p] <= ' ') {
      p++;
    }
    StringBuilder word = new StringBuilder();
    while (p < head.length && head[p] > ' ' && word.length() < 20) {
      word.append((char) head[p++]);
    }
    return FIRST_WORDS.contains(word.toString());
  }

  /**
   * Reads a dump.
   *
   * @param source the file, at its first byte
   * @return the capture
   * @throws UnreadableCaptureException if the text breaks the standard
   * @throws IOException if the system cannot read the file
   */
  public static Capture read(ByteSource source) throws UnreadableCaptureException, IOException {
    Words words = new Words(source);
    Declarations declarations = new Declarations(source.name(), words);
    declarations.read();
    if (declarations.tickPower() == Integer.MAX_VALUE) {
      throw new UnreadableCaptureException(
          source.name()
              + ": no $timescale says what a tick is worth; add a line such as $timescale 1 us"
              + " $end");
    }
    ValueChanges changes =
        new ValueChanges(source.name(), words, declarations.byCode(), declarations.tickPower());
    changes.read();
    return new ValueChangeDump(source.name(), declarations, changes).capture();
  }

  private Capture capture() throws UnreadableCaptureException {
    Set<String> seen = new HashSet<>();
    Set<String> twice = new HashSet<>();
    for (Variable v : declarations.variables()) {
      if (!seen.add(v.name())) {
        twice.add(v.name());
      }
    }
    Set<String> names = new HashSet<>();
    for (Variable v : declarations.variables()) {
      boolean scoped = twice.contains(v.name()) && !v.scope().isEmpty();
      String name = scoped ? v.scope() + "." + v.name() : v.name();
      for (int k = 2; !names.add(name); k++) {
        name = v.name() + " (" + k + ")";
      }
      add(name, v);
    }
    if (channels.isEmpty()) {
      throw new UnreadableCaptureException(
          file + ": the dump holds no value that is known; record the capture again");
    }
    return new Capture(
        file,
        channels,
        new Reading(
            "value change dump",
            List.of(
                new Reading.Fact("timescale", declarations.timescaleText()),
                new Reading.Fact("variables", String.valueOf(declarations.variables().size()))),
            doubts));
  }

  private void add(String name, Variable variable) {
    Values values = variable.values();
    if (values.isEvent() && !values.word().isEmpty()) {
      double[] times = values.word().times();
      channels.add(new Channel(name, "", new EventSignal(times, changes.secondsPerTick())));
    } else {
      addTrack(name, values.word());
    }
    for (int i = 0; i < values.bits().length; i++) {
      addTrack(name + "[" + variable.range().index(i) + "]", values.bits()[i]);
    }
    if (values.unknown() > 0) {
      doubts.add(
          name
              + ": "
              + values.unknown()
              + (values.unknown() == 1 ? " value is" : " values are")
              + " x or z; the level before holds on");
    }
    if (values.word().isEmpty() && values.bits().length == 0) {
      doubts.add(name + ": no known value; left out");
    }
  }

  private void addTrack(String name, Values.Track track) {
    if (!track.isEmpty()) {
      channels.add(
          new Channel(
              name,
              "",
              new StepSignal(
                  track.times(), track.levels(), changes.secondsPerTick(), changes.end())));
    }
  }
}
