package toothmark.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import java.io.IOException;
import java.io.OutputStream;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.OptionalDouble;
import toothmark.capture.Capture;
import toothmark.capture.Channel;
import toothmark.examination.Examination;
import toothmark.findings.Cranking;
import toothmark.findings.Observations;
import toothmark.receiver.ReceiverTrace;
import toothmark.receiver.SyncLoss;
import toothmark.rotation.DecodedCrank;
import toothmark.timing.Alignment;
import toothmark.timing.GapFit;
import toothmark.timing.LogMatch;
import toothmark.timing.SpeedBand;
import toothmark.timing.TableUse;
import toothmark.timing.Timing;
import toothmark.units.Measured;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;
import toothmark.wheel.WheelIdentification;

/**
 * The figures of an examination as JSON (RFC 8259), schema {@value #SCHEMA}.
 *
 * <p>Field names and their order are fixed; new fields may be added. What a capture cannot support
 * is {@code null}.
 */
final class ExaminationJson {

  static final String SCHEMA = "toothmark.examination/1";

  private static final JsonFactory FACTORY = new JsonFactory();

  private final Examination examination;
  private final Observations seen;
  private final JsonFields fields;

  private ExaminationJson(Examination examination, JsonFields fields) {
    this.examination = examination;
    this.seen = examination.observations();
    this.fields = fields;
  }

  /** Writes the whole object in UTF-8; the caller closes the stream. */
  static void write(Examination examination, OutputStream out) throws IOException {
    JsonGenerator json = FACTORY.createGenerator(out);
    json.disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
    json.setPrettyPrinter(lineFeedsOnly());
    json.writeStartObject();
    new ExaminationJson(examination, new JsonFields(json)).writeFields();
    json.writeEndObject();
    json.writeRaw('\n');
    json.close();
  }

  static DefaultPrettyPrinter lineFeedsOnly() {
    DefaultPrettyPrinter printer =
        new DefaultPrettyPrinter(
            Separators.createDefaultInstance()
                .withObjectFieldValueSpacing(Separators.Spacing.AFTER));
    printer.indentObjectsWith(new DefaultIndenter("  ", "\n"));
    return printer;
  }

  private void writeFields() throws IOException {
    fields.text("schema", SCHEMA);
    fields.text("verdict", examination.diagnosis().verdict());
    fields.text("next_step", examination.diagnosis().nextStep());
    capture();
    crank();
    sync();
    Timing timing = seen.timing();
    alignment(timing);
    advance(timing);
    new CoilsJson(seen, fields).write();
    findings();
  }

  private void capture() throws IOException {
    Capture capture = seen.capture();
    double rate = seen.edges().quality().sampleRateHz();
    fields.object(
        "capture",
        () -> {
          fields.text("file", capture.file());
          if (capture.saved().isPresent()) {
            fields.text("saved", capture.saved().get().truncatedTo(ChronoUnit.SECONDS).toString());
          } else {
            fields.nothing("saved");
          }
          fields.number("start_s", capture.span().startInclusive());
          fields.number("duration_s", capture.span().seconds());
          fields.number("sample_rate_hz", known(rate, rate > 0));
          fields.objects("channels", capture.channels(), this::channel);
          fields.text("read_as", capture.reading().format());
          fields.objects(
              "reading",
              capture.reading().facts(),
              f -> {
                fields.text("label", f.label());
                fields.text("value", f.value());
              });
          fields.texts("doubts", capture.reading().doubts());
          fields.text("assumption", examination.roles().assumption());
        });
  }

  private void channel(Channel channel) throws IOException {
    fields.text("name", channel.name());
    fields.text("role", ChannelRole.of(channel.name(), examination.roles()).label());
    fields.text("unit", channel.unit());
  }

  private void crank() throws IOException {
    Optional<WheelIdentification> wheel = seen.crank().map(DecodedCrank::identification);
    if (wheel.isPresent()) {
      fields.object("wheel", () -> wheel(wheel.get()));
    } else {
      fields.nothing("wheel");
    }
    fields.object(
        "sensor",
        () -> {
          fields.text("kind", seen.edges().kind().label());
          String polarity = wheel.map(w -> w.orientation().label()).orElse(null);
          if (polarity == null) {
            fields.nothing("polarity");
          } else {
            fields.text("polarity", polarity);
          }
        });
    speed();
    cranking();
    teeth();
  }

  private void wheel(WheelIdentification wheel) throws IOException {
    fields.text("pattern", wheel.pattern().toString());
    fields.number("confidence", wheel.confidence());
    fields.objects(
        "alternatives",
        wheel.alternatives(),
        c -> {
          fields.text("pattern", c.pattern().toString());
          fields.number("confidence", c.confidence());
        });
    fields.texts("evidence", wheel.evidence());
  }

  private void speed() throws IOException {
    if (seen.crank().isEmpty()) {
      fields.nothing("speed");
      return;
    }
    var speed = seen.crank().get().speed();
    fields.object(
        "speed",
        () -> {
          fields.number("min_rpm", speed.minRpm());
          fields.number("mean_rpm", speed.meanRpm());
          fields.number("max_rpm", speed.maxRpm());
        });
  }

  private void cranking() throws IOException {
    Optional<Cranking> found = Cranking.of(seen);
    if (found.isEmpty()) {
      fields.nothing("cranking");
      return;
    }
    Cranking c = found.get();
    fields.object(
        "cranking",
        () -> {
          fields.number("mean_rpm", c.meanRpm());
          fields.number("ripple", c.ripple());
          fields.whole("cycles", c.cycles());
          fields.objects(
              "compressions",
              c.compressions(),
              one -> {
                fields.wholes("cylinders", one.cylinders());
                fields.measured("share", Optional.of(one.share()));
              });
        });
  }

  private void teeth() throws IOException {
    if (examination.teeth().isEmpty()) {
      fields.nothing("teeth");
      return;
    }
    ToothEvents teeth = examination.teeth().get();
    fields.object(
        "teeth",
        () -> {
          for (ToothKind kind : ToothKind.values()) {
            fields.whole(kind.label(), teeth.count(kind));
          }
        });
  }

  private void sync() throws IOException {
    ReceiverTrace receiver = seen.receiver();
    fields.object(
        "sync",
        () -> {
          fields.whole("losses", receiver.losses().size());
          for (SyncLoss.Phase phase : SyncLoss.Phase.values()) {
            fields.whole(Wording.phase(phase), receiver.losses(phase));
          }
        });
  }

  private void alignment(Timing timing) throws IOException {
    Optional<Alignment> alignment = timing.alignment();
    OptionalDouble nominal = examination.sheet().wheel().tooth1BtdcDegrees();
    fields.object(
        "alignment",
        () -> {
          fields.object(
              "tooth1_btdc_deg",
              () -> {
                fields.number("nominal", nominal);
                fields.measured("measured", alignment.flatMap(Alignment::tooth1BtdcDegrees));
              });
          fields.measured("error_deg", alignment.flatMap(Alignment::errorDegrees));
          fields.measured("sensor_move_mm", alignment.flatMap(Alignment::sensorMoveMillimetres));
          fields.measured("sensor_lag_us", alignment.map(a -> a.lag().seconds().times(1e6)));
          fields.measured("slip_deg", alignment.flatMap(Alignment::slip).map(s -> s.degrees()));
          Optional<String> source = Wording.source(timing);
          if (source.isPresent()) {
            fields.text("source", source.get());
          } else {
            fields.nothing("source");
          }
          fields.objects(
              "not_used",
              timing.unused(),
              u -> {
                fields.text("source", u.source().label());
                fields.measured("tooth1_btdc_deg", u.tooth1BtdcDegrees());
              });
        });
  }

  private void advance(Timing timing) throws IOException {
    Optional<GapFit> gap = timing.gap();
    Optional<Measured> delay = gap.flatMap(GapFit::delaySeconds);
    fields.object(
        "advance",
        () -> {
          fields.measured("offset_deg", gap.map(GapFit::offsetDegrees));
          fields.measured("delay_us", delay.map(d -> d.times(1e6)));
          fields.number(
              "offset_delay_correlation",
              known(gap.map(GapFit::correlation).orElse(0.0), delay.isPresent()));
          fields.measured("foretold_deg", gap.flatMap(GapFit::foretoldDegrees));
          fields.text("reference", Wording.lower(timing.reference()));
          if (timing.log().isPresent()) {
            fields.object("log", () -> log(timing.log().get()));
          }
          if (timing.table().isPresent()) {
            fields.object("table", () -> table(timing.table().get()));
          }
          fields.objects("by_speed", timing.bands(), this::band);
          fields.objects("left_out", LeftOut.of(timing.sparks()), this::leftOut);
        });
  }

  private void leftOut(LeftOut run) throws IOException {
    fields.whole("from_row", run.fromRow());
    fields.whole("to_row", run.toRow());
    fields.text("why", run.why());
  }

  private void log(LogMatch log) throws IOException {
    fields.text("outcome", Wording.lower(log.outcome()).replace('_', '-'));
    fields.measured("shift_s", log.shiftSeconds());
    fields.number("drift_ppm", log.driftPartsPerMillion());
    fields.number("speed_correlation", log.correlation());
    fields.number("speed_difference_rpm", log.speedDifferenceRpm());
  }

  private void table(TableUse use) throws IOException {
    fields.text("file", String.valueOf(use.table().file().getFileName()));
    fields.number("stated_load", use.statedLoad());
    fields.whole("sparks", use.sparks());
    fields.whole("sparks_beyond_speeds", use.beyondSpeeds());
    fields.whole("sparks_beyond_loads", use.beyondLoads());
  }

  private void band(SpeedBand band) throws IOException {
    fields.number("rpm", band.rpm());
    fields.whole("sparks", band.sparks());
    fields.number("actual_deg", band.actualDegrees());
    fields.number("commanded_deg", band.commandedDegrees());
    fields.number("gap_deg", band.gapDegrees());
    fields.number("gap_standard_deviation_deg", band.gapStandardDeviationDegrees());
  }

  private void findings() throws IOException {
    fields.objects(
        "findings",
        examination.diagnosis().findings(),
        f -> {
          fields.text("id", f.id());
          fields.text("severity", f.severity().label());
          fields.number("probability", f.probability());
          fields.text("title", f.title());
          fields.texts("evidence", f.evidence());
          fields.texts("against", f.against());
          fields.texts("told_apart_from", f.toldApartFrom());
          fields.text("next_test", f.nextTest());
          fields.text("caution", f.caution());
          fields.objects(
              "where",
              f.where(),
              w -> {
                fields.number("from_s", w.startInclusive());
                fields.number("to_s", w.endExclusive());
              });
        });
    fields.objects(
        "not_examined",
        examination.diagnosis().notExamined(),
        n -> {
          fields.text("id", n.id());
          fields.text("reason", n.reason());
        });
  }

  static OptionalDouble known(double value, boolean isKnown) {
    return isKnown ? OptionalDouble.of(value) : OptionalDouble.empty();
  }
}
