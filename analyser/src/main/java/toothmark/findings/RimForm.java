package toothmark.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import toothmark.units.CrankAngle;
import toothmark.units.Measured;
import toothmark.wheel.ToothGeometry;
import toothmark.wheel.WheelPattern;

/**
 * The form of the wheel as its teeth show it: how far it runs out, how oval it is, and which teeth
 * stand out of the rest.
 *
 * <p>The teeth's offsets are fitted by {@link Waves}.
 *
 * @param runOut amplitude of the wave of one a turn, degrees
 * @param highTooth tooth that comes latest by it, where the rim stands off or the hub is off centre
 * @param oval amplitude of the wave of two a turn, degrees
 * @param quadrature whether teeth come latest a quarter of a turn from where they are strongest, as
 *     they do on a rim that is off centre
 * @param scatterDegrees standard deviation of the other teeth about the fit
 * @param odd teeth that stand out, the worst first
 */
record RimForm(
    Measured runOut,
    int highTooth,
    Measured oval,
    Quadrature quadrature,
    double scatterDegrees,
    List<OddTooth> odd) {

  /** Fewest turns that say something of single teeth. */
  private static final int FEWEST_TURNS = 5;

  private static final int FEWEST_TEETH = 8;

  /**
   * Teeth beside a gap or an extra tooth are read up to this share of a pitch wrong by the overlap
   * of fields.
   */
  private static final double BESIDE_GAP = 0.03;

  /**
   * Where fields overlap much, teeth beside a gap are this much stronger than those among others.
   */
  private static final double OVERLAP = 1.2;

  /** So far, as a share of the pitch, much overlap sets the teeth on both sides of a gap apart. */
  private static final double MOST_APART = 0.1;

  /** Places and strengths of a rim off centre are a quarter of a turn apart, give or take this. */
  private static final double QUARTER_SLACK = 35;

  /** Doubt that a wave twice a turn is the crank's and not an oval wheel's, as a share of it. */
  private static final double OVAL_DOUBT = 0.4;

  /** Outside this many standard deviations a tooth stands out. */
  private static final double STANDS_OUT = 6;

  RimForm {
    odd = List.copyOf(odd);
  }

  /**
   * A tooth that stands out.
   *
   * @param number from 1
   * @param deviation how much later than the fit it passes, degrees
   * @param strength of its signal, 1 for the median tooth
   */
  record OddTooth(int number, Measured deviation, double strength) {}

  /** Whether places and strengths of the teeth agree on run-out. */
  enum Quadrature {
    /** A quarter of a turn apart, and the strengths wave plainly. */
    SEEN,
    /** Not so, or there are no strengths. */
    NOT_SEEN
  }

  static Optional<RimForm> of(
      WheelPattern pattern, ToothGeometry geometry, Optional<ToothSwings> swings) {
    int n = geometry.teeth();
    if (geometry.turns() < FEWEST_TURNS || n < FEWEST_TEETH || n != pattern.teeth()) {
      return Optional.empty();
    }
    double[] offsets = new double[n];
    double[] strengths = new double[n];
    double u = 0;
    double swayed = 0;
    for (int i = 0; i < n; i++) {
      offsets[i] = geometry.offsetDegrees(i + 1) + geometry.swayDegrees(i + 1);
      int tooth = i + 1;
      strengths[i] = swings.map(w -> w.of(tooth)).orElse(1.0);
      u += geometry.uncertaintyDegrees(i + 1) / n;
      swayed += geometry.swayDegrees(i + 1) * geometry.swayDegrees(i + 1) / n;
    }
    u = Math.hypot(u, OVAL_DOUBT * Math.sqrt(swayed));
    Waves places = Waves.fit(pattern, offsets, 0.3 * u);
    Optional<Waves> heights = swings.map(w -> w.waves(pattern));
    double scatter = Math.max(places.scale(), 0.3 * u);
    // the places of all teeth share most of their doubt, so a wave in them is known no better
    double ofWave = Math.max(u, scatter * Math.sqrt(2.0 / n));
    return Optional.of(
        new RimForm(
            new Measured(places.amplitude(1), ofWave),
            latest(pattern, places),
            new Measured(places.amplitude(3), ofWave),
            heights.map(w -> quadrature(places, w)).orElse(Quadrature.NOT_SEEN),
            scatter,
            odd(pattern, geometry, strengths, places, scatter)));
  }

  private static Quadrature quadrature(Waves places, Waves heights) {
    boolean plain = heights.amplitude(1) > ToothSwings.LEAST_WAVE + 2 * heights.scale();
    double apart = Math.abs(CrankAngle.wrapDifference(places.phase() - heights.phase()));
    return plain && Math.abs(apart - 90) < QUARTER_SLACK ? Quadrature.SEEN : Quadrature.NOT_SEEN;
  }

  private static int latest(WheelPattern pattern, Waves w) {
    double at = w.phase();
    int best = 1;
    for (int k = 2; k <= pattern.teeth(); k++) {
      best = away(pattern, k, at) < away(pattern, best, at) ? k : best;
    }
    return best;
  }

  private static double away(WheelPattern pattern, int tooth, double degrees) {
    return Math.abs(CrankAngle.wrapDifference(pattern.degreesAfterTooth1(tooth) - degrees));
  }

  private static List<OddTooth> odd(
      WheelPattern pattern,
      ToothGeometry geometry,
      double[] strengths,
      Waves places,
      double scatter) {
    List<OddTooth> odd = new ArrayList<>();
    for (int k = 1; k <= pattern.teeth(); k++) {
      double u = Math.hypot(scatter, geometry.uncertaintyDegrees(k));
      double slack = besideUneven(pattern, k) ? BESIDE_GAP * pattern.pitchDegrees() : 0;
      double d = places.residual(k) - byOverlap(pattern, k, strengths, places);
      if (Math.abs(d) - slack > STANDS_OUT * u) {
        odd.add(new OddTooth(k, new Measured(d, u), strengths[k - 1]));
      }
    }
    odd.sort(
        (a, b) -> Double.compare(Math.abs(b.deviation.value()), Math.abs(a.deviation.value())));
    return odd;
  }

  /**
   * How late a tooth beside a gap passes because the field of the tooth that is missing there is,
   * degrees: no farther from the gap than the tooth at its other side, which it sets apart alike.
   */
  private static double byOverlap(
      WheelPattern pattern, int tooth, double[] strengths, Waves places) {
    int teeth = pattern.teeth();
    boolean after = pattern.degreesFromLast(tooth) > 1.5 * pattern.pitchDegrees();
    boolean before = pattern.degreesToNext(tooth) > 1.5 * pattern.pitchDegrees();
    if (after == before) {
      return 0;
    }
    int other = after ? Math.floorMod(tooth - 2, teeth) + 1 : tooth % teeth + 1;
    boolean strong = strengths[tooth - 1] > OVERLAP && strengths[other - 1] > OVERLAP;
    double away = after ? places.residual(tooth) : -places.residual(tooth);
    double otherAway = after ? -places.residual(other) : places.residual(other);
    double both = Math.max(0, Math.min(away, otherAway));
    double late = after ? both : -both;
    return strong && Math.abs(late) < MOST_APART * pattern.pitchDegrees() ? late : 0;
  }

  /** Whether the space before or after a tooth is a gap, or half filled by an extra tooth. */
  static boolean besideUneven(WheelPattern pattern, int tooth) {
    double widest = Math.max(pattern.degreesFromLast(tooth), pattern.degreesToNext(tooth));
    return pattern.isCrowded(tooth) || widest > 1.5 * pattern.pitchDegrees();
  }
}
