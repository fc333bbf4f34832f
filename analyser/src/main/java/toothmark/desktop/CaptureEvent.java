package toothmark.desktop;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;
import toothmark.chart.MissingTeeth;
import toothmark.examination.Examination;
import toothmark.findings.Finding;
import toothmark.ignition.AbsentSpark;
import toothmark.ignition.CoilTrack;
import toothmark.receiver.SyncLoss;
import toothmark.units.Say;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;

/**
 * Something out of the ordinary at one instant.
 *
 * @param timeSeconds when
 * @param kind what
 * @param tooth which tooth it is about
 * @param words one line about it
 */
record CaptureEvent(double timeSeconds, Kind kind, OptionalInt tooth, String words) {

  /** What happened. */
  enum Kind {
    /** The receiver lost its count. */
    SYNC_LOST,
    /** A tooth gave no edge. */
    TOOTH_MISSING,
    /** An edge that is no tooth. */
    STRAY,
    /** A spark that should have been. */
    SPARK_ABSENT
  }

  /** All of an examination, in time order. */
  static List<CaptureEvent> of(Examination e) {
    List<CaptureEvent> events = new ArrayList<>();
    e.teeth().ifPresent(t -> teeth(t, events));
    List<SyncLoss> losses = e.observations().receiver().losses();
    List<String> causes = e.diagnosis().syncLossCauses();
    for (int i = 0; i < losses.size(); i++) {
      SyncLoss loss = losses.get(i);
      String words =
          words(i < causes.size() ? causes.get(i) : "", Integer.toString(loss.teethCounted()));
      events.add(new CaptureEvent(loss.timeSeconds(), Kind.SYNC_LOST, OptionalInt.empty(), words));
    }
    for (CoilTrack coil : e.observations().coils()) {
      for (AbsentSpark a : coil.absent()) {
        events.add(
            new CaptureEvent(
                a.timeSeconds(),
                Kind.SPARK_ABSENT,
                OptionalInt.empty(),
                Phrases.of("event.absent", coil.coil().name())));
      }
    }
    events.sort(Comparator.comparingDouble(CaptureEvent::timeSeconds));
    return List.copyOf(events);
  }

  private static String words(String cause, String teethCounted) {
    if (cause.isEmpty()) {
      return Phrases.of("event.sync", teethCounted);
    }
    String own = "event.sync." + cause;
    return Phrases.find(own).isPresent()
        ? Phrases.of(own, teethCounted)
        : Phrases.of("event.sync.cause", teethCounted, Finding.name(cause));
  }

  private static void teeth(ToothEvents teeth, List<CaptureEvent> events) {
    for (int i = 0; i < teeth.size(); i++) {
      int missing = MissingTeeth.inRow(teeth, i);
      if (missing > 0) {
        String words =
            missing == 1
                ? Phrases.of("event.missing", Integer.toString(teeth.tooth(i)))
                : Phrases.of(
                    "event.missing.row", Say.count(missing), Integer.toString(teeth.tooth(i)));
        events.add(
            new CaptureEvent(
                teeth.time(i), Kind.TOOTH_MISSING, OptionalInt.of(teeth.tooth(i)), words));
      } else if (teeth.kind(i) == ToothKind.STRAY) {
        events.add(
            new CaptureEvent(
                teeth.time(i), Kind.STRAY, OptionalInt.empty(), Phrases.of("event.stray")));
      }
    }
  }

  /** One line with the instant. */
  String line() {
    return Say.at(timeSeconds) + " · " + words;
  }
}
