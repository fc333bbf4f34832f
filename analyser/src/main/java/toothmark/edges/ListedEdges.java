package toothmark.edges;

import toothmark.capture.EventSignal;
import toothmark.capture.StepSignal;

/** Edges that the recorder has already found: lists of changes, lists of instants. */
final class ListedEdges {

  private ListedEdges() {}

  static CrankEdges of(StepSignal signal) {
    PulseTrain pulses = new PulseTrain();
    changes(signal, pulses);
    LogicLevels levels = levels(signal);
    SignalQuality quality =
        new SignalQuality(0, levels.low(), levels.high(), levels.middle(), 0, 0, 0);
    return pulses.edges(SensorKind.HALL, train -> quality);
  }

  /** Lowest and highest level recorded. */
  static LogicLevels levels(StepSignal signal) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < signal.size(); i++) {
      low = Math.min(low, signal.level(i));
      high = Math.max(high, signal.level(i));
    }
    return new LogicLevels(low, high);
  }

  /** A change lies within one resolution before its entry, so the middle of that is taken. */
  static void changes(StepSignal signal, LevelCrossings.Sink sink) {
    double middle = levels(signal).middle();
    double resolution = signal.resolutionSeconds();
    for (int i = 1; i < signal.size(); i++) {
      boolean was = signal.level(i - 1) > middle;
      boolean is = signal.level(i) > middle;
      if (was != is) {
        sink.crossing(
            is ? EdgeDirection.RISING : EdgeDirection.FALLING,
            signal.time(i) - resolution / 2,
            uncertainty(resolution));
      }
    }
  }

  static CrankEdges of(EventSignal signal) {
    EdgeList all = new EdgeList();
    for (int i = 0; i < signal.size(); i++) {
      all.add(signal.time(i), uncertainty(signal.resolutionSeconds()), 1, 0);
    }
    return new CrankEdges(
        SensorKind.EDGES_ONLY,
        all.train(),
        new EdgeList().train(),
        new SignalQuality(0, 0, 0, 0, 0, 0, 0));
  }

  /** Rectangle of one resolution: GUM, JCGM 100:2008, 4.3.7 and F.2.2.1. */
  private static double uncertainty(double resolution) {
    return resolution / Math.sqrt(12);
  }
}
