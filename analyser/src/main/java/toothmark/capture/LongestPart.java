package toothmark.capture;

import java.util.ArrayList;
import java.util.List;
import toothmark.units.Interval;
import toothmark.units.Say;

/**
 * The longest part of a record within which time is known: a crank cannot be counted from one
 * trigger to the next where times start again, nor through a pause that is not short beside what is
 * recorded.
 *
 * <p>Not for short pauses: rows that a recorder lost are bridged like teeth that gave no edge.
 */
public final class LongestPart {

  /** A pause of this share of the longest segment, or more, parts a record. */
  private static final double LONG_PAUSE = 0.2;

  private LongestPart() {}

  /**
   * Cuts a capture.
   *
   * @param capture whose channels are samples on one clock; any other is given back as it is
   * @return the longest part, its times as they were, with a doubt that says so; the capture itself
   *     where it is in one part. It shares the samples, so close only the first.
   */
  public static Capture of(Capture capture) {
    if (!(capture.channels().get(0).signal() instanceof SampledSignal first)
        || first.segments() < 2
        || !capture.channels().stream().allMatch(c -> isAlike(c.signal(), first))) {
      return capture;
    }
    List<Integer> starts = starts(first);
    if (starts.size() < 2) {
      return capture;
    }
    int from = 0;
    int to = 0;
    for (int p = 0; p < starts.size(); p++) {
      int end = p + 1 < starts.size() ? starts.get(p + 1) : first.segments();
      if (span(first, starts.get(p), end).seconds() > span(first, from, to).seconds()) {
        from = starts.get(p);
        to = end;
      }
    }
    List<Channel> channels = new ArrayList<>();
    for (Channel c : capture.channels()) {
      channels.add(new Channel(c.name(), c.unit(), new Part((SampledSignal) c.signal(), from, to)));
    }
    List<String> doubts = new ArrayList<>(capture.reading().doubts());
    doubts.add(sentence(starts.size(), span(first, from, to)));
    Reading reading = new Reading(capture.reading().format(), capture.reading().facts(), doubts);
    return new Capture(capture.file(), channels, reading, capture.saved());
  }

  private static String sentence(int parts, Interval kept) {
    return "the record is in "
        + parts
        + " parts, from one to the next of which no crank can be counted; only the longest is"
        + " examined, "
        + Say.seconds(kept.seconds())
        + " from "
        + Say.at(kept.startInclusive());
  }

  private static boolean isAlike(Signal signal, SampledSignal first) {
    return signal instanceof SampledSignal s
        && s.size() == first.size()
        && s.segments() == first.segments()
        && s.intervalSeconds() == first.intervalSeconds();
  }

  /** The segments with which parts start. */
  private static List<Integer> starts(SampledSignal s) {
    double longest = 0;
    for (int k = 0; k < s.segments(); k++) {
      longest = Math.max(longest, span(s, k, k + 1).seconds());
    }
    List<Integer> starts = new ArrayList<>(List.of(0));
    for (int k = 1; k < s.segments(); k++) {
      double pause = s.timeOf(s.segmentStart(k)) - span(s, k - 1, k).endExclusive();
      if (pause < s.intervalSeconds() / 2 || pause >= LONG_PAUSE * longest) {
        starts.add(k);
      }
    }
    return starts;
  }

  /** From the first sample of a segment to just after the last one before another. */
  private static Interval span(SampledSignal s, int from, int to) {
    double start = s.timeOf(s.segmentStart(from));
    double end = to == from ? start : s.timeOf(s.segmentStart(to) - 1) + s.intervalSeconds();
    return new Interval(start, end);
  }

  /** Some segments of a signal. */
  private static final class Part extends SampledSignal {

    private final SampledSignal whole;
    private final long skipped;

    Part(SampledSignal whole, int from, int to) {
      super(
          times(whole, from, to),
          firsts(whole, from, to),
          whole.intervalSeconds(),
          whole.segmentStart(to) - whole.segmentStart(from));
      this.whole = whole;
      this.skipped = whole.segmentStart(from);
    }

    private static double[] times(SampledSignal s, int from, int to) {
      double[] times = new double[to - from];
      for (int k = from; k < to; k++) {
        times[k - from] = s.timeOf(s.segmentStart(k));
      }
      return times;
    }

    private static long[] firsts(SampledSignal s, int from, int to) {
      long[] firsts = new long[to - from];
      for (int k = from; k < to; k++) {
        firsts[k - from] = s.segmentStart(k) - s.segmentStart(from);
      }
      return firsts;
    }

    @Override
    public void read(long first, double[] into, int count) {
      whole.read(skipped + first, into, count);
    }
  }
}
