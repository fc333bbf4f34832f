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
        "Offset " + Say.degrees(result.offsetDegrees()) + " (95 %): the same at every speed.",
        "Delay "
            + Say.interval(result.delaySeconds().times(1e6), Say.THIN + "µs")
            + " (95 %): grows with speed; the light's own delay is in it.",
        String.format(Locale.ROOT, "Correlation of offset and delay %.2f.", result.correlation()),
        change(sheet.change()),
        "A positive offset means that the spark is further advanced than commanded. The setting's"
            + " sign differs between controllers: change it by five degrees and look.",
        "A light has its own delay, of some to hundreds of microseconds: compare two lights before"
            + " you blame the controller. Lights that count sparks may read half or double with"
            + " wasted spark; use one without a dial, and the tape.");
  }

  private static String change(StrobeWorksheet.Change change) {
    return switch (change) {
      case NONE -> "The gap changes by less than a degree over these speeds.";
      case DELAY -> "The gap changes with speed as a fixed delay does.";
      case NOT_A_LINE ->
          "The readings lie further from a line than they are uncertain: look for a limit or a"
              + " table's edge at one speed, and read again.";
      case CANNOT_TELL ->
          "The readings cannot tell whether the gap changes with speed; take more, over a wider"
              + " range.";
    };
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
    out.add(
        "At true top dead centre the pointer reads %s before TDC (95 %%, %d %s of touches)."
            .formatted(Say.degrees(top), stops.size(), stops.size() == 1 ? "pair" : "pairs"));
    out.add(
        "Take %s off each later reading, or move the pointer by that angle."
            .formatted(Say.degrees(top.value())));
    out.add("The stop touches %s each side of the top.".formatted(Say.degrees(side)));
    if (stops.stream().anyMatch(s -> s.standing() == PistonStop.Standing.TOO_NEAR_THE_TOP)) {
      out.add(
          "Warning: that is nearer than %.0f degrees, where the piston hardly moves; use a longer stop."
              .formatted(PistonStop.LEAST_EACH_SIDE_DEGREES));
    }
    travel.ifPresentOrElse(
        t -> depth(t, side, out),
        () ->
            out.add(
                "An offset wrist pin does not spoil this: it moves the middle of two touches by"
                    + " less than 0.05 degrees while the stop stands within 20 mm of the top."));
    out.add("Repeat from the other side and after the engine has run: a damper's ring can slip.");
    return out;
  }

  private static void depth(PistonTravel travel, double side, List<String> out) {
    double depth = travel.millimetresBelowTop(travel.highestDegrees() + side);
    out.add("There the piston is %s mm below its highest point.".formatted(Say.number(depth, 1)));
    double middle = (travel.degreesAfter(depth) + travel.degreesBefore(depth)) / 2;
    if (travel.pinOffsetMillimetres() != 0) {
      out.add(
          "With the pin %s mm off, the piston stands highest %s after the crank is in line; the touches find that within %s degrees."
              .formatted(
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
    return List.of(
        room(plan),
        firing(plan),
        gap(plan),
        cranking(plan),
        "Tooth 1 to TDC comes from you: prove it with a piston stop and a light before the engine"
            + " runs under load. Wrong advance can break an engine.");
  }

  private static String room(FiringPlan plan) {
    String duty =
        String.format(
            Locale.ROOT,
            "Charging takes %.0f\u00b0 of the %.0f\u00b0 between a coil's sparks, %.0f %%. ",
            plan.dwellDegrees(),
            plan.betweenSparksDegrees(),
            100 * plan.duty());
    String earliest =
        String.format(
            Locale.ROOT,
            "Before the earliest spark, after one as late as can be, %.0f\u00b0 are left for it. ",
            Math.max(0, plan.beforeEarliestSparkDegrees()));
    return duty
        + earliest
        + switch (plan.room()) {
          case NONE -> "There is no room for this dwell at this speed.";
          case LITTLE ->
              "Little is left for the spark to burn and the coil to cool: shorten the dwell"
                  + " or use more coils.";
          case ENOUGH -> "There is room.";
        };
  }

  private static String firing(FiringPlan plan) {
    List<Integer> met = plan.firingInGap();
    String farthest =
        "the last tooth passes up to "
            + Say.degrees(plan.farthestToothDegrees())
            + " before the spark";
    return met.isEmpty()
        ? "No gap passes while a cylinder may fire: " + farthest + "."
        : "A gap passes while cylinder "
            + list(met)
            + " may fire, where timing matters most: "
            + farthest
            + ". Another place of the sensor, if there is one, times better.";
  }

  private static String gap(FiringPlan plan) {
    return "Charging meets a gap, which only blurs the dwell, "
        + met(plan, plan.demand().rpm())
        + " and "
        + met(plan, plan.demand().crankingRpm())
        + ".";
  }

  private static String met(FiringPlan plan, double rpm) {
    List<Integer> met = new ArrayList<>(plan.metByGap(rpm));
    met.removeAll(plan.firingInGap());
    return (met.isEmpty() ? "of no cylinder" : "of cylinder " + list(met)) + " at " + Say.rpm(rpm);
  }

  private static String cranking(FiringPlan plan) {
    return "On the starter the crank slows down towards each top dead centre: a tenth less speed"
        + " from the last tooth to the spark puts it up to "
        + Say.degrees(plan.farthestToothDegrees() / 10)
        + " early.";
  }

  private static String list(List<Integer> cylinders) {
    return cylinders.stream().map(String::valueOf).collect(Collectors.joining(", "));
  }
}
