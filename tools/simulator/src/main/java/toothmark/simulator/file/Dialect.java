package toothmark.simulator.file;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import toothmark.simulator.Recorder;
import toothmark.simulator.Trace;

/** The ways in which recorders write what they kept. */
public enum Dialect {
  /** Comma, seconds, one header row with units in brackets. */
  PLAIN("plain", "CH%d"),
  /** Time in microseconds, crank in millivolts, a row of units and an empty row below the names. */
  UNITS_ROW("units-row", "Input %d"),
  /** Byte order mark, settings first, semicolons, decimal commas, time in milliseconds. */
  DECIMAL_COMMA("decimal-comma", "Eingang %s"),
  /** Settings as {@code # key,value}, no time column, exponents. */
  NO_TIME("no-time", ""),
  /** Tabulators, CRLF, sample numbers, whose rate is in the settings. */
  SAMPLE_NUMBERS("sample-numbers", "Trace %d"),
  /** As plain, but values beyond the range are words, and slow channels have empty cells. */
  WORDS_AND_GAPS("words-and-gaps", "CH%d"),
  /** Levels, a row only where one changes. */
  LOGIC_CHANGES("logic-changes", "D%d"),
  /** Value change dump (IEEE 1364). */
  VALUE_CHANGE_DUMP("vcd", ""),
  /** Times of the crank's timing edges. */
  EDGES("edges", ""),
  /** Times from one timing edge to the next, whole microseconds. */
  PERIODS("periods", ""),
  /** The same in counts of a 2 MHz clock that the settings name. */
  PERIODS_IN_COUNTS("periods", ""),
  /** Sixteen-bit sound. */
  WAV("wav", "%d");

  private final String truthName;
  private final String channelName;

  Dialect(String truthName, String channelName) {
    this.truthName = truthName;
    this.channelName = channelName;
  }

  String truthName() {
    return truthName;
  }

  /**
   * What a recorder must keep so that this dialect can be written.
   *
   * @return kind of recorder
   */
  public Recorder.Kind recorderKind() {
    return switch (this) {
      case LOGIC_CHANGES, VALUE_CHANGE_DUMP -> Recorder.Kind.LOGIC_ANALYSER;
      case EDGES, PERIODS, PERIODS_IN_COUNTS -> Recorder.Kind.EDGE_LOGGER;
      case PLAIN, UNITS_ROW, DECIMAL_COMMA, NO_TIME, SAMPLE_NUMBERS, WORDS_AND_GAPS, WAV ->
          Recorder.Kind.OSCILLOSCOPE;
    };
  }

  /**
   * Name of the file without compression.
   *
   * @return {@code capture} with the dialect's suffix
   */
  public String fileName() {
    return switch (this) {
      case VALUE_CHANGE_DUMP -> "capture.vcd";
      case WAV -> "capture.wav";
      default -> "capture.csv";
    };
  }

  boolean hasOneChannel() {
    return recorderKind() == Recorder.Kind.EDGE_LOGGER;
  }

  boolean countsFromFirstEdge() {
    return this == PERIODS || this == PERIODS_IN_COUNTS;
  }

  /** What the file calls the channel at this place, without its unit; empty when it has no name. */
  Optional<String> channelName(List<Trace> traces, int index) {
    Trace trace = traces.get(index);
    return switch (this) {
      case EDGES, PERIODS, PERIODS_IN_COUNTS -> Optional.empty();
      case DECIMAL_COMMA -> Optional.of(String.format(channelName, (char) ('A' + index)));
      case LOGIC_CHANGES -> Optional.of(String.format(Locale.ROOT, channelName, index));
      case NO_TIME -> Optional.of(trace.name().replace(" ", "").toUpperCase(Locale.ROOT));
      case VALUE_CHANGE_DUMP -> Optional.of(trace.name().replace(" ", ""));
      default -> Optional.of(String.format(Locale.ROOT, channelName, index + 1));
    };
  }
}
