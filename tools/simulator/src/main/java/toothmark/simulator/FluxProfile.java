package toothmark.simulator;

/**
 * How fast the flux of a variable-reluctance sensor changes with the angle of the wheel, for a
 * whole turn.
 *
 * <p>A tooth of width w passes a pole of the same width at a distance g. The flux is the overlap of
 * the two, blurred by the field's spread over the distance, a Lorentzian of half width g. The
 * Lorentzian's transform is exp(-kg), so that every harmonic of wavelength L decays by exp(-2 pi
 * g/L), the spacing loss of 54.6 dB a wavelength (Wallace 1951,
 * doi:10.1002/j.1538-7305.1951.tb03699.x). Its slope is a sum of arc tangents: positive while the
 * tooth comes, negative while it goes, zero at the centre.
 */
final class FluxProfile {
  /** Distance by which the poles lie deeper than the mechanical clearance. */
  private static final double RECESS_MM = 0.4;

  private static final double LEAST_GAP_MM = 0.05;
  private static final double TOOTH_SHARE = 0.45;
  private static final double WIDEST_TOOTH_MM = 8.0;
  private static final int POINTS_PER_PITCH = 128;
  private static final int LEAST_POINTS = 4096;
  private static final double REACH_PITCHES = 5.0;

  private final double[] slope;
  private final double pointsPerDegree;

  FluxProfile(Wheel wheel, ToothLayout layout, double gapMm) {
    double pitchDegrees = wheel.pattern().pitchDegrees();
    int points = Math.max(LEAST_POINTS, wheel.pattern().slots() * POINTS_PER_PITCH);
    pointsPerDegree = points / 360.0;
    slope = new double[points + 1];
    double mmPerDegree = Math.PI * wheel.mount().diameterMm() / 360.0;
    double closest = closestSlots(wheel.pattern()) * pitchDegrees;
    double widthMm = Math.min(WIDEST_TOOTH_MM, TOOTH_SHARE * closest * mmPerDegree);
    Stamp stamp = new Stamp(widthMm, mmPerDegree, REACH_PITCHES * pitchDegrees);
    double reference = peak(widthMm, Sensor.VariableReluctance.REFERENCE_GAP_MM + RECESS_MM);
    for (int i = 0; i < layout.teeth(); i++) {
      if (!layout.isBroken(i)) {
        stamp.add(layout.degrees(i), gapMm + layout.extraGapMm(i), 1.0 / reference);
      }
    }
    Wheel.BoltHead bolt = wheel.boltHead();
    if (bolt.strength() > 0.0) {
      stamp.add(bolt.degrees(), gapMm, bolt.strength() / reference);
    }
    slope[points] = slope[0];
  }

  /**
   * Least distance between two teeth, in pitches. An extra tooth stands half a pitch from others; a
   * maker leaves room between them, or a sensor sees one wide tooth and no controller the wheel.
   */
  private static double closestSlots(Pattern pattern) {
    double closest = 1.0;
    for (int k = 1; k < pattern.teeth(); k++) {
      double step = pattern.toothSlots().get(k) - pattern.toothSlots().get(k - 1);
      closest = Math.min(closest, step);
    }
    return closest;
  }

  /** Greatest slope of one tooth alone. */
  private static double peak(double widthMm, double distanceMm) {
    double best = 0.0;
    for (int i = 1; i < 200; i++) {
      best = Math.max(best, -tooth(i * 0.01 * widthMm, widthMm, distanceMm));
    }
    return best;
  }

  private static double tooth(double x, double width, double distance) {
    double far = StrictMath.atan((x + width) / distance);
    double near = StrictMath.atan((x - width) / distance);
    return (far + near - 2.0 * StrictMath.atan(x / distance)) / Math.PI;
  }

  private final class Stamp {
    private final double widthMm;
    private final double mmPerDegree;
    private final double reachDegrees;

    Stamp(double widthMm, double mmPerDegree, double reachDegrees) {
      this.widthMm = widthMm;
      this.mmPerDegree = mmPerDegree;
      this.reachDegrees = Math.min(reachDegrees, 180.0);
    }

    void add(double centreDegrees, double gapMm, double scale) {
      double distance = Math.max(LEAST_GAP_MM, gapMm) + RECESS_MM;
      int points = slope.length - 1;
      int first = (int) Math.ceil((centreDegrees - reachDegrees) * pointsPerDegree);
      int last = (int) Math.floor((centreDegrees + reachDegrees) * pointsPerDegree);
      for (int i = first; i <= last && i < first + points; i++) {
        double x = (i / pointsPerDegree - centreDegrees) * mmPerDegree;
        slope[Math.floorMod(i, points)] += scale * tooth(x, widthMm, distance);
      }
    }
  }

  /**
   * Voltage of the coil without its lag.
   *
   * @param wheel motion of the wheel
   * @param voltsPerDegreePerSecond at the peak of a lone tooth at the reference gap
   */
  void render(CrankMotion wheel, double rateHz, double voltsPerDegreePerSecond, double[] volts) {
    CrankMotion.Cursor cursor = wheel.cursor();
    for (int i = 0; i < volts.length; i++) {
      cursor.moveTo(i / rateHz);
      volts[i] += voltsPerDegreePerSecond * cursor.degreesPerSecond() * at(cursor.angleDegrees());
    }
  }

  /** Slope of the flux at an angle of the wheel; 1 at the peak of a lone tooth at usual gap. */
  double at(double degrees) {
    double turned = degrees - 360.0 * Math.floor(degrees * (1.0 / 360.0));
    double place = turned * pointsPerDegree;
    int i = Math.min((int) place, slope.length - 2);
    return slope[i] + (place - i) * (slope[i + 1] - slope[i]);
  }
}
