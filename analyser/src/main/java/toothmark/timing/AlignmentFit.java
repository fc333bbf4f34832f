package toothmark.timing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.StatUtils;
import toothmark.edges.SensorKind;
import toothmark.units.CrankAngle;
import toothmark.units.Measured;

/**
 * Measures the tooth 1 angle from marks of top dead centre.
 *
 * <p>A sensor that is late by a fixed time makes tooth 1 seem nearer to top dead centre as speed
 * rises: reading(n) = tooth 1 angle - 6 n lag, at high speed a little more ({@link LagBend}). Both
 * are fitted; where speed hardly varies the lag is what is usual for the kind of sensor. A slip of
 * the wheel is looked for first.
 */
final class AlignmentFit {

  /**
   * Usual lag of a coil sensor, microseconds: a coil of about 0.5 H into tens of kilohms, and the
   * input filter (common practice; the uncertainty covers 0 to 35 microseconds).
   */
  private static final Measured COIL_LAG = new Measured(15, 10);

  /**
   * Usual lag of a Hall sensor, microseconds: an analogue bandwidth of 20 to 40 kHz (data sheet
   * ATS645LSH) and the fall of an open collector.
   */
  private static final Measured HALL_LAG = new Measured(8, 8);

  /** A reading further than this many robust standard deviations from the line is left out. */
  private static final double REJECT = 4;

  /** Readings that scatter less than this all agree, degrees. */
  private static final double AGREE_DEGREES = 0.01;

  /** Where readings and usual lag differ by more than this many deviations, readings win. */
  private static final double CONFLICT = 2.5;

  /** Under this relative spread of speed a lag does not show. */
  private static final double LEAST_SPREAD = 0.02;

  /** From this ratio of speeds on readings may overrule what is usual for the sensor. */
  private static final double SEVERAL_SPEEDS = 1.1;

  /** Rounds in which the bend of the lag settles; each leaves a twentieth of its error. */
  private static final int STEPS = 3;

  private final List<TdcMark> marks;
  private final WheelSetting wheel;
  private final double reference;
  private final double[] rpm;
  private final double[] readings;
  private final double[] variance;

  private AlignmentFit(List<TdcMark> marks, WheelSetting wheel) {
    this.marks = marks;
    this.wheel = wheel;
    int n = marks.size();
    reference = CrankAngle.wrap(marks.get(n / 2).crank().degreesAfterTooth1());
    rpm = new double[n];
    readings = new double[n];
    variance = new double[n];
    for (int i = 0; i < n; i++) {
      TdcMark m = marks.get(i);
      rpm[i] = m.crank().rpm();
      readings[i] = CrankAngle.wrapDifference(m.crank().degreesAfterTooth1() - reference);
      double u = CrankAngle.turned(rpm[i], m.uncertaintySeconds());
      variance[i] = u * u + GapReadings.BETWEEN_TEETH_DEGREES * GapReadings.BETWEEN_TEETH_DEGREES;
    }
  }

  /**
   * Measures.
   *
   * @param marks at least one, in time order
   * @param wheel wheel and sensor
   * @return the alignment with its model
   */
  static AlignedWheel measure(List<TdcMark> marks, WheelSetting wheel) {
    return new AlignmentFit(marks, wheel).measure();
  }

  static Measured usualLag(SensorKind sensor) {
    return sensor == SensorKind.HALL ? HALL_LAG : COIL_LAG;
  }

  private AlignedWheel measure() {
    Measured usual = usualLag(wheel.sensor());
    Optional<SlipSearch.Slip> slip = SlipSearch.find(times(), rpm, readings, usual);
    LagBend bend = LagBend.none(wheel).of(wheel.sensor(), usual.value());
    int[] kept = kept(straight(slip, bend));
    Solution found = solved(bend, slip, kept);
    Line read = found.line().raised(reference);
    Line apparent = levelled(read, wheel).plus(sharedByMarks());
    Line steeper = solved(bend.steeper(), slip, kept).line();
    Line still = apparent.plus(difference(steeper, found.line()));
    boolean usualDecides = found.own().delayVariance() > square(usual.standardUncertainty());
    SensorLag lag =
        new SensorLag(
            new Measured(still.delayMicroseconds(), Math.sqrt(still.delayVariance())).times(1e-6),
            usualDecides
                ? SensorLag.KnownFrom.USUAL_FOR_SENSOR
                : SensorLag.KnownFrom.CHANGE_WITH_SPEED);
    Alignment alignment =
        described(TdcSource.MARK_CHANNEL, still, lag, wheel, slip, points(kept, still));
    return new AlignedWheel(alignment, apparent, found.bend(), slip);
  }

  /** What was measured by other than marks: the tooth 1 angle at standstill with its lag. */
  static AlignedWheel described(TdcSource source, Line read, SensorLag lag, WheelSetting wheel) {
    Line still = levelled(read, wheel);
    return new AlignedWheel(
        described(source, still, lag, wheel, Optional.empty(), List.of()),
        still,
        LagBend.none(wheel).of(wheel.sensor(), lag.seconds().value() * 1e6),
        Optional.empty());
  }

  /** An error of nothing but place. */
  private Line sharedByMarks() {
    double shared = marks.stream().mapToDouble(TdcMark::sharedDegrees).average().orElse(0);
    return new Line(0, 0, 0, shared * shared, 0, 0);
  }

  /** An error of zero whose standard uncertainty is the difference of two lines. */
  private static Line difference(Line a, Line b) {
    double middle = a.at(b.centreRpm()) - b.middleDegrees();
    double delay = a.delayMicroseconds() - b.delayMicroseconds();
    return new Line(b.centreRpm(), 0, 0, middle * middle, delay * delay, middle * delay);
  }

  /**
   * What was found of the lag.
   *
   * @param own line of the readings alone
   * @param line with what is usual of the lag
   * @param bend of that lag
   */
  private record Solution(Line own, Line line, LagBend bend) {}

  private Solution solved(LagBend first, Optional<SlipSearch.Slip> slip, int[] kept) {
    Measured usual = usualLag(wheel.sensor());
    Line own = line(straight(slip, first), kept);
    Line line = settled(own, usual);
    LagBend bend = first;
    for (int i = 0; i < STEPS; i++) {
      bend = first.of(wheel.sensor(), line.delayMicroseconds());
      own = line(straight(slip, bend), kept);
      line = settled(own, usual);
    }
    return new Solution(own, line, bend);
  }

  /** Readings as they were without slip, of a sensor late by a fixed time. */
  private double[] straight(Optional<SlipSearch.Slip> slip, LagBend bend) {
    double[] straight = readings.clone();
    for (int i = 0; i < straight.length; i++) {
      double at = marks.get(i).timeSeconds();
      straight[i] -= slip.map(s -> s.movedAt(at)).orElse(0.0) + bend.degreesAt(rpm[i]);
    }
    return straight;
  }

  /** The line with what is usual of the lag, unless the readings say otherwise. */
  private Line settled(Line own, Measured usual) {
    double surprise =
        Math.abs(own.delayMicroseconds() - usual.value())
            / Math.hypot(Math.sqrt(own.delayVariance()), usual.standardUncertainty());
    boolean several =
        Arrays.stream(rpm).max().orElse(0) > SEVERAL_SPEEDS * Arrays.stream(rpm).min().orElse(0);
    return several && surprise > CONFLICT
        ? own
        : own.knowingDelay(usual.value(), usual.standardUncertainty());
  }

  private double[] times() {
    return marks.stream().mapToDouble(TdcMark::timeSeconds).toArray();
  }

  /** The line with its level in (-180, 180] about the nominal angle, or in [0, 360). */
  private static Line levelled(Line line, WheelSetting wheel) {
    double whole = line.middleDegrees();
    double nominal = wheel.nominalTooth1BtdcDegrees().orElse(180);
    return line.raised(nominal + CrankAngle.wrapDifference(whole - nominal) - whole);
  }

  private int[] kept(double[] steady) {
    double centre = Robust.median(rpm);
    double spread = Arrays.stream(rpm).map(n -> Math.abs(n - centre)).max().orElse(0);
    boolean sloped = steady.length > 5 && spread > LEAST_SPREAD * centre;
    double[][] rows = new double[steady.length][];
    for (int i = 0; i < rows.length; i++) {
      rows[i] = sloped ? new double[] {1, -Line.DEGREES * (rpm[i] - centre)} : new double[] {1};
    }
    double[] r = Robust.leastAbsolute(rows, steady, AGREE_DEGREES).residuals();
    double known = Math.sqrt(StatUtils.mean(variance));
    double limit = REJECT * Math.max(Robust.sigma(r), known);
    return IntStream.range(0, r.length).filter(i -> Math.abs(r[i]) <= limit).toArray();
  }

  private Line line(double[] steady, int[] kept) {
    double[] n = pick(rpm, kept);
    double[] b = pick(steady, kept);
    double[] v = pick(variance, kept);
    if (kept.length < 3) {
      double mean = Arrays.stream(b).average().orElseThrow();
      double centre = Arrays.stream(n).average().orElseThrow();
      double apart = b.length < 2 ? 0 : square(b[1] - b[0]) / 4;
      return new Line(centre, mean, 0, v[0] / b.length + apart, 1e12, 0);
    }
    return LineFit.of(n, b, v).line();
  }

  private static double[] pick(double[] from, int[] which) {
    return Arrays.stream(which).mapToDouble(i -> from[i]).toArray();
  }

  private static Alignment described(
      TdcSource source,
      Line line,
      SensorLag lag,
      WheelSetting wheel,
      Optional<SlipSearch.Slip> slip,
      List<AlignmentPoint> points) {
    Line still = line.about(0);
    double[] beside = wheel.teethBeside(line.middleDegrees());
    double geometry = Math.sqrt(wheel.geometry().covariance(beside, beside));
    double u = Math.sqrt(still.middleVariance() + geometry * geometry);
    Optional<Measured> measured =
        slip.isPresent() ? Optional.empty() : Optional.of(new Measured(still.middleDegrees(), u));
    double lagPart = Line.DEGREES * line.centreRpm() * lag.seconds().standardUncertainty() * 1e6;
    Optional<Measured> error = error(measured, wheel);
    return new Alignment(
        source,
        wheel.nominalTooth1BtdcDegrees(),
        measured,
        error,
        sensorMove(error, wheel),
        lag,
        slip.map(SlipSearch.Slip::described),
        new Alignment.Parts(Math.sqrt(line.middleVariance()), lagPart, geometry),
        points);
  }

  static Optional<Measured> error(Optional<Measured> tooth1, WheelSetting wheel) {
    OptionalDouble nominal = wheel.nominalTooth1BtdcDegrees();
    return nominal.isEmpty()
        ? Optional.empty()
        : tooth1.map(
            m ->
                new Measured(
                    CrankAngle.wrapDifference(m.value() - nominal.getAsDouble()),
                    m.standardUncertainty()));
  }

  static Optional<Measured> sensorMove(Optional<Measured> error, WheelSetting wheel) {
    OptionalDouble circle = wheel.sensorCircleMillimetres();
    return circle.isEmpty()
        ? Optional.empty()
        : error.map(e -> e.times(Math.PI * circle.getAsDouble() / CrankAngle.REVOLUTION));
  }

  private List<AlignmentPoint> points(int[] kept, Line line) {
    List<AlignmentPoint> out = new ArrayList<>();
    int k = 0;
    for (int i = 0; i < marks.size(); i++) {
      boolean used = k < kept.length && kept[k] == i;
      k += used ? 1 : 0;
      double near = reference + readings[i];
      double level = line.middleDegrees() + CrankAngle.wrapDifference(near - line.middleDegrees());
      out.add(
          new AlignmentPoint(
              marks.get(i).timeSeconds(),
              rpm[i],
              level,
              marks.get(i).widthDegrees(),
              used ? AlignmentPoint.Use.KEPT : AlignmentPoint.Use.REJECTED));
    }
    return out;
  }

  private static double square(double x) {
    return x * x;
  }
}
