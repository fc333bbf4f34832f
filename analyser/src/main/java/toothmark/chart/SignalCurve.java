package toothmark.chart;

import java.util.Optional;
import org.jfree.data.Range;
import toothmark.capture.Channel;
import toothmark.capture.EventSignal;
import toothmark.capture.SampledSignal;
import toothmark.capture.Signal;
import toothmark.capture.StepSignal;

/** A recorded signal as a curve over time. */
public abstract class SignalCurve implements Curve {

  private static final int BLOCK = 4096;

  private SignalCurve() {}

  /**
   * Looks at a signal as a curve.
   *
   * @param signal what was recorded
   * @return empty for bare instants, which have no height
   */
  public static Optional<Curve> of(Signal signal) {
    if (signal instanceof SampledSignal sampled) {
      return Optional.of(new Sampled(sampled));
    }
    if (signal instanceof StepSignal steps) {
      return Optional.of(new Steps(steps));
    }
    if (signal instanceof EventSignal) {
      return Optional.empty();
    }
    throw new IllegalArgumentException("no picture is known for " + signal.getClass());
  }

  /** A channel as a curve; bare instants as spikes from 0 to 1. */
  static Curve orSpikes(Channel channel) {
    return channel.signal() instanceof EventSignal events
        ? new Spikes(events)
        : of(channel.signal()).orElseThrow();
  }

  @Override
  public final Range up(double from, double to) {
    double[] ends = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
    Line keepEnds =
        new Line() {
          @Override
          public void moveTo(double x, double y) {
            ends[0] = Math.min(ends[0], y);
            ends[1] = Math.max(ends[1], y);
          }

          @Override
          public void lineTo(double x, double y) {
            moveTo(x, y);
          }
        };
    trace(from, to, 1, keepEnds);
    return ends[0] <= ends[1] ? new Range(ends[0], ends[1]) : new Range(0, 0);
  }

  private static final class Sampled extends SignalCurve {

    private final SampledSignal signal;

    Sampled(SampledSignal signal) {
      this.signal = signal;
    }

    @Override
    public Range across() {
      return new Range(signal.timeOf(0), signal.timeOf(signal.size() - 1.0));
    }

    @Override
    public void trace(double from, double to, int columns, Line line) {
      Thinner thinner = new Thinner(from, (to - from) / columns, line);
      for (int s = 0; s < signal.segments(); s++) {
        long first = signal.segmentStart(s);
        long last = signal.segmentStart(s + 1) - 1;
        double t = signal.timeOf(first);
        double dt = signal.intervalSeconds();
        long a = first + (long) Math.max(0, Math.floor((from - t) / dt));
        long b = first + (long) Math.min(last - first, Math.ceil((to - t) / dt));
        read(a, b, thinner);
        thinner.interrupt();
      }
    }

    private void read(long first, long last, Thinner thinner) {
      double[] block = new double[BLOCK];
      for (long at = first; at <= last; at += BLOCK) {
        int n = (int) Math.min(BLOCK, last - at + 1);
        signal.read(at, block, n);
        for (int i = 0; i < n; i++) {
          thinner.add(signal.timeOf(at + i), block[i]);
        }
      }
    }
  }

  private static final class Steps extends SignalCurve {

    private final StepSignal signal;

    Steps(StepSignal signal) {
      this.signal = signal;
    }

    @Override
    public Range across() {
      return new Range(signal.span().startInclusive(), signal.span().endExclusive());
    }

    @Override
    public void trace(double from, double to, int columns, Line line) {
      Thinner thinner = new Thinner(from, (to - from) / columns, line);
      int i = lastAtOrBefore(from);
      thinner.add(Math.max(from, signal.time(i)), signal.level(i));
      for (i++; i < signal.size() && signal.time(i) <= to; i++) {
        thinner.add(signal.time(i), signal.level(i - 1));
        thinner.add(signal.time(i), signal.level(i));
      }
      thinner.add(Math.min(to, signal.span().endExclusive()), signal.level(i - 1));
      thinner.flush();
    }

    private int lastAtOrBefore(double time) {
      int low = 0;
      int high = signal.size() - 1;
      while (low < high) {
        int middle = (low + high + 1) >>> 1;
        if (signal.time(middle) <= time) {
          low = middle;
        } else {
          high = middle - 1;
        }
      }
      return low;
    }
  }

  private static final class Spikes extends SignalCurve {

    private final EventSignal events;

    Spikes(EventSignal events) {
      this.events = events;
    }

    @Override
    public Range across() {
      return new Range(events.span().startInclusive(), events.span().endExclusive());
    }

    @Override
    public void trace(double from, double to, int columns, Line line) {
      for (int i = firstFrom(from); i < events.size() && events.time(i) <= to; i++) {
        line.moveTo(events.time(i), 0);
        line.lineTo(events.time(i), 1);
      }
    }

    private int firstFrom(double time) {
      int low = 0;
      int high = events.size();
      while (low < high) {
        int middle = (low + high) >>> 1;
        if (events.time(middle) < time) {
          low = middle + 1;
        } else {
          high = middle;
        }
      }
      return low;
    }
  }
}
