package toothmark.simulator;

/**
 * Torque on the crank from the air in the cylinders, from combustion and from the pistons' own
 * mass, against crank angle.
 *
 * <p>Slider crank after Heywood, Internal Combustion Engine Fundamentals (1988), equations 2.4 to
 * 2.6, with a rod of 3.5 crank radii and a bore as long as the stroke. Compression and expansion
 * are polytropic with exponent 1.25 between intake valve closing at 50 degrees after BDC and the
 * mirrored angle.
 */
final class TorqueModel {
  private static final double ROD_RATIO = 3.5;
  private static final double POLYTROPIC = 1.25;
  private static final double CLOSED_DEGREES = 130.0;
  private static final double BURN_END_DEGREES = 140.0;
  private static final double BURN_PEAK_DEGREES = 35.0;
  private static final double PISTON_KG_PER_LITRE = 1.1;
  private static final double PASCALS_PER_BAR = 1e5;
  private static final int CYCLE = 720;

  private final double intervalDegrees;
  private final double[] gasNmPerBar;
  private final double[] massKgM2PerRadian;
  private final double[] pulse;

  TorqueModel(Engine engine) {
    intervalDegrees = engine.firingIntervalDegrees();
    double cylinderM3 = engine.displacementLitres() * 1e-3 / engine.cylinders();
    double strokeM = StrictMath.cbrt(4.0 * cylinderM3 / Math.PI);
    double[] oneGas = new double[CYCLE];
    double[] onePulse = new double[CYCLE];
    double[] oneInertia = new double[CYCLE];
    double pistonKg = PISTON_KG_PER_LITRE * cylinderM3 * 1e3;
    for (int i = 0; i < CYCLE; i++) {
      double degrees = i <= CYCLE / 2 ? i : i - CYCLE;
      double travel = travelPerRadian(degrees) * strokeM;
      oneGas[i] = gas(degrees, engine.compressionRatio()) * cylinderM3 / strokeM * travel;
      onePulse[i] = burn(degrees);
      oneInertia[i] = pistonKg * travel * travel;
    }
    gasNmPerBar = allCylinders(oneGas, engine.lastCompression());
    massKgM2PerRadian = halfSlope(allCylinders(oneInertia, 1.0));
    pulse = normalised(onePulse, engine.cylinders());
  }

  /** Piston travel from TDC as a share of the stroke. */
  static double travel(double degrees, double rodRatio) {
    double sin = StrictMath.sin(StrictMath.toRadians(degrees));
    double cos = StrictMath.cos(StrictMath.toRadians(degrees));
    return 0.5 * (1.0 + rodRatio - cos - Math.sqrt(rodRatio * rodRatio - sin * sin));
  }

  private static double travelPerRadian(double degrees) {
    double sin = StrictMath.sin(StrictMath.toRadians(degrees));
    double cos = StrictMath.cos(StrictMath.toRadians(degrees));
    return 0.5 * (sin + sin * cos / Math.sqrt(ROD_RATIO * ROD_RATIO - sin * sin));
  }

  /** Pressure above the intake's, in pascals, for one bar in the intake. */
  private static double gas(double degrees, double compressionRatio) {
    if (Math.abs(degrees) >= CLOSED_DEGREES) {
      return 0.0;
    }
    double clearance = 1.0 / (compressionRatio - 1.0);
    double closed = clearance + travel(CLOSED_DEGREES, ROD_RATIO);
    double now = clearance + travel(degrees, ROD_RATIO);
    return PASCALS_PER_BAR * (StrictMath.pow(closed / now, POLYTROPIC) - 1.0);
  }

  private static double burn(double degrees) {
    if (degrees <= 0.0 || degrees >= BURN_END_DEGREES) {
      return 0.0;
    }
    double left = 1.0 - degrees / BURN_END_DEGREES;
    double x = degrees / BURN_PEAK_DEGREES;
    return x * StrictMath.exp(1.0 - x) * left * left;
  }

  private double[] allCylinders(double[] one, double last) {
    double[] all = new double[CYCLE];
    int cylinders = (int) Math.round(CYCLE / intervalDegrees);
    for (int c = 0; c < cylinders; c++) {
      double share = c == cylinders - 1 ? last : 1.0;
      for (int i = 0; i < CYCLE; i++) {
        all[i] += share * at(one, i - c * intervalDegrees);
      }
    }
    return all;
  }

  private static double[] halfSlope(double[] table) {
    double[] slope = new double[CYCLE];
    for (int i = 0; i < CYCLE; i++) {
      double rise = table[(i + 1) % CYCLE] - table[(i + CYCLE - 1) % CYCLE];
      slope[i] = 0.5 * rise / (2.0 * StrictMath.toRadians(1.0));
    }
    return slope;
  }

  private static double[] normalised(double[] one, int cylinders) {
    double sum = 0.0;
    for (double value : one) {
      sum += value;
    }
    double[] scaled = new double[CYCLE];
    for (int i = 0; i < CYCLE; i++) {
      scaled[i] = one[i] * CYCLE / (sum * cylinders);
    }
    return scaled;
  }

  private static double at(double[] table, double degrees) {
    double turned = degrees - CYCLE * Math.floor(degrees / CYCLE);
    int i = (int) turned;
    double share = turned - i;
    int low = i >= CYCLE ? 0 : i;
    int high = low + 1 == CYCLE ? 0 : low + 1;
    return table[low] + share * (table[high] - table[low]);
  }

  /** Torque of the air in the cylinders, newton metres for each bar in the intake. */
  double gasNmPerBar(double degrees) {
    return at(gasNmPerBar, degrees);
  }

  /** Half the slope of the pistons' moment of inertia; times speed squared it is their torque. */
  double massKgM2PerRadian(double degrees) {
    return at(massKgM2PerRadian, degrees);
  }

  /** Combustion torque of one firing as a multiple of the mean torque of all of them. */
  double pulse(double degreesAfterTdc) {
    return degreesAfterTdc >= BURN_END_DEGREES ? 0.0 : at(pulse, degreesAfterTdc);
  }

  double intervalDegrees() {
    return intervalDegrees;
  }

  /** How many firings can push at the same time. */
  int overlap() {
    return (int) Math.ceil(BURN_END_DEGREES / intervalDegrees);
  }
}
