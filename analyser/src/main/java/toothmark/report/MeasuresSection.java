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
import toothmark.ignition.MeanTime;
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
    html.element("h2", Wording.of("measures"), "id", "figures");
    html.open("table", "class", "measures");
    html.open("tr", "class", "head").element("th", "").element("th", Wording.of("measures.value"));
    html.element("th", Wording.of("measures.basis"), "class", "basis").close();
    crank();
    sync();
    seen.timing().alignment().ifPresent(this::alignment);
    seen.timing().log().ifPresent(l -> row("measures.log", Wording.of(l), log(l)));
    seen.timing().gap().ifPresent(this::gap);
    seen.coils().forEach(this::coil);
    seen.timing().sequence().ifPresent(this::sequence);
    seen.timing().limiters().forEach(this::limiter);
    html.close();
    html.element("p", Wording.of("measures.interval"), "class", "small quiet");
    new SpeedTables(html, seen).write();
  }

  private void row(String key, String value, String basis) {
    named(Wording.of(key), value, basis);
  }

  private void named(String name, String value, String basis) {
    html.open("tr").element("td", name).element("td", value, "class", "figure");
    html.element("td", basis, "class", "basis").close();
  }

  private void crank() {
    Optional<WheelIdentification> id = seen.crank().map(DecodedCrank::identification);
    id.ifPresent(w -> row("measures.wheel", Wording.of(w), String.join(" ", w.evidence())));
    id.map(MeasuresSection::alternatives)
        .filter(s -> !s.isEmpty())
        .ifPresent(s -> row("measures.wheels", s, Wording.of("measures.wheels.basis")));
    sensor(id);
    seen.crank()
        .ifPresent(
            c ->
                row(
                    "measures.speed",
                    Wording.speed(c.speed()),
                    Wording.of("measures.speed.basis", Say.count(c.speed().size()))));
    Cranking.of(seen).ifPresent(this::cranking);
    examination.teeth().ifPresent(this::teeth);
  }

  private void cranking(Cranking c) {
    row(
        "measures.cranking",
        Wording.of("measures.cranking.value", Say.rpm(c.meanRpm()), Say.percent(c.ripple())),
        Wording.of("measures.cranking.basis", c.cycles()));
    if (!c.compressions().isEmpty()) {
      row("measures.compressions", c.shares(), Wording.of("measures.compressions.basis"));
    }
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
    String name = Wording.of("sensor." + kind.label());
    String unit = seen.capture().channel(examination.roles().crank()).map(c -> c.unit()).orElse("");
    row(
        "measures.sensor",
        id.map(w -> w.orientation().label())
            .map(p -> Wording.of("measures.sensor.polarity", name, Wording.of("polarity." + p)))
            .orElse(name),
        kind == SensorKind.EDGES_ONLY
            ? Wording.of("measures.sensor.edges")
            : Wording.of("measures.sensor.shape"));
    if (kind != SensorKind.EDGES_ONLY && q.sampleRateHz() > 0) {
      row(
          "measures.signal",
          Wording.of(
              "measures.signal.value", Say.scaled(q.low(), unit), Say.scaled(q.high(), unit)),
          Wording.of(
              q.clippedShare() > 0 ? "measures.signal.clipped" : "measures.signal.basis",
              Say.scaled(q.noise(), unit),
              Say.number(q.samplesPerEdge(), q.samplesPerEdge() < 10 ? 1 : 0),
              Say.percent(q.clippedShare())));
    }
  }

  private void teeth(ToothEvents teeth) {
    row("measures.teeth", Wording.of(teeth), Wording.of("measures.teeth.basis"));
  }

  private void sync() {
    row(
        "measures.sync",
        Wording.of(
            "measures.sync.value",
            seen.receiver().losses(SyncLoss.Phase.CRANKING),
            seen.receiver().losses(SyncLoss.Phase.RUNNING)),
        Wording.of(
            "measures.sync.basis",
            Say.count(seen.receiver().edges()),
            Say.rpm(SyncLoss.CRANKING_BELOW_RPM)));
  }

  private void alignment(Alignment a) {
    String source = Wording.of(a.source());
    String readings =
        a.points().isEmpty()
            ? source
            : Wording.count(a.points().size(), "measures.tooth1.passings", source);
    a.tooth1BtdcDegrees()
        .ifPresent(m -> row("measures.tooth1", Wording.of("btdc", Say.degrees(m)), readings));
    a.nominalDegrees()
        .ifPresent(
            n ->
                row(
                    "measures.told",
                    Wording.of("btdc", Say.degrees(n)),
                    Wording.of("measures.told.basis")));
    a.errorDegrees()
        .ifPresent(m -> row("measures.error", Say.degrees(m), Wording.of("measures.error.basis")));
    a.errorDegrees()
        .filter(Say::isSeen)
        .flatMap(e -> a.sensorMoveMillimetres())
        .ifPresent(
            m -> row("measures.move", Say.interval(m, MM), Wording.of("measures.move.basis")));
    seen.timing().unused().forEach(this::unused);
    row(
        "measures.lag",
        Say.interval(a.lag().seconds().times(1e6), MICROSECONDS),
        a.lag().knownFrom() == SensorLag.KnownFrom.CHANGE_WITH_SPEED
            ? Wording.of("measures.lag.measured")
            : Wording.of("measures.lag.usual"));
    a.slip()
        .ifPresent(
            s ->
                row(
                    "measures.slip",
                    Say.degrees(s.degrees()),
                    Wording.of(
                        "measures.slip.basis",
                        Say.at(s.during().startInclusive()),
                        Say.at(s.during().endExclusive()))));
  }

  private void unused(TdcEvidence other) {
    other
        .tooth1BtdcDegrees()
        .ifPresent(
            m ->
                row(
                    "measures.unused",
                    Wording.of("btdc", Say.degrees(m)),
                    Wording.of("measures.unused.basis", Wording.of(other.source()))));
  }

  private static String log(LogMatch log) {
    return log.speeds().isEmpty()
        ? Wording.of("measures.log.both")
        : Wording.of("measures.log.rows", Say.count(log.speeds().size()));
  }

  private void gap(GapFit fit) {
    String sparks =
        Wording.of(
            "measures.gap.basis",
            Say.count(fit.fitted()),
            Say.number(fit.fromRpm(), 0),
            Say.rpm(fit.toRpm()));
    String against = Wording.against(seen.timing().reference());
    row(
        "measures.gap",
        Say.degrees(fit.offsetDegrees()),
        sparks + (against.isEmpty() ? "" : "; " + against));
    Optional<Measured> delay = fit.delaySeconds().map(d -> d.times(1e6));
    row(
        "measures.delay",
        delay.map(d -> Say.interval(d, MICROSECONDS)).orElse(Wording.of("measures.delay.none")),
        delay.isPresent()
            ? Wording.of("measures.delay.basis", Say.degrees(fit.scatterDegrees()))
            : Wording.of("measures.delay.unknown"));
    fit.foretoldDegrees()
        .ifPresent(
            m -> row("measures.foretold", Say.degrees(m), Wording.of("measures.foretold.basis")));
    row("measures.change", change(fit), Wording.of("measures.change.basis", tried(fit)));
  }

  private static String change(GapFit fit) {
    return switch (fit.verdict()) {
      case NAMED -> Wording.of(fit.shapes().get(0).shape());
      case NO_CHANGE -> Wording.of("measures.change.none", Say.degrees(GapFit.NO_CHANGE_DEGREES));
      case CANNOT_TELL -> Wording.of("measures.change.unknown");
    };
  }

  private static String tried(GapFit fit) {
    return fit.shapes().stream().map(s -> Wording.of(s.shape())).collect(Collectors.joining("; "));
  }

  private void coil(CoilTrack c) {
    List<String> parts = new ArrayList<>();
    parts.add(Wording.count(c.sparks().size(), "coil.sparks"));
    parts.add(Wording.of("coil.absent", Say.count(c.absent().size())));
    if (c.repeated() > 0) {
      parts.add(Wording.of("measures.coil.repeated", c.repeated()));
    }
    c.dwell().map(d -> mean("measures.coil.dwell", d)).ifPresent(parts::add);
    DoubleSummaryStatistics duty = c.duties();
    if (duty.getCount() > 0) {
      String least = Say.percent(duty.getMin());
      parts.add(Wording.of("measures.coil.duty", least, Say.percent(duty.getMax())));
    }
    c.burn()
        .map(
            b ->
                mean(
                    b.sparks() < c.sparks().size() ? "measures.coil.some" : "measures.coil.burns",
                    b))
        .ifPresent(parts::add);
    c.charge().map(Wording::of).ifPresent(parts::add);
    String name = c.coil().name();
    named(
        name.isEmpty() ? Wording.of("measures.coil") : Wording.capital(name),
        String.join(", ", parts),
        Wording.of("measures.coil.basis", examination.roles().coils().getOrDefault(name, "?")));
  }

  private static String mean(String key, MeanTime time) {
    return Wording.of(
        key,
        Say.seconds(time.meanSeconds()),
        Say.seconds(time.standardDeviationSeconds()),
        time.sparks());
  }

  private void sequence(FiringSequence s) {
    String numbers = s.order().stream().map(String::valueOf).collect(Collectors.joining("-"));
    boolean customary = examination.sheet().engine().firingOrder().isEmpty();
    row(
        "measures.order",
        s.out().isEmpty()
            ? Wording.of("measures.order.kept", Say.count(s.cycles()))
            : outOfOrder(s),
        Wording.of(customary ? "measures.order.customary" : "measures.order.stated", numbers));
  }

  private String outOfOrder(FiringSequence s) {
    FiringSequence.OutOfOrder first = s.out().get(0);
    String out =
        Wording.of(
            "measures.order.out",
            Say.count(s.out().size()),
            Say.count(s.sparks()),
            Say.count(s.cyclesOut()),
            Say.count(s.cycles()));
    String coil = seen.coils().get(first.coil()).coil().name();
    String at = Say.at(first.timeSeconds());
    return first
        .inPlaceOf()
        .map(c -> seen.coils().get(c).coil().name())
        .map(other -> Wording.of("measures.order.instead", out, at, coil, other))
        .orElseGet(() -> Wording.of("measures.order.undue", out, at, coil));
  }

  private void limiter(Limiter l) {
    String value =
        switch (l.manner()) {
          case SPARK_CUT -> Wording.of("measures.limiter.cut", l.sparks(), l.due());
          case RETARD ->
              Wording.of("measures.limiter.retard", l.sparks(), Say.degrees(l.pulledBackDegrees()));
        };
    row(
        "measures.limiter",
        value,
        Wording.of(
            "measures.limiter.basis",
            Say.rpm(l.fromRpm()),
            Say.at(l.during().startInclusive()),
            Say.at(l.during().endExclusive())));
  }
}
