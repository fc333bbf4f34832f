package toothmark.report;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import toothmark.findings.Observations;
import toothmark.ignition.CoilTrack;
import toothmark.timing.CoilTeeth;
import toothmark.timing.FiringTeeth;
import toothmark.timing.SpeedBand;
import toothmark.units.Say;

/** What changes with speed: the advance, and which teeth go before each charge and spark. */
final class SpeedTables {

  private final HtmlWriter html;
  private final Observations seen;

  SpeedTables(HtmlWriter html, Observations seen) {
    this.html = html;
    this.seen = seen;
  }

  void write() {
    bands(seen.timing().bands());
    teeth();
  }

  private void bands(List<SpeedBand> bands) {
    if (bands.isEmpty()) {
      return;
    }
    html.element("h3", Wording.of("speeds"));
    String against = Wording.against(seen.timing().reference());
    if (!against.isEmpty()) {
      html.element("p", Wording.of("speeds.counted", against));
    }
    html.open("div", "class", "scroll").open("table");
    html.open("tr");
    for (String head : List.of("speed", "sparks", "actual", "commanded", "gap", "scatter")) {
      html.element("th", Wording.of("speeds.head." + head), "class", "right");
    }
    html.close();
    for (SpeedBand b : bands) {
      html.open("tr");
      cell(OptionalDouble.of(b.rpm()), 0);
      cell(OptionalDouble.of(b.sparks()), 0);
      cell(OptionalDouble.of(b.actualDegrees()), 2);
      cell(b.commandedDegrees(), 2);
      cell(b.gapDegrees(), 2);
      cell(b.gapStandardDeviationDegrees(), 2);
      html.close();
    }
    html.close().close();
  }

  private void cell(OptionalDouble value, int decimals) {
    String text = value.isPresent() ? Say.number(value.getAsDouble(), decimals) : "–";
    html.element("td", text, "class", "right");
  }

  /** Which teeth go before each charge and spark, at the ends and the middle of the speeds. */
  private void teeth() {
    Map<CoilTrack, List<CoilTeeth>> all = new LinkedHashMap<>();
    for (CoilTrack track : seen.coils()) {
      List<CoilTeeth> teeth = CoilsJson.teeth(seen, track);
      all.put(
          track,
          IntStream.of(0, teeth.size() / 2, teeth.size() - 1)
              .filter(i -> i >= 0 && i < teeth.size())
              .distinct()
              .mapToObj(teeth::get)
              .toList());
    }
    if (all.values().stream().allMatch(List::isEmpty)) {
      return;
    }
    html.element("h3", Wording.of("speeds.teeth"));
    html.element("p", Wording.of("speeds.teeth.meaning"));
    html.open("div", "class", "scroll")
        .open("table")
        .open("tr")
        .element("th", Wording.of("speeds.coil"));
    for (String head : List.of("speed", "sparks", "charge", "spark", "duty")) {
      html.element("th", Wording.of("speeds.head." + head), "class", "right");
    }
    html.close();
    all.forEach((track, teeth) -> teeth.forEach(t -> teeth(track.coil().name(), t)));
    html.close().close();
  }

  private void teeth(String coil, CoilTeeth teeth) {
    html.open("tr").element("td", coil);
    cell(OptionalDouble.of(teeth.rpm()), 0);
    cell(OptionalDouble.of(teeth.sparks()), 0);
    html.element("td", teeth.charge().map(SpeedTables::place).orElse("–"), "class", "right");
    html.element("td", place(teeth.spark()), "class", "right");
    OptionalDouble duty = teeth.duty();
    String share = duty.isPresent() ? Say.percent(duty.getAsDouble()) : "–";
    html.element("td", share, "class", "right").close();
  }

  private static String place(FiringTeeth.Place place) {
    return Wording.of("speeds.place", Say.number(place.degreesAfter(), 1), place.tooth());
  }
}
