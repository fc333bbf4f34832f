package toothmark.report;

import java.io.IOException;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import toothmark.findings.Observations;
import toothmark.ignition.ChargeCurrent;
import toothmark.ignition.CoilTrack;
import toothmark.ignition.MeanTime;
import toothmark.timing.CoilTeeth;
import toothmark.timing.FiringSequence;
import toothmark.timing.FiringTeeth;
import toothmark.timing.Timing;

/** What each coil did, and whether they fired in order, as JSON. */
final class CoilsJson {

  private static final int MOST_OUT_OF_ORDER = 1000;

  private final Observations seen;
  private final JsonFields fields;

  CoilsJson(Observations seen, JsonFields fields) {
    this.seen = seen;
    this.fields = fields;
  }

  void write() throws IOException {
    fields.objects(
        "coils",
        seen.coils(),
        track -> {
          fields.text("name", track.coil().name());
          fields.whole("sparks", track.sparks().size());
          fields.whole("absent", track.absent().size());
          fields.whole("repeated", track.repeated());
          time("dwell_ms", track.dwell());
          duty(track.duties());
          time("burn_ms", track.burn());
          charge(track.charge());
          fields.objects("teeth", teeth(seen, track), this::teeth);
        });
    sequence(seen.timing());
  }

  /** Which teeth go before a coil's charge and spark, by speed. */
  static List<CoilTeeth> teeth(Observations seen, CoilTrack track) {
    return seen.crank()
        .map(c -> c.identification().pattern())
        .map(wheel -> CoilTeeth.of(wheel, track, seen.timing().bands()))
        .orElse(List.of());
  }

  private void teeth(CoilTeeth band) throws IOException {
    fields.number("rpm", band.rpm());
    fields.whole("sparks", band.sparks());
    if (band.charge().isPresent()) {
      fields.object("charge", () -> place(band.charge().get()));
    } else {
      fields.nothing("charge");
    }
    fields.object("spark", () -> place(band.spark()));
    fields.number("duty", band.duty());
  }

  private void place(FiringTeeth.Place place) throws IOException {
    fields.whole("after_tooth", place.tooth());
    fields.number("degrees_after", place.degreesAfter());
  }

  private void sequence(Timing timing) throws IOException {
    if (timing.sequence().isEmpty()) {
      fields.nothing("firing_order");
      return;
    }
    FiringSequence s = timing.sequence().get();
    fields.object(
        "firing_order",
        () -> {
          fields.wholes("order", s.order());
          fields.whole("sparks", s.sparks());
          fields.whole("sparks_out_of_order", s.out().size());
          fields.whole("cycles", s.cycles());
          fields.whole("cycles_out_of_order", s.cyclesOut());
          fields.objects(
              "out_of_order",
              s.out().subList(0, Math.min(MOST_OUT_OF_ORDER, s.out().size())),
              o -> {
                fields.number("time_s", o.timeSeconds());
                fields.text("coil", seen.coils().get(o.coil()).coil().name());
                fields.number("off_deg", o.offDegrees());
                if (o.inPlaceOf().isPresent()) {
                  fields.text("in_place_of", seen.coils().get(o.inPlaceOf().get()).coil().name());
                } else {
                  fields.nothing("in_place_of");
                }
              });
        });
  }

  private void duty(DoubleSummaryStatistics duties) throws IOException {
    if (duties.getCount() == 0) {
      fields.nothing("duty");
      return;
    }
    fields.object(
        "duty",
        () -> {
          fields.number("least", duties.getMin());
          fields.number("mean", duties.getAverage());
          fields.number("most", duties.getMax());
        });
  }

  private void time(String name, Optional<MeanTime> of) throws IOException {
    if (of.isEmpty()) {
      fields.nothing(name);
      return;
    }
    MeanTime time = of.get();
    fields.object(
        name,
        () -> {
          fields.number("mean", 1e3 * time.meanSeconds());
          fields.number(
              "standard_deviation",
              ExaminationJson.known(1e3 * time.standardDeviationSeconds(), time.sparks() > 1));
          fields.whole("sparks", time.sparks());
        });
  }

  private void charge(Optional<ChargeCurrent> charge) throws IOException {
    if (charge.isEmpty()) {
      fields.nothing("charge");
      return;
    }
    ChargeCurrent c = charge.get();
    fields.object(
        "charge",
        () -> {
          fields.text("form", c.form().label());
          time("until_ms", Optional.of(c.until()));
          fields.number("share_of_dwell", c.shareOfDwell());
          fields.whole("charges", c.charges());
        });
  }
}
