package toothmark.desktop;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.Executor;
import toothmark.chart.Fold;
import toothmark.chart.TraceChart;
import toothmark.examination.Examination;
import toothmark.examination.JobSheet;
import toothmark.examination.JobSheetText;
import toothmark.findings.Finding;
import toothmark.ignition.Spark;
import toothmark.rotation.AngleTimeline;
import toothmark.rotation.DecodedCrank;
import toothmark.units.Interval;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;

/** Everything that a window shows, without a widget; lives on the window's thread. */
final class DeskModel {

  /** How many turns an event is shown with. */
  private static final double TURNS_AROUND = 1.5;

  /** How much more than that may be in view before an event is drawn closer. */
  private static final double FAR = 1.25;

  /** How many turns of a finding are shown at first. */
  private static final double MOST_TURNS = 6;

  private static final double BLIND_SECONDS = 0.05;

  /** Opening and examining. */
  final Bench bench;

  /** What is picked out. */
  final Watched<Selected> selected = new Watched<>(Selected.NOTHING);

  /** The part of the capture in view; empty while nothing is open. */
  final Watched<Optional<TimeView>> view = new Watched<>(Optional.empty());

  /** The measuring cursors. */
  final Watched<Cursors> cursors = new Watched<>(Cursors.NONE);

  /** Counts up when something was picked out that only the trace shows. */
  final Watched<Integer> traceAsked = new Watched<>(0);

  /** What stands along the trace. */
  final Watched<TraceChart.Along> along = new Watched<>(TraceChart.Along.TIME);

  /** Whether the heights follow the view. */
  final Watched<TraceChart.Height> height = new Watched<>(TraceChart.Height.WHOLE);

  /** What is laid over itself, turn by turn. */
  final Watched<Folded> folded = new Watched<>(new Folded("", Fold.TURN));

  /** The job sheet as typed. */
  final JobModel job = new JobModel();

  /** Other input circuits, tried on what is open. */
  final WhatIf whatIf;

  private List<CaptureEvent> events = List.of();
  private Optional<JobSheetText> open = Optional.empty();
  private Optional<JobSheetText> examined = Optional.empty();

  /**
   * A channel laid over itself.
   *
   * @param channel its name; one that the capture lacks stands for the crank sensor's
   * @param fold by how much of the crank's turning
   */
  record Folded(String channel, Fold fold) {}

  DeskModel(Executor background, Executor aside, Executor window) {
    bench = new Bench(background, aside, window);
    whatIf = new WhatIf(bench);
    bench.session.watch(s -> s.ifPresent(this::arrived));
    job.asked.watch(this::asked);
  }

  /** Everything out of the ordinary, in time order. */
  List<CaptureEvent> events() {
    return events;
  }

  Optional<Examination> examination() {
    return bench.session.get().flatMap(Session::examination);
  }

  private void arrived(Session s) {
    boolean another = open.filter(t -> t == s.given().text()).isEmpty();
    boolean first =
        s.examination().isPresent() && examined.filter(t -> t == s.given().text()).isEmpty();
    open = Optional.of(s.given().text());
    events = s.examination().map(CaptureEvent::of).orElse(List.of());
    if (another) {
      cursors.set(Cursors.NONE);
      selected.set(Selected.NOTHING);
    }
    Interval whole = s.capture().span();
    view.set(
        Optional.of(
            view.get()
                .filter(v -> !another && !v.isAll())
                .map(v -> new TimeView(whole, v.shown()))
                .orElse(TimeView.all(whole))));
    if (another) {
      job.opened(s);
    } else if (first && !job.isUnsaved()) {
      job.asked.set(s.given().sheet()); // less than was there, where it does not fit
    }
    examined = s.examination().map(e -> s.given().text());
    keepSelection(s, first);
    asked(job.asked.get()); // may have been typed on while the capture was examined
  }

  /** After a new examination the finding of the same name stays picked out, else the first is. */
  private void keepSelection(Session s, boolean first) {
    List<Finding> findings = s.examination().map(e -> e.diagnosis().findings()).orElse(List.of());
    Optional<String> before = selected.get().finding().map(Finding::id);
    Optional<Finding> next =
        findings.stream()
            .filter(f -> before.equals(Optional.of(f.id())))
            .findFirst()
            .or(() -> findings.stream().findFirst());
    if (first && next.isPresent()) {
      select(next.get());
    } else {
      selected.set(new Selected(next, selected.get().tooth(), selected.get().instant()));
    }
  }

  private void asked(JobSheet sheet) {
    Optional<Session> s = bench.session.get();
    Optional<Examination> now = examination();
    if (s.isEmpty() || now.isEmpty() || now.get().sheet().equals(sheet)) {
      return;
    }
    if (sameBut(now.get().sheet(), sheet)) {
      Examination e = now.get();
      Examination renamed =
          new Examination(sheet, e.roles(), e.observations(), e.diagnosis(), e.teeth());
      bench.session.set(Optional.of(s.get().with(renamed)));
    } else {
      bench.examine(sheet);
    }
  }

  /** Whether only the heading differs, which no stage reads. */
  private static boolean sameBut(JobSheet a, JobSheet b) {
    return a.withHeading(b.heading()).equals(b);
  }

  /** Picks a finding out, and where it shows first. */
  void select(Finding finding) {
    Selected next = selected.get().withFinding(finding).withTooth(finding.tooth());
    Optional<FirstEvent> first = examination().flatMap(e -> FirstEvent.of(finding, e, events));
    if (finding.where().isEmpty()) {
      OptionalDouble there =
          finding.tooth().isPresent()
              ? passNearest(finding.tooth().getAsInt())
              : first.map(f -> OptionalDouble.of(f.timeSeconds())).orElse(OptionalDouble.empty());
      selected.set(there.isPresent() ? next.withInstant(there.getAsDouble()) : next);
      there.ifPresent(this::showClosely);
      return;
    }
    Interval at = finding.where().get(0);
    double from = first.map(FirstEvent::timeSeconds).orElse(at.startInclusive());
    double turn = turnSeconds(from);
    double end = Math.max(from, Math.min(at.endExclusive(), from + MOST_TURNS * turn));
    show(new Interval(from - turn, end + turn));
    selected.set(
        next.withInstant(from).withTooth(first.map(FirstEvent::tooth).orElse(finding.tooth())));
  }

  /** Picks an instant out, with the tooth that passes there. */
  void selectInstant(double timeSeconds) {
    selected.set(selected.get().withInstant(timeSeconds).withTooth(toothAt(timeSeconds)));
  }

  /** Whether a channel shows a coil. */
  boolean isCoil(String channel) {
    return examination().filter(e -> e.roles().coils().containsValue(channel)).isPresent();
  }

  /** The spark nearest to an instant, of any coil. */
  OptionalDouble sparkNear(double timeSeconds) {
    return examination().stream()
        .flatMap(e -> e.observations().coils().stream())
        .flatMap(c -> c.sparks().stream())
        .mapToDouble(Spark::timeSeconds)
        .reduce((a, b) -> Math.abs(b - timeSeconds) < Math.abs(a - timeSeconds) ? b : a);
  }

  private OptionalInt toothAt(double timeSeconds) {
    Optional<ToothEvents> teeth = examination().flatMap(Examination::teeth);
    if (teeth.isEmpty()) {
      return OptionalInt.empty();
    }
    OptionalInt i = Teeth.nearest(teeth.get(), timeSeconds);
    return i.isPresent() && teeth.get().kind(i.getAsInt()) != ToothKind.STRAY
        ? OptionalInt.of(teeth.get().tooth(i.getAsInt()))
        : OptionalInt.empty();
  }

  /** Picks a tooth out, and brings its nearest pass into view. */
  void selectTooth(int tooth) {
    OptionalDouble pass = passNearest(tooth);
    Selected next = selected.get().withTooth(OptionalInt.of(tooth));
    selected.set(pass.isPresent() ? next.withInstant(pass.getAsDouble()) : next);
    pass.ifPresent(this::bringIntoView);
    askForTrace();
  }

  private OptionalDouble passNearest(int tooth) {
    double near = selected.get().instant().orElse(view.get().map(TimeView::middle).orElse(0.0));
    return examination()
        .flatMap(Examination::teeth)
        .map(t -> Teeth.passNearest(t, tooth, near))
        .orElse(OptionalDouble.empty());
  }

  private void askForTrace() {
    traceAsked.set(traceAsked.get() + 1);
  }

  /**
   * Goes to the next event after the selected instant, or to the one before it; where none is
   * selected, to the first in view, or the last.
   */
  Optional<CaptureEvent> step(int direction) {
    if (view.get().isEmpty()) {
      return Optional.empty();
    }
    Interval shown = view.get().get().shown();
    double from =
        selected
            .get()
            .instant()
            .orElse(direction > 0 ? Math.nextDown(shown.startInclusive()) : shown.endExclusive());
    Optional<CaptureEvent> next =
        direction > 0
            ? events.stream().filter(e -> e.timeSeconds() > from).findFirst()
            : events.stream().filter(e -> e.timeSeconds() < from).reduce((a, b) -> b);
    next.ifPresent(this::select);
    return next;
  }

  /** Picks an event out and brings it into view, close enough to see its teeth. */
  void select(CaptureEvent event) {
    double t = event.timeSeconds();
    selected.set(selected.get().withInstant(t).withTooth(event.tooth()));
    showClosely(t);
    askForTrace();
  }

  private void showClosely(double timeSeconds) {
    double span = 2 * TURNS_AROUND * turnSeconds(timeSeconds);
    TimeView now = view.get().orElseThrow();
    view.set(
        Optional.of(
            now.shown().seconds() > FAR * span
                ? now.showing(new Interval(timeSeconds - span / 2, timeSeconds + span / 2))
                : now.around(timeSeconds)));
  }

  /** The event at the selected instant. */
  Optional<CaptureEvent> eventHere() {
    OptionalDouble t = selected.get().instant();
    return t.isEmpty()
        ? Optional.empty()
        : events.stream().filter(e -> e.timeSeconds() == t.getAsDouble()).findFirst();
  }

  private void bringIntoView(double timeSeconds) {
    TimeView now = view.get().orElseThrow();
    if (!now.shown().contains(timeSeconds)) {
      view.set(Optional.of(now.around(timeSeconds)));
    }
  }

  /** Shows a part of the capture. */
  void show(Interval part) {
    view.set(view.get().map(v -> v.showing(part)));
  }

  /** Zooms about the selected instant when it is in view, else about the middle. */
  void zoom(double factor) {
    view.set(
        view.get()
            .map(
                v -> {
                  OptionalDouble t = selected.get().instant();
                  boolean seen = t.isPresent() && v.shown().contains(t.getAsDouble());
                  return v.zoomed(factor, seen ? t.getAsDouble() : v.middle());
                }));
  }

  void pan(double share) {
    view.set(view.get().map(v -> v.panned(share)));
  }

  void showAll() {
    view.set(view.get().map(v -> TimeView.all(v.whole())));
  }

  /** Crank angle after tooth 1 at an instant, in [0, 360). */
  OptionalDouble degreesAt(double timeSeconds) {
    Optional<AngleTimeline> a = angle().filter(t -> t.covers(timeSeconds));
    return a.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(toothmark.units.CrankAngle.wrap(a.get().degreesAt(timeSeconds)));
  }

  /** Speed at an instant, rev/min. */
  OptionalDouble rpmAt(double timeSeconds) {
    Optional<AngleTimeline> a = angle().filter(t -> t.covers(timeSeconds));
    return a.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(a.get().rpmAt(timeSeconds));
  }

  /** Turns the crank by hand, by an angle; the selected instant moves to where it has turned so. */
  void turnBy(double degrees) {
    double t = here().orElse(0);
    OptionalDouble rpm = rpmAt(t);
    if (rpm.isPresent() && rpm.getAsDouble() > 0) {
      moveTo(t + toothmark.units.CrankAngle.wrapDifference(degrees) / (6 * rpm.getAsDouble()));
    }
  }

  /** Turns the crank to the next tooth that passes, seen or missing, or to the one before. */
  void stepTooth(int direction) {
    Optional<ToothEvents> teeth = examination().flatMap(Examination::teeth);
    OptionalDouble from = here();
    if (teeth.isPresent() && from.isPresent()) {
      Teeth.passAfter(teeth.get(), from.getAsDouble(), direction).ifPresent(this::moveTo);
    }
  }

  /** Turns the crank on by a whole turn, or back. */
  void stepTurn(int direction) {
    here().ifPresent(t -> moveTo(t + direction * turnSeconds(t)));
  }

  private OptionalDouble here() {
    OptionalDouble selected = this.selected.get().instant();
    return selected.isPresent() || view.get().isEmpty()
        ? selected
        : OptionalDouble.of(view.get().get().middle());
  }

  /** Moves the selected instant, keeping it in the capture and in view. */
  void moveTo(double timeSeconds) {
    view.get()
        .map(v -> v.whole())
        .ifPresent(
            w -> {
              double t = Math.max(w.startInclusive(), Math.min(w.endExclusive(), timeSeconds));
              selectInstant(t);
              bringIntoView(t);
            });
  }

  private Optional<AngleTimeline> angle() {
    return examination().flatMap(e -> e.observations().crank()).map(DecodedCrank::angle);
  }

  private double turnSeconds(double timeSeconds) {
    OptionalDouble rpm = rpmAt(timeSeconds);
    return rpm.isPresent() && rpm.getAsDouble() > 0 ? 60 / rpm.getAsDouble() : BLIND_SECONDS;
  }
}
