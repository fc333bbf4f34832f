package toothmark.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import toothmark.ignition.FiringOrder;
import toothmark.wheel.WheelPattern;

/** Bench aids against handbook formulas and worked examples; each check names its source. */
class BenchAidsValidationTest {

  /** Workshop example of a piston stop: readings 21 and 15, so 18 each side and 3 degrees off. */
  @Test
  void pistonStop() {
    PistonStop stop = new PistonStop(21, 15, 0.5);

    assertThat(stop.eachSideDegrees()).isEqualTo(18);
    assertThat(stop.readingAtTopDegrees().value()).isEqualTo(3);
    assertThat(stop.readingAtTopDegrees().standardUncertainty()).isCloseTo(0.354, within(5e-4));
    assertThat(stop.standing()).isEqualTo(PistonStop.Standing.GOOD);
    assertThat(new PistonStop(10, 8, 0.5).standing())
        .isEqualTo(PistonStop.Standing.TOO_NEAR_THE_TOP);
    assertThatThrownBy(() -> new PistonStop(10, -20, 0.5))
        .hasMessage(
            "a piston stop needs one touch before and one after top dead centre, got 10.0 degrees"
                + " before and -20.0 degrees after");
  }

  /**
   * Travel over stroke at rod ratios of 3, 3.5 and 4, computed from Heywood's eq. 2.5 in another
   * language at 50 digits; at 90 degrees it is (1 + R - (R^2 - 1)^0.5) / 2 in closed form.
   */
  @ParameterizedTest
  @CsvSource({
    "5, .002536, .002445, .002377",
    "20, .039934, .038529, .037478",
    "45, .188709, .182533, .177945",
    "90, .585786, .572949, .563508",
    "120, .813859, .804418, .797438",
    "165, .988556, .987754, .987154"
  })
  void crankSlider(double degrees, double three, double threeAndAHalf, double four) {
    assertThat(new PistonTravel(2, 3, 0).millimetresBelowTop(degrees) / 2)
        .isCloseTo(three, within(5.1e-7));
    assertThat(new PistonTravel(2, 3.5, 0).millimetresBelowTop(degrees) / 2)
        .isCloseTo(threeAndAHalf, within(5.1e-7));
    assertThat(new PistonTravel(2, 4, 0).millimetresBelowTop(degrees) / 2)
        .isCloseTo(four, within(5.1e-7));
  }

  @Test
  void halfTheStrokeIsPassedBeforeNinetyDegrees() {
    PistonTravel travel = new PistonTravel(2, 3.5, 0);

    assertThat(travel.degreesAfter(1)).isCloseTo(81.787, within(5e-4));
    assertThat(travel.degreesBefore(1)).isCloseTo(-81.787, within(5e-4));
    assertThatThrownBy(() -> travel.degreesAfter(3))
        .hasMessage("the piston never stands 3.0 mm below its highest point");
  }

  /** An offset pin moves the two touches' middle by less than the highest point moves. */
  @Test
  void anOffsetPinHardlyMovesTheMiddleOfTwoTouches() {
    PistonTravel travel = new PistonTravel(80, 140, 1);

    assertThat(travel.highestDegrees()).isCloseTo(0.32, within(5e-3));
    assertThat(middle(travel, 5) - travel.highestDegrees()).isCloseTo(0.009, within(1e-3));
    assertThat(middle(travel, 20) - travel.highestDegrees()).isCloseTo(0.04, within(5e-3));
  }

  private static double middle(PistonTravel travel, double depth) {
    return Math.abs((travel.degreesAfter(depth) + travel.degreesBefore(depth)) / 2);
  }

  /** Arc of a degree, pi D / 360, for usual diameters (elementary geometry). */
  @ParameterizedTest
  @CsvSource({
    "127, 1.1083",
    "150, 1.3090",
    "152.4, 1.3299",
    "165, 1.4399",
    "177.8, 1.5516",
    "203.2, 1.7733"
  })
  void degreeTape(double diameter, double perDegree) {
    DegreeTape tape = new DegreeTape(diameter, -10, 50);

    assertThat(tape.millimetresPerDegree()).isCloseTo(perDegree, within(5.1e-5));
    assertThat(tape.marks()).hasSize(61);
    assertThat(tape.marks().get(10))
        .isEqualTo(
            new DegreeTape.Mark(0, 10 * tape.millimetresPerDegree(), DegreeTape.Length.LONG));
    assertThat(tape.lengthMillimetres()).isCloseTo(60 * perDegree, within(0.01));
  }

  /**
   * Six readings of an offset of 2 degrees and a delay of 120 microseconds, from gap = a - 6e-6 tau
   * n; with u = 0.5 degrees the textbook formula of the slope, u / (sum (n - mean)^2)^0.5, gives
   * 19.9 microseconds, 0.465 degrees and a correlation of offset and slope of -0.90 (that of offset
   * and delay has the other sign).
   */
  @Test
  void strobeWorksheet() {
    double[] gaps = {1.28, 0.56, -0.16, -0.88, -1.60, -2.32};
    List<StrobeWorksheet.Reading> readings =
        DoubleStream.iterate(0, i -> i + 1)
            .limit(6)
            .mapToObj(i -> new StrobeWorksheet.Reading(1000 * (i + 1), 10 + gaps[(int) i], 10))
            .toList();

    StrobeWorksheet.Result result = new StrobeWorksheet(readings, 0.5).fit();

    assertThat(result.offsetDegrees().value()).isCloseTo(2, within(1e-9));
    assertThat(result.delaySeconds().value()).isCloseTo(120e-6, within(1e-12));
    assertThat(result.offsetDegrees().standardUncertainty()).isCloseTo(0.465, within(5e-4));
    assertThat(result.delaySeconds().standardUncertainty()).isCloseTo(19.9e-6, within(5e-8));
    assertThat(result.correlation()).isCloseTo(0.90, within(5e-3));
    assertThat(new StrobeWorksheet(readings, 0.5).change()).isEqualTo(StrobeWorksheet.Change.DELAY);
  }

  @Test
  void aWorksheetSaysNoMoreThanItsReadingsTell() {
    assertThat(change(10, 10, 10, 10.5)).isEqualTo(StrobeWorksheet.Change.CANNOT_TELL);
    assertThat(change(10, 10, 10, 10, 10, 10, 10, 10, 10, 10))
        .isEqualTo(StrobeWorksheet.Change.NONE);
    assertThat(change(10, 10, 10, 5, 5, 5)).isEqualTo(StrobeWorksheet.Change.NOT_A_LINE);
  }

  private static StrobeWorksheet.Change change(double... seen) {
    List<StrobeWorksheet.Reading> readings =
        IntStream.range(0, seen.length)
            .mapToObj(i -> new StrobeWorksheet.Reading(1000 * (i + 1), seen[i], 10))
            .toList();
    return new StrobeWorksheet(readings, 0.5).change();
  }

  @Test
  void readingsAtOneSpeedAreNoWorksheet() {
    assertThatThrownBy(
            () ->
                new StrobeWorksheet(
                    List.of(
                        new StrobeWorksheet.Reading(900, 10, 10),
                        new StrobeWorksheet.Reading(920, 10, 10)),
                    0.5))
        .hasMessage(
            "a worksheet needs readings at two speeds 100 rev/min apart or more, got 2 readings"
                + " from 900.0 to 920.0 rev/min");
  }

  /** 60-2 by hand: teeth each 6 degrees, tooth 1 at 114 BTDC; 10 BTDC is 104 after tooth 1. */
  @Test
  void firingTeeth() {
    double[] teeth = new double[58];
    for (int i = 0; i < teeth.length; i++) {
      teeth[i] = 6.0 * i;
    }
    FiringTeeth plan = new FiringTeeth(teeth, 114, FiringOrder.even(List.of(1, 3, 4, 2)));

    assertThat(plan.place(1, 10)).isEqualTo(new FiringTeeth.Place(18, 2));
    List<FiringTeeth.Firing> firings = plan.plan(10, 3e-3, 1000);
    assertThat(firings).extracting(FiringTeeth.Firing::cylinder).containsExactly(1, 3, 4, 2);
    assertThat(firings.get(0).charge().tooth()).as("18 degrees earlier: 86").isEqualTo(15);
    assertThat(firings.get(0).charge().degreesAfter()).isCloseTo(2, within(1e-9));
    assertThat(firings.get(0).teethBetween()).isEqualTo(3);
    assertThat(firings.get(1).spark())
        .as("284 after tooth 1")
        .isEqualTo(new FiringTeeth.Place(48, 2));
    assertThat(firings.get(2))
        .isEqualTo(new FiringTeeth.Firing(4, firings.get(0).charge(), firings.get(0).spark(), 3));
  }

  /**
   * The gap of 36-1 at 340 to 360 after tooth 1, by hand: with tooth 1 at 90 BTDC of cylinder 1 a
   * window from 110 to 60 BTDC holds it, one from 85 to 5 does not; 3 stands half a turn on.
   */
  @Test
  void aGapIsSeenWhereItFalls() {
    FiringTeeth teeth =
        FiringTeeth.of(WheelPattern.parse("36-1"), 90, FiringOrder.even(List.of(1, 3, 4, 2)));

    assertThat(teeth.gapBetween(1, 110, 60)).isTrue();
    assertThat(teeth.gapBetween(1, 95, 60)).isTrue();
    assertThat(teeth.gapBetween(1, 85, 5)).isFalse();
    assertThat(teeth.gapBetween(3, 110, 60)).isFalse();
    assertThat(teeth.gapBetween(3, 280, 5)).isTrue();
  }

  @Test
  void anOffsetOfHalfAStrokeIsNotBlamedOnTheRod() {
    assertThatThrownBy(() -> new PistonTravel(80, 140, 120))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("a pin offset of 120.0 mm is more than half the stroke");
  }

  @Test
  void aCoilFiresAWholeNumberOfTimesACycle() {
    FiringPlan.Demand often = new FiringPlan.Demand(5, 40, 3e-3, 6500, 200, 10);
    FiringOrder four = FiringOrder.even(List.of(1, 3, 4, 2));
    assertThatThrownBy(() -> new FiringPlan(WheelPattern.of(36, 1), 90, four, often))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("fits no engine of 4 cylinders");
  }
}
