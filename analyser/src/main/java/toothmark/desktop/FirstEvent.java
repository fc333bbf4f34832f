package toothmark.desktop;

import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import toothmark.desktop.CaptureEvent.Kind;
import toothmark.examination.Examination;
import toothmark.findings.Finding;
import toothmark.findings.Picture;
import toothmark.ignition.Spark;
import toothmark.receiver.SyncLoss;
import toothmark.units.Interval;
import toothmark.wheel.ToothEvents;

/**
 * Where a finding shows first: its first event, tooth or spark, not the start of the span about it.
 *
 * @param timeSeconds when
 * @param tooth which tooth, where it is about one
 */
record FirstEvent(double timeSeconds, OptionalInt tooth) {

  private static final Set<Picture> OF_SPARKS = EnumSet.of(Picture.ADVANCE, Picture.DWELL);

  private static FirstEvent at(double timeSeconds) {
    return new FirstEvent(timeSeconds, OptionalInt.empty());
  }

  /** Empty where it shows everywhere alike, or in nothing that happens at one instant. */
  static Optional<FirstEvent> of(Finding finding, Examination e, List<CaptureEvent> events) {
    if (finding.where().isEmpty()) {
      return loss(finding, e);
    }
    Interval span = finding.where().get(0);
    boolean ofSparks = OF_SPARKS.contains(finding.picture());
    return events.stream()
        .filter(x -> isIn(span, x.timeSeconds()))
        .filter(x -> (x.kind() == Kind.SPARK_ABSENT) == ofSparks)
        .filter(x -> finding.tooth().isEmpty() || finding.tooth().equals(x.tooth()))
        .findFirst()
        .map(x -> new FirstEvent(x.timeSeconds(), x.tooth()))
        .or(() -> ofSparks ? spark(e, span) : Optional.empty())
        .or(() -> tooth(e, span, finding.tooth()));
  }

  private static boolean isIn(Interval span, double timeSeconds) {
    return timeSeconds >= span.startInclusive() && timeSeconds <= span.endExclusive();
  }

  /** The first sync loss that it explains. */
  private static Optional<FirstEvent> loss(Finding finding, Examination e) {
    int i = e.diagnosis().syncLossCauses().indexOf(finding.id());
    List<SyncLoss> losses = e.observations().receiver().losses();
    return i < 0 ? Optional.empty() : Optional.of(at(losses.get(i).timeSeconds()));
  }

  private static Optional<FirstEvent> spark(Examination e, Interval span) {
    return e.observations().coils().stream()
        .flatMap(c -> c.sparks().stream())
        .map(Spark::timeSeconds)
        .filter(t -> isIn(span, t))
        .min(Comparator.naturalOrder())
        .map(FirstEvent::at);
  }

  private static Optional<FirstEvent> tooth(Examination e, Interval span, OptionalInt wanted) {
    if (e.teeth().isEmpty()) {
      return Optional.empty();
    }
    ToothEvents teeth = e.teeth().get();
    int i = Teeth.firstFrom(teeth, span.startInclusive());
    while (i < teeth.size()
        && teeth.time(i) <= span.endExclusive()
        && wanted.isPresent()
        && !Teeth.is(teeth, i, wanted.getAsInt())) {
      i++;
    }
    return i < teeth.size() && teeth.time(i) <= span.endExclusive()
        ? Optional.of(new FirstEvent(teeth.time(i), wanted))
        : Optional.empty();
  }
}
