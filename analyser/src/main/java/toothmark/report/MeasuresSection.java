package toothmark.report;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import toothmark.edges.SensorKind;
import toothmark.edges.SignalQuality;
import toothmark.examination.Examination;
import toothmark.findings.Cranking;
import toothmark.findings.Observations;
import toothmark.ignition.CoilTrack;
import toothmark.receiver.SyncLoss;
import toothmark.rotation.DecodedCrank;
import toothmark.timing.Alignment;
import toothmark.timing.FiringSequence;
import toothmark.timing.GapFit;
import toothmark.timing.Limiter;
import toothmark.timing.LogMatch;
import toothmark.timing.SensorLag;
import toothmark.timing.TdcEvidence;
import toothmark.units.Measured;
import toothmark.units.Say;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;
import toothmark.wheel.WheelIdentification;

/** The figures: each value with its doubt and what it rests on. */
final class MeasuresSection {

  private static final String MM = Say.THIN + "mm";
  private static final String MICROSECONDS = Say.THIN + "µs";

  private static final double WORTH_NAMING = 0.001;
  private static final int MOST_ALTERNATIVES = 3;

  private final HtmlWriter html;
  private final Examination examination;
  private final Observations seen;

  MeasuresSection(HtmlWriter html, Examination examination) {
    this.html = html;
    this.examination = examination;
    this.seen = examination.observations();
  }

  void write() {
    html.element("h2", "Figures", "id", "figures");
    html.open("table", "class", "measures");
    html.open("tr", "class", "head").element("th", "").element("th", "Value");
    html.element("th", "Rests on", "class", "basis").close();
    crank();
    sync();
    seen.timing().alignment().ifPresent(this::alignment);
    seen.timing().log().ifPresent(l -> row("Controller's log", Wording.of(l), log(l)));
    seen.timing().gap().ifPresent(this::gap);
    seen.coils().forEach(this::coil);
    seen.timing().sequence().ifPresent(this::sequence);
    seen.timing().limiters().forEach(this::limiter);
    html.close();
    html.element(
        "p",
        "± is the half width of the interval that holds the true value with 95"
            + Say.THIN
            + "% probability (1.96 standard uncertainties).",
        "class",
        "small quiet");
    new SpeedTables(html, seen).write();
  }

  private void row(String name, String value, String basis) {
    html.open("tr").element("td", name).element("td", value, "class", "figure");
    html.element("td", basis, "class", "basis").close();
  }

  private void crank() {
    Optional<WheelIdentification> id = seen.crank().map(DecodedCrank::identification);
    id.ifPresent(
        w ->
            row(
                "Wheel",
                w.pattern() + ", " + Say.sure(w.confidence()),
                String.join(" ", w.evidence())));
    id.map(MeasuresSection::alternatives)
        .filter(s -> !s.isEmpty())
        .ifPresent(s -> row("Other wheels", s, "the same edges"));
    sensor(id);
    seen.crank()
        .ifPresent(
            c ->
                row(
                    "Speed",
                    Say.number(c.speed().minRpm(), 0)
                        + " to "
                        + Say.rpm(c.speed().maxRpm())
                        + ", mean "
                        + Say.number(c.speed().meanRpm(), 0),
                    Say.count(c.speed().size()) + " steps from tooth to tooth"));
    Cranking.of(seen).ifPresent(this::cranking);
    examination.teeth().ifPresent(this::teeth);
  }

  private void cranking(Cranking c) {
    row(
        "Cranking",
        Say.rpm(c.meanRpm()) + " on average, ripple " + Say.percent(c.ripple()),
        c.cycles() + " cycles on the starter");
    row(
        "Compressions",
        c.shares(),
        "kinetic energy that each takes, of their mean; which turn of the cycle comes first is"
            + " arbitrary");
  }

  private static String alternatives(WheelIdentification w) {
    List<String> names = new ArrayList<>();
    for (WheelIdentification.Candidate c : w.alternatives()) {
      if (c.confidence() >= WORTH_NAMING && names.size() < MOST_ALTERNATIVES) {
        names.add(c.pattern() + " (" + Say.percent(c.confidence()) + ")");
      }
    }
    return String.join(", ", names);
  }

  private void sensor(Optional<WheelIdentification> id) {
    SignalQuality q = seen.edges().quality();
    SensorKind kind = seen.edges().kind();
    String polarity = id.map(w -> w.orientation().label()).map(p -> ", polarity " + p).orElse("");
    String unit = seen.capture().channel(examination.roles().crank()).map(c -> c.unit()).orElse("");
    row(
        "Sensor",
        kind.label().replace('-', ' ') + polarity,
        kind == SensorKind.EDGES_ONLY ? "the capture holds edges only" : "the shape of the signal");
    if (kind != SensorKind.EDGES_ONLY && q.sampleRateHz() > 0) {
      row(
          "Signal",
          Say.scaled(q.low(), unit) + " to " + Say.scaled(q.high(), unit),
          "noise "
              + Say.scaled(q.noise(), unit)
              + " a sample; "
              + Say.number(q.samplesPerEdge(), q.samplesPerEdge() < 10 ? 1 : 0)
              + " samples a tooth at the fastest place"
              + (q.clippedShare() > 0 ? "; " + Say.percent(q.clippedShare()) + " clipped" : ""));
    }
  }

  private void teeth(ToothEvents teeth) {
    row(
        "Teeth",
        Say.count(teeth.count(ToothKind.SEEN))
            + " seen, "
            + Say.count(teeth.count(ToothKind.MISSING))
            + " missing, "
            + Say.count(teeth.count(ToothKind.STRAY))
            + " stray",
        "the whole capture, each edge named");
  }

  private void sync() {
    row(
        "Sync losses",
        seen.receiver().losses(SyncLoss.Phase.CRANKING)
            + " cranking, "
            + seen.receiver().losses(SyncLoss.Phase.RUNNING)
            + " running",
        "the reference receiver, "
            + Say.count(seen.receiver().edges())
            + " edges; cranking is under "
            + Say.rpm(SyncLoss.CRANKING_BELOW_RPM));
  }

  private void alignment(Alignment a) {
    String passings = Say.count(a.points().size()) + " passings of top dead centre, ";
    String readings = (a.points().isEmpty() ? "" : passings) + a.source().words();
    a.tooth1BtdcDegrees().ifPresent(m -> row("Tooth 1 passes", Say.degrees(m) + " BTDC", readings));
    a.nominalDegrees()
        .ifPresent(n -> row("The controller is told", Say.degrees(n) + " BTDC", "the job sheet"));
    a.errorDegrees()
        .ifPresent(
            m -> row("Wheel error", Say.degrees(m), "measured less told; positive is early"));
    a.errorDegrees()
        .filter(Say::isSeen)
        .flatMap(e -> a.sensorMoveMillimetres())
        .ifPresent(
            m ->
                row(
                    "Sensor move that cures it",
                    Say.interval(m, MM),
                    "with the rotation if positive, along the tooth tips"));
    seen.timing().unused().forEach(this::unused);
    row(
        "Lag of the sensor",
        Say.interval(a.lag().seconds().times(1e6), MICROSECONDS),
        a.lag().knownFrom() == SensorLag.KnownFrom.CHANGE_WITH_SPEED
            ? "the change of the angle with speed"
            : "what is usual for such a sensor");
    a.slip()
        .ifPresent(
            s ->
                row(
                    "Wheel slip",
                    Say.degrees(s.degrees()),
                    "from "
                        + Say.at(s.during().startInclusive())
                        + " to "
                        + Say.at(s.during().endExclusive())));
  }

  private void unused(TdcEvidence other) {
    other
        .tooth1BtdcDegrees()
        .ifPresent(
            m ->
                row(
                    "Tooth 1 by a source less trusted",
                    Say.degrees(m) + " BTDC",
                    other.source().words() + ", not used"));
  }

  private static String log(LogMatch log) {
    return log.speeds().isEmpty()
        ? "both records of speed"
        : Say.count(log.speeds().size()) + " rows of its speed over the capture's";
  }

  private void gap(GapFit fit) {
    String sparks =
        Say.count(fit.fitted())
            + " sparks from "
            + Say.number(fit.fromRpm(), 0)
            + " to "
            + Say.rpm(fit.toRpm());
    String against = Wording.against(seen.timing().reference());
    row(
        "Advance gap at all speeds",
        Say.degrees(fit.offsetDegrees()),
        sparks + (against.isEmpty() ? "" : "; " + against));
    Optional<Measured> delay = fit.delaySeconds().map(d -> d.times(1e6));
    row(
        "Delay of the spark",
        delay.map(d -> Say.interval(d, MICROSECONDS)).orElse("not to be told"),
        delay.isPresent()
            ? "how the gap changes with speed; scatter " + Say.degrees(fit.scatterDegrees())
            : "the speed varies too little or changes too fast");
    fit.foretoldDegrees()
        .ifPresent(
            m ->
                row(
                    "Shift of the spark by foretelling, at most",
                    Say.degrees(m),
                    "the gap where speed changes within the turn or over it; held apart from angle and delay"));
    row("Change of the gap with speed", change(fit), "the shapes that were tried: " + tried(fit));
  }

  private static String change(GapFit fit) {
    return switch (fit.verdict()) {
      case NAMED -> Wording.of(fit.shapes().get(0).shape());
      case NO_CHANGE -> "none larger than " + Say.degrees(GapFit.NO_CHANGE_DEGREES);
      case CANNOT_TELL -> "its kind cannot be told";
    };
  }

  private static String tried(GapFit fit) {
    return fit.shapes().stream()
        .map(s -> Wording.of(s.shape()))
        .collect(Collectors.joining("; ", "", ", best first"));
  }

  private void coil(CoilTrack c) {
    StringBuilder value = new StringBuilder(Say.count(c.sparks().size())).append(" sparks");
    value.append(", ").append(Say.count(c.absent().size())).append(" absent");
    if (c.repeated() > 0) {
      value.append(", ").append(c.repeated()).append(" repeated");
    }
    c.dwell()
        .ifPresent(
            d ->
                value
                    .append(", dwell ")
                    .append(Say.seconds(d.meanSeconds()))
                    .append(" (scatter ")
                    .append(Say.seconds(d.standardDeviationSeconds()))
                    .append(')'));
    DoubleSummaryStatistics duty = c.duties();
    if (duty.getCount() > 0) {
      value.append(", duty ").append(Say.percent(duty.getMin()));
      value.append(" to ").append(Say.percent(duty.getMax()));
    }
    c.burn()
        .ifPresent(
            b ->
                value
                    .append(", burns ")
                    .append(Say.seconds(b.meanSeconds()))
                    .append(" (scatter ")
                    .append(Say.seconds(b.standardDeviationSeconds()))
                    .append(b.sparks() < c.sparks().size() ? ", of " + b.sparks() : "")
                    .append(')'));
    c.charge().ifPresent(q -> value.append(", ").append(Wording.of(q)));
    String name = c.coil().name();
    row(
        name.isEmpty() ? "Coil" : Character.toUpperCase(name.charAt(0)) + name.substring(1),
        value.toString(),
        "channel " + examination.roles().coils().getOrDefault(name, "?"));
  }

  private void sequence(FiringSequence s) {
    String kept = "kept in all of " + Say.count(s.cycles()) + " cycles";
    String order =
        s.order().stream().map(String::valueOf).collect(Collectors.joining("-"))
            + (examination.sheet().engine().firingOrder().isEmpty()
                ? ", the customary one"
                : ", the job sheet");
    row("Firing order", s.out().isEmpty() ? kept : outOfOrder(s), order);
  }

  private String outOfOrder(FiringSequence s) {
    FiringSequence.OutOfOrder first = s.out().get(0);
    String place =
        first
            .inPlaceOf()
            .map(c -> " in place of " + seen.coils().get(c).coil().name())
            .orElse(" where none was due");
    return Say.count(s.out().size())
        + " of "
        + Say.count(s.sparks())
        + " sparks out of it, in "
        + Say.count(s.cyclesOut())
        + " of "
        + Say.count(s.cycles())
        + " cycles; first at "
        + Say.at(first.timeSeconds())
        + ", "
        + seen.coils().get(first.coil()).coil().name()
        + place;
  }

  private void limiter(Limiter l) {
    String value =
        switch (l.manner()) {
          case SPARK_CUT -> l.sparks() + " of " + l.due() + " sparks left out";
          case RETARD ->
              l.sparks() + " sparks held back by up to " + Say.degrees(l.pulledBackDegrees());
        };
    row(
        "Limiter",
        value,
        "from "
            + Say.rpm(l.fromRpm())
            + ", "
            + Say.at(l.during().startInclusive())
            + " to "
            + Say.at(l.during().endExclusive()));
  }
}
