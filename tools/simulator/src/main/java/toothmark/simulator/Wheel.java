package toothmark.simulator;

import java.util.ArrayList;
import java.util.List;

/**
 * A trigger wheel: where its teeth are meant to be, and where they are.
 *
 * @param pattern the slots and gaps
 * @param mount how it sits on the engine
 * @param errors how far its teeth are from their places
 * @param damaged teeth that are bent, short or broken off
 * @param boltHead a feature that is no tooth but passes the sensor like one; strength zero for none
 */
public record Wheel(
    Pattern pattern, Mount mount, Errors errors, List<DamagedTooth> damaged, BoltHead boltHead) {

  /** Turning at crank speed, or at half of it as on a camshaft. */
  public enum Shaft {
    /** One turn a crank turn. */
    CRANK(1.0),
    /** One turn in two crank turns. */
    CAMSHAFT(0.5);

    private final double turnsPerCrankTurn;

    Shaft(double turnsPerCrankTurn) {
      this.turnsPerCrankTurn = turnsPerCrankTurn;
    }

    double turnsPerCrankTurn() {
      return turnsPerCrankTurn;
    }
  }

  /**
   * How the wheel sits on the engine.
   *
   * @param shaft what it sits on
   * @param tooth1BtdcDegrees crank degrees before TDC of cylinder 1 at which tooth 1 passes
   * @param diameterMm across the tooth tips
   * @param slip how it turns on its hub
   * @param vibration how the sensor shakes against it
   */
  public record Mount(
      Shaft shaft,
      double tooth1BtdcDegrees,
      double diameterMm,
      WheelSlip slip,
      Vibration vibration) {

    /**
     * A wheel that holds, under a sensor that holds.
     *
     * @param shaft what it sits on
     * @param tooth1BtdcDegrees crank degrees before TDC of cylinder 1 at which tooth 1 passes
     * @param diameterMm across the tooth tips
     */
    public Mount(Shaft shaft, double tooth1BtdcDegrees, double diameterMm) {
      this(shaft, tooth1BtdcDegrees, diameterMm, WheelSlip.NONE, Vibration.NONE);
    }
  }

  /**
   * How far the teeth are from their places.
   *
   * @param pitchRmsDegrees standard deviation of a tooth's place, degrees of the wheel
   * @param eccentricityMm how far the wheel's centre is from the shaft's; half of the total
   *     indicator reading
   * @param eccentricityDegrees where on the wheel the rim stands out furthest, from tooth 1
   */
  public record Errors(double pitchRmsDegrees, double eccentricityMm, double eccentricityDegrees) {}

  /**
   * One tooth that is not like the others.
   *
   * @param tooth its number
   * @param bentDegrees how far its tip is bent along the rotation, so that it passes early; degrees
   *     of the wheel
   * @param shortMm how much of its height is gone; infinite when broken off
   */
  public record DamagedTooth(int tooth, double bentDegrees, double shortMm) {}

  /**
   * A feature beside the teeth.
   *
   * @param degrees where, from tooth 1, degrees of the wheel
   * @param strength of its signal as a share of a tooth's; zero for none
   */
  public record BoltHead(double degrees, double strength) {
    /** A clean wheel. */
    public static final BoltHead NONE = new BoltHead(0.0, 0.0);
  }

  /**
   * A usual wheel: 150 mm, tooth pitch good to 0.03 degrees, running true within 0.03 mm.
   *
   * @param pattern in the trade's notation
   * @param tooth1BtdcDegrees crank degrees before TDC of cylinder 1
   * @return a changed copy
   */
  public static Wheel of(String pattern, double tooth1BtdcDegrees) {
    return new Wheel(
        Pattern.of(pattern),
        new Mount(Shaft.CRANK, tooth1BtdcDegrees, 150.0),
        new Errors(0.03, 0.015, 0.0),
        List.of(),
        BoltHead.NONE);
  }

  /** Copies the list. */
  public Wheel {
    damaged = List.copyOf(damaged);
  }

  /**
   * The same wheel with other errors.
   *
   * @param other what takes its place
   * @return a changed copy
   */
  public Wheel withErrors(Errors other) {
    return new Wheel(pattern, mount, other, damaged, boltHead);
  }

  /**
   * The same wheel mounted otherwise.
   *
   * @param other what takes its place
   * @return a changed copy
   */
  public Wheel withMount(Mount other) {
    return new Wheel(pattern, other, errors, damaged, boltHead);
  }

  /**
   * The same wheel with tooth 1 elsewhere.
   *
   * @param degrees crank degrees
   * @return a changed copy
   */
  public Wheel withTooth1Btdc(double degrees) {
    return withMount(
        new Mount(mount.shaft(), degrees, mount.diameterMm(), mount.slip(), mount.vibration()));
  }

  /**
   * The same wheel, moving on its hub.
   *
   * @param slip how it moves
   * @return a changed copy
   */
  public Wheel withSlip(WheelSlip slip) {
    return withMount(
        new Mount(
            mount.shaft(), mount.tooth1BtdcDegrees(), mount.diameterMm(), slip, mount.vibration()));
  }

  /**
   * The same wheel under a sensor that shakes.
   *
   * @param vibration how it moves
   * @return a changed copy
   */
  public Wheel withVibration(Vibration vibration) {
    return withMount(
        new Mount(
            mount.shaft(), mount.tooth1BtdcDegrees(), mount.diameterMm(), mount.slip(), vibration));
  }

  /**
   * The same wheel with one more damaged tooth.
   *
   * @param tooth the damaged one
   * @return a changed copy
   */
  public Wheel withDamage(DamagedTooth tooth) {
    List<DamagedTooth> more = new ArrayList<>(damaged);
    more.add(tooth);
    return new Wheel(pattern, mount, errors, more, boltHead);
  }

  /**
   * The same wheel with a bolt head.
   *
   * @param other what takes its place
   * @return a changed copy
   */
  public Wheel withBoltHead(BoltHead other) {
    return new Wheel(pattern, mount, errors, damaged, other);
  }

  /** Crank degrees in one turn of the wheel. */
  double crankDegreesPerTurn() {
    return 360.0 / mount.shaft().turnsPerCrankTurn();
  }
}
