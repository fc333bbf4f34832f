package toothmark.desktop;

import java.awt.Color;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import toothmark.chart.BenchFigures;
import toothmark.examination.JobSheet;
import toothmark.ignition.FiringOrder;
import toothmark.report.BenchText;
import toothmark.report.TapeSheets;
import toothmark.timing.DegreeTape;
import toothmark.timing.FiringPlan;
import toothmark.timing.FiringTeeth;
import toothmark.timing.PistonStop;
import toothmark.timing.PistonTravel;
import toothmark.timing.StrobeWorksheet;
import toothmark.units.PlainNumber;
import toothmark.units.Say;
import toothmark.wheel.WheelPattern;

/** The sums at the bench. */
final class Aids {

  private static final String UNCERTAINTY = "uncertainty";

  private Aids() {}

  /** All of them, in the order of the work; the plan begins with what the job sheet says. */
  static List<Aid> all(JobSheet sheet) {
    return List.of(new PistonStopAid(), new TapeAid(), new StrobeAid(), FiringAid.of(sheet));
  }

  private static Optional<Aid.Outcome> nothing() {
    return Optional.empty();
  }

  /** Top dead centre from touches of a stop. */
  private record PistonStopAid() implements Aid {

    @Override
    public String name() {
      return "piston";
    }

    @Override
    public List<Entry> entries() {
      return List.of(new Entry(UNCERTAINTY, "0.5"), new Entry("stroke", ""), new Entry("rod", ""));
    }

    @Override
    public List<String> columns() {
      return List.of("before", "after");
    }

    @Override
    public Optional<Outcome> work(Typed typed) {
      double u = typed.number(UNCERTAINTY);
      List<PistonStop> stops =
          typed.numbers(columns()).stream().map(r -> new PistonStop(r[0], r[1], u)).toList();
      if (stops.isEmpty()) {
        return nothing();
      }
      Optional<PistonTravel> travel =
          typed.isEmpty("stroke") && typed.isEmpty("rod")
              ? Optional.empty()
              : Optional.of(new PistonTravel(typed.number("stroke"), typed.number("rod"), 0));
      return Outcome.of(BenchText.of(stops, travel), new BenchFigures(Look.ink()).of(stops));
    }
  }

  /** A tape for the pulley. */
  private record TapeAid() implements Aid {

    @Override
    public String name() {
      return "tape";
    }

    @Override
    public List<Entry> entries() {
      return List.of(
          new Entry("diameter", ""),
          new Entry("thickness", "0.1"),
          new Entry("from", "-20"),
          new Entry("to", "60"),
          new Entry("paper", "A4"));
    }

    @Override
    public List<String> columns() {
      return List.of();
    }

    @Override
    public Optional<Outcome> work(Typed typed) {
      if (typed.isEmpty("diameter")) {
        return nothing();
      }
      DegreeTape tape =
          new DegreeTape(
              typed.number("diameter") + 2 * typed.number("thickness"),
              (int) typed.number("from"),
              (int) typed.number("to"));
      TapeSheets sheets = TapeSheets.of(tape, paper(typed.text("paper")));
      return Optional.of(
          new Outcome(
              List.of(
                  Phrases.of(
                      "aid.tape.length",
                      Say.number(tape.lengthMillimetres(), 1),
                      Say.number(tape.millimetresPerDegree(), 3)),
                  Phrases.of("aid.tape.sheets", Say.count(sheets.sheets())),
                  Phrases.of("aid.tape.print")),
              (g, area) -> draw(sheets, g, area),
              Optional.of(sheets::pdf)));
    }

    private static TapeSheets.Paper paper(String name) {
      try {
        return TapeSheets.Paper.valueOf(name.toUpperCase(Locale.ROOT));
      } catch (IllegalArgumentException e) {
        throw new IllegalArgumentException(Phrases.of("aid.paper.wrong", name), e);
      }
    }

    /** The first sheet, as it is printed: dark on white in a dark window too. */
    private static void draw(TapeSheets sheets, java.awt.Graphics2D g, Rectangle2D area) {
      Rectangle2D sheet = sheets.sheetMillimetres();
      double unit =
          Math.min(area.getWidth() / sheet.getWidth(), area.getHeight() / sheet.getHeight());
      AffineTransform before = g.getTransform();
      g.translate(area.getX() + (area.getWidth() - unit * sheet.getWidth()) / 2, area.getY());
      Rectangle2D page =
          new Rectangle2D.Double(0, 0, unit * sheet.getWidth(), unit * sheet.getHeight());
      g.setColor(Color.WHITE);
      g.fill(page);
      g.setColor(Look.quiet());
      g.draw(page);
      sheets.draw(g, unit, 0);
      g.setTransform(before);
    }
  }

  /** Offset and delay from readings with a timing light. */
  private record StrobeAid() implements Aid {

    @Override
    public String name() {
      return "strobe";
    }

    @Override
    public List<Entry> entries() {
      return List.of(new Entry(UNCERTAINTY, "0.5"));
    }

    @Override
    public List<String> columns() {
      return List.of("speed", "commanded", "seen");
    }

    @Override
    public Optional<Outcome> work(Typed typed) {
      double u = typed.number(UNCERTAINTY);
      List<StrobeWorksheet.Reading> readings =
          typed.numbers(columns()).stream()
              .map(r -> new StrobeWorksheet.Reading(r[0], r[2], r[1]))
              .toList();
      if (readings.size() < 2) {
        return nothing();
      }
      StrobeWorksheet sheet = new StrobeWorksheet(readings, u);
      return Outcome.of(BenchText.of(sheet), new BenchFigures(Look.ink()).of(sheet));
    }
  }

  /** Which tooth goes before each charge and spark. */
  private record FiringAid(List<Entry> entries) implements Aid {

    static FiringAid of(JobSheet sheet) {
      List<Integer> order = sheet.engine().firingOrder();
      String given = order.stream().map(String::valueOf).collect(Collectors.joining(", "));
      String angles =
          sheet.engine().firingAngles().stream()
              .map(PlainNumber::significant)
              .collect(Collectors.joining(", "));
      var tooth1 = sheet.wheel().tooth1BtdcDegrees();
      return new FiringAid(
          List.of(
              new Entry("wheel", sheet.wheel().pattern().map(String::valueOf).orElse("36-1")),
              new Entry("tooth1", tooth1.isPresent() ? Say.number(tooth1.getAsDouble(), 1) : "90"),
              new Entry("order", order.isEmpty() ? "1, 3, 4, 2" : given),
              new Entry("angles", angles),
              new Entry("least", "5"),
              new Entry("most", "40"),
              new Entry("dwell", "3"),
              new Entry("top", "6500"),
              new Entry("cranking", "200"),
              new Entry("every", "360")));
    }

    @Override
    public String name() {
      return "firing";
    }

    @Override
    public List<String> columns() {
      return List.of();
    }

    @Override
    public Optional<Outcome> work(Typed typed) {
      FiringPlan plan =
          new FiringPlan(
              WheelPattern.parse(typed.text("wheel")),
              typed.number("tooth1"),
              order(typed),
              new FiringPlan.Demand(
                  typed.number("least"),
                  typed.number("most"),
                  typed.number("dwell") * 1e-3,
                  typed.number("top"),
                  typed.number("cranking"),
                  typed.number("every")));
      List<String> sentences = new ArrayList<>(BenchText.of(plan));
      sentences.add(sentences.size() - 1, table(plan));
      return Outcome.of(sentences, new BenchFigures(Look.ink()).of(plan));
    }

    private static FiringOrder order(Typed typed) {
      List<Integer> order = typed.wholes("order");
      return typed.isEmpty("angles")
          ? FiringOrder.even(order)
          : FiringOrder.of(order, typed.list("angles"));
    }

    private static String table(FiringPlan plan) {
      return plan.at(plan.demand().mostAdvanceDegrees(), plan.demand().rpm()).stream()
          .map(FiringAid::line)
          .collect(
              Collectors.joining(
                  "\n",
                  Phrases.of(
                          "aid.firing.table",
                          Say.degrees(plan.demand().mostAdvanceDegrees()),
                          Say.rpm(plan.demand().rpm()))
                      + "\n",
                  ""));
    }

    private static String line(FiringTeeth.Firing f) {
      return Phrases.of(
          "aid.firing.line",
          Integer.toString(f.cylinder()),
          Say.degrees(f.charge().degreesAfter()),
          Integer.toString(f.charge().tooth()),
          Say.degrees(f.spark().degreesAfter()),
          Integer.toString(f.spark().tooth()),
          Integer.toString(f.teethBetween()));
    }
  }
}
