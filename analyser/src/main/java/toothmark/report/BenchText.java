package toothmark.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import toothmark.timing.FiringPlan;
import toothmark.timing.PistonStop;
import toothmark.timing.PistonTravel;
import toothmark.timing.StrobeWorksheet;
import toothmark.units.Measured;
import toothmark.units.Say;

/** What sums at the bench came to, in sentences for terminal and window. */
public final class BenchText {

  private BenchText() {}

  /**
   * Readings with a timing light.
   *
   * @param sheet the readings
   * @return offset and delay, what they mean, and what to beware of
   */
  public static List<String> of(StrobeWorksheet sheet) {
    StrobeWorksheet.Result result = sheet.fit();
    return List.of(
        Wording.of("strobe.offset", Say.degrees(result.offsetDegrees())),
        Wording.of("strobe.delay", Say.interval(result.delaySeconds().times(1e6), Say.THIN + "µs")),
        Wording.of("strobe.correlation", rounded("%.2f", result.correlation())),
        Wording.of("strobe.change." + sheet.change()),
        Wording.of("strobe.sign"),
        Wording.of("strobe.caution"));
  }

  private static String rounded(String format, double value) {
    return String.format(Locale.ROOT, format, value);
  }

  /**
   * Touches of a piston stop.
   *
   * @param stops at least one pair
   * @param travel the crank slider; empty when its lengths are not known
   * @return where top dead centre is, and whether to trust it
   */
  public static List<String> of(List<PistonStop> stops, Optional<PistonTravel> travel) {
    Measured top = PistonStop.readingAtTopDegrees(stops);
    double side = stops.stream().mapToDouble(PistonStop::eachSideDegrees).average().orElseThrow();
    List<String> out = new ArrayList<>();
    out.add(Wording.count(stops.size(), "piston.top", Say.degrees(top)));
    out.add(Wording.of("piston.take", Say.degrees(top.value())));
    out.add(Wording.of("piston.side", Say.degrees(side)));
    if (stops.stream().anyMatch(s -> s.standing() == PistonStop.Standing.TOO_NEAR_THE_TOP)) {
      out.add(Wording.of("piston.near", rounded("%.0f", PistonStop.LEAST_EACH_SIDE_DEGREES)));
    }
    travel.ifPresentOrElse(t -> depth(t, side, out), () -> out.add(Wording.of("piston.pin")));
    out.add(Wording.of("piston.repeat"));
    return out;
  }

  private static void depth(PistonTravel travel, double side, List<String> out) {
    double depth = travel.millimetresBelowTop(travel.highestDegrees() + side);
    out.add(Wording.of("piston.depth", Say.number(depth, 1)));
    double middle = (travel.degreesAfter(depth) + travel.degreesBefore(depth)) / 2;
    if (travel.pinOffsetMillimetres() != 0) {
      out.add(
          Wording.of(
              "piston.off",
              Say.number(travel.pinOffsetMillimetres(), 1),
              Say.degrees(travel.highestDegrees()),
              Say.number(Math.abs(middle - travel.highestDegrees()), 3)));
    }
  }

  /**
   * A wheel and what is asked of it.
   *
   * @param plan the wheel
   * @return whether there is room for the dwell, and whether a gap is in the way
   */
  public static List<String> of(FiringPlan plan) {
    return List.of(room(plan), firing(plan), gap(plan), cranking(plan), Wording.of("firing.prove"));
  }

  private static String room(FiringPlan plan) {
    return Wording.of(
            "firing.duty",
            rounded("%.0f\u00b0", plan.dwellDegrees()),
            rounded("%.0f\u00b0", plan.betweenSparksDegrees()),
            rounded("%.0f", 100 * plan.duty()),
            rounded("%.0f\u00b0", Math.max(0, plan.beforeEarliestSparkDegrees())))
        + " "
        + Wording.of("firing.room." + plan.room());
  }

  private static String firing(FiringPlan plan) {
    List<Integer> met = plan.firingInGap();
    String farthest = Say.degrees(plan.farthestToothDegrees());
    return met.isEmpty()
        ? Wording.of("firing.clear", farthest)
        : Wording.of("firing.met", farthest, list(met));
  }

  private static String gap(FiringPlan plan) {
    return Wording.of(
        "firing.charging", met(plan, plan.demand().rpm()), met(plan, plan.demand().crankingRpm()));
  }

  private static String met(FiringPlan plan, double rpm) {
    List<Integer> met = new ArrayList<>(plan.metByGap(rpm));
    met.removeAll(plan.firingInGap());
    return met.isEmpty()
        ? Wording.of("firing.none", Say.rpm(rpm))
        : Wording.of("firing.some", Say.rpm(rpm), list(met));
  }

  private static String cranking(FiringPlan plan) {
    return Wording.of("firing.cranking", Say.degrees(plan.farthestToothDegrees() / 10));
  }

  private static String list(List<Integer> cylinders) {
    return cylinders.stream().map(String::valueOf).collect(Collectors.joining(", "));
  }
}
