package toothmark.examination;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import toothmark.capture.Channel;
import toothmark.capture.StepSignal;
import toothmark.edges.ChannelSurvey;
import toothmark.edges.EdgeTrain;
import toothmark.ignition.PickUp;
import toothmark.rotation.AngleTimeline;
import toothmark.timing.PulseWidths;
import toothmark.timing.TdcMark;
import toothmark.timing.TdcMarks;
import toothmark.units.CrankAngle;

/**
 * How a switching channel sits on the turning crank: what tells a coil from a mark.
 *
 * @param channel the channel
 * @param perTurn rises a turn
 * @param rise mean angle of the rises, degrees after tooth 1
 * @param wander scatter of the rises about a sensor's lag, degrees
 * @param fall mean angle of the falls, degrees after tooth 1
 * @param apart how far apart most falls come, degrees
 * @param widths what its pulses keep
 * @param duty share of time at the high level
 * @param rpm mean speed at the rises, rev/min
 * @param pickUp how a coil's firing would have been picked up to look like this
 */
record SwitchingChannel(
    Channel channel,
    double perTurn,
    double rise,
    double wander,
    double fall,
    double apart,
    PulseWidths widths,
    double duty,
    double rpm,
    PickUp pickUp) {

  private static final List<String> TDC_WORDS = List.of("tdc", "pmh", "dead centre", "dead center");

  /** What is said of a sensor at the camshaft; {@code cam} only as a word of its own. */
  private static final Pattern CAM =
      Pattern.compile(
          "(?i)\\b(cam|cmp|phase)(\\b|_|\\d)|camshaft|nocken|arbre.?[aà].?came|[aá]rbol.?de.?leva");

  private static final int FEWEST = 3;

  /**
   * A coil is full after some milliseconds and then only gets hot: a channel that keeps both of its
   * levels for longer than this, and over as wide an angle, is no coil's at any speed.
   */
  private static final double LONGEST_CHARGE_SECONDS = 12e-3;

  private static final double WIDEST_CHARGE_DEGREES = 90;

  /** A mark passes the sensor at the same angle each turn, within this scatter, degrees. */
  private static final double STEADY_DEGREES = 0.4;

  /** A sensor's lag stays below this, s; a coil's charge is as long as several of it. */
  private static final double LONGEST_LAG_SECONDS = 0.3e-3;

  /** At one speed a mark is known by being this much briefer than what else switches. */
  private static final double BRIEFER = 0.5;

  private static final double CYCLE = 2 * CrankAngle.REVOLUTION;

  /** Falls nearer than this are one firing's: repeated sparks, or ringing. */
  private static final double SAME_FIRING_DEGREES = 50;

  /** Most falls that come apart by less than the usual way are of no limiter's making. */
  private static final double USUAL_QUANTILE = 0.25;

  /** A flyback stands this far above the charging level, against battery voltage. */
  private static final double FLYBACK = 2;

  /** Battery voltage is what the terminal rests at, at this share of all samples and below. */
  private static final double RESTING_QUANTILE = 0.5;

  private static final double CHARGING_QUANTILE = 2e-3;

  /** Battery voltage stands this far above the charging level, against the flyback. */
  private static final double BATTERY_SHARE = 0.02;

  static Optional<SwitchingChannel> of(Channel channel, FirstLooks.Look look, AngleTimeline angle) {
    ChannelSurvey survey = look.survey();
    if (!look.switches() || isNumber(channel)) {
      return Optional.empty();
    }
    List<TdcMark> rises = TdcMarks.read(look.edges(), angle);
    double[] falls = angles(look.edges().falling(), angle);
    if (rises.size() < FEWEST || falls.length < FEWEST) {
      return Optional.empty();
    }
    double turns =
        (angle.degreesAt(angle.span().endExclusive())
                - angle.degreesAt(angle.span().startInclusive()))
            / CrankAngle.REVOLUTION;
    double[] at = rises.stream().mapToDouble(m -> m.crank().degreesAfterTooth1()).toArray();
    double rise = mean(at);
    return Optional.of(
        new SwitchingChannel(
            channel,
            rises.size() / turns,
            rise,
            wander(rises, rise),
            mean(falls),
            apart(falls),
            PulseWidths.of(
                rises.stream().mapToDouble(TdcMark::widthDegrees).toArray(),
                rises.stream().mapToDouble(m -> m.crank().rpm()).toArray()),
            survey.duty(),
            rises.stream().mapToDouble(m -> m.crank().rpm()).average().orElseThrow(),
            pickUp(survey)));
  }

  /** Whether it is a mark of top dead centre, seen beside the other channels that switch. */
  boolean looksLikeMark(List<SwitchingChannel> all) {
    if (saysMark()) {
      return true;
    }
    boolean briefest =
        all.size() > 1 && all.stream().allMatch(o -> o == this || duty < BRIEFER * o.duty);
    return perTurn > 0.4
        && perTurn < 1.2
        && wander < STEADY_DEGREES
        && !widths.keepTime()
        && (widths.keepAngle() || briefest);
  }

  /** Whether its name says so. */
  boolean saysMark() {
    return CrankChannel.says(channel, TDC_WORDS);
  }

  /** Lower is more like a mark: a name that says so first, then steadiness. */
  double markScore() {
    return (saysMark() ? 0 : 1000) + wander + duty;
  }

  boolean looksLikeCoil() {
    return perTurn > 0.3 && perTurn < 6 && !looksLikeCam();
  }

  /** Whether it is a camshaft's sensor, by its name or by levels that last too long for a coil. */
  boolean looksLikeCam() {
    if (CrankChannel.says(channel, CrankChannel.COIL_WORDS)) {
      return false;
    }
    double degrees = Math.min(duty, 1 - duty) * CrankAngle.REVOLUTION / perTurn;
    return CAM.matcher(channel.name()).find()
        || degrees > WIDEST_CHARGE_DEGREES
            && degrees > CrankAngle.turned(rpm, LONGEST_CHARGE_SECONDS);
  }

  /** Whether it has more than two levels, as all bits of a bus together. */
  private static boolean isNumber(Channel channel) {
    if (!(channel.signal() instanceof StepSignal steps)) {
      return false;
    }
    double low = steps.level(0);
    double high = low;
    for (int i = 0; i < steps.size(); i++) {
      double level = steps.level(i);
      if (low == high) {
        high = level;
      }
      if (level != low && level != high) {
        return true;
      }
    }
    return false;
  }

  /** How many cylinders it fires. */
  int cylinders() {
    return Math.max(1, (int) Math.round(CYCLE / apart));
  }

  /** The switched terminal of a coil flies far above the level at which it rests. */
  private static PickUp pickUp(ChannelSurvey survey) {
    double low = survey.quantile(CHARGING_QUANTILE);
    double resting = survey.quantile(RESTING_QUANTILE) - low;
    double highest = survey.quantile(1) - low;
    boolean fliesBack = highest > FLYBACK * resting && resting > BATTERY_SHARE * highest;
    return fliesBack ? PickUp.PRIMARY_VOLTAGE : PickUp.LOGIC;
  }

  private static double[] angles(EdgeTrain train, AngleTimeline angle) {
    double[] found = new double[train.size()];
    int n = 0;
    for (int i = 0; i < train.size(); i++) {
      if (angle.covers(train.time(i))) {
        found[n++] = angle.degreesAt(train.time(i));
      }
    }
    return Arrays.copyOf(found, n);
  }

  private static double mean(double[] degrees) {
    double c = 0;
    double s = 0;
    for (double d : degrees) {
      c += Math.cos(Math.toRadians(d));
      s += Math.sin(Math.toRadians(d));
    }
    return CrankAngle.wrap(Math.toDegrees(Math.atan2(s, c)));
  }

  /** Beyond what the recorder's steps explain. */
  private static double wander(List<TdcMark> rises, double mean) {
    SimpleRegression line = new SimpleRegression();
    double steps = 0;
    double squares = 0;
    for (TdcMark m : rises) {
      double off = CrankAngle.wrapDifference(m.crank().degreesAfterTooth1() - mean);
      line.addData(m.crank().rpm(), off);
      double u = CrankAngle.turned(m.crank().rpm(), m.uncertaintySeconds());
      steps += u * u / rises.size();
      squares += off * off / rises.size();
    }
    boolean lag = Math.abs(line.getSlope()) < CrankAngle.turned(1, LONGEST_LAG_SECONDS);
    double about = lag ? line.getSumSquaredErrors() / rises.size() : squares;
    return Math.sqrt(Math.max(0, about - steps));
  }

  /** A limiter leaves sparks out and makes the way longer, so a short one is the usual one. */
  private static double apart(double[] falls) {
    double[] ways = new double[falls.length - 1];
    int n = 0;
    for (int i = 1; i < falls.length; i++) {
      double way = falls[i] - falls[i - 1];
      if (way > SAME_FIRING_DEGREES) {
        ways[n++] = way;
      }
    }
    double[] sorted = Arrays.copyOf(ways, n);
    Arrays.sort(sorted);
    return n == 0 ? CYCLE : sorted[(int) (USUAL_QUANTILE * n)];
  }
}
