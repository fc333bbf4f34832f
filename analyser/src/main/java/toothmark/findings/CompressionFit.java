package toothmark.findings;

import java.util.Arrays;
import java.util.Optional;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.QRDecomposition;
import toothmark.units.CrankAngle;

/**
 * The crank's balance of energy over each cycle on the starter, by least squares.
 *
 * <p>Kinetic energy is what it was, plus the starter's work, whose torque falls evenly with speed,
 * less friction's, less what the air in each cylinder holds at that angle: the work of an adiabatic
 * compression, which is given back. So with the square of speed for energy it is linear in an
 * energy, a torque, a fall of torque with speed and one share for each cylinder. Where top dead
 * centre stands, and how much the air is compressed, are those of the smallest residuals over the
 * mean of all cycles.
 */
final class CompressionFit {

  private static final double CYCLE = 2 * CrankAngle.REVOLUTION;
  private static final double STEP = 7.5;
  private static final int STEPS = (int) (CYCLE / STEP);

  /** Valves close about here before and open about here after top dead centre (usual values). */
  private static final double CLOSED = 130;

  /** Of air that gives some heat to the walls; 1.2 to 1.35 is usual. */
  private static final double EXPONENT = 1.3;

  private static final double[] RATIOS = {7, 9.5, 12};

  /** Connecting rod over crank radius, a usual value. */
  private static final double ROD = 3.5;

  private static final double COARSE = 6;
  private static final double FINE = 1;

  /** Half the shortest angle over which a speed is taken. */
  private static final double SHORTEST = 5;

  /** Share of the variance that compressions must explain to be what one sees. */
  private static final double EXPLAINED = 0.9;

  private static final int FIRST_CYLINDER = 3;

  private final Turns turns;
  private final double from;
  private final int cycles;
  private final int cylinders;
  private final double half;

  private CompressionFit(Turns turns, double from, int cycles, int cylinders) {
    this.turns = turns;
    this.from = from;
    this.cycles = cycles;
    this.cylinders = cylinders;
    this.half = Math.max(SHORTEST, turns.pattern().pitchDegrees() / 2);
  }

  /**
   * What came out.
   *
   * @param topDegrees a top dead centre, degrees after the angle at which the cycles begin, under
   *     the spacing
   * @param held what each cylinder holds, in any unit, by cylinder and cycle
   */
  record Result(double topDegrees, double[][] held) {}

  /**
   * Fits.
   *
   * @param from angle at which the first cycle begins, with half a pitch before it
   * @param cycles how many, with half a pitch behind them
   * @param cylinders how many, firing evenly
   * @return empty where evenly spaced compressions do not explain the course of speed
   */
  static Optional<Result> of(Turns turns, double from, int cycles, int cylinders) {
    return new CompressionFit(turns, from, cycles, cylinders).result();
  }

  private Optional<Result> result() {
    double[][] speed = new double[cycles][STEPS];
    double[] mean = new double[STEPS];
    for (int c = 0; c < cycles; c++) {
      for (int i = 0; i < STEPS; i++) {
        speed[c][i] = speed(from + c * CYCLE + i * STEP);
        mean[i] += speed[c][i] / cycles;
      }
    }
    Air best = air(mean);
    if (best.unexplained(mean) > 1 - EXPLAINED) {
      return Optional.empty();
    }
    double[][] held = new double[cylinders][cycles];
    for (int c = 0; c < cycles; c++) {
      double[] x = best.solve(speed[c]);
      for (int k = 0; k < cylinders; k++) {
        held[k][c] = x[FIRST_CYLINDER + k];
      }
    }
    return Optional.of(new Result(best.top, held));
  }

  private double speed(double angle) {
    return 2 * half / (turns.timeAt(angle + half) - turns.timeAt(angle - half));
  }

  private Air air(double[] mean) {
    double spacing = CYCLE / cylinders;
    Air best = null;
    double least = Double.POSITIVE_INFINITY;
    for (double ratio : RATIOS) {
      for (double top = 0; top < spacing; top += COARSE) {
        Air air = new Air(top, ratio);
        double rest = air.unexplained(mean);
        best = rest < least ? air : best;
        least = Math.min(least, rest);
      }
    }
    Air coarse = best;
    for (double away = -COARSE + FINE; away < COARSE; away += FINE) {
      Air air = new Air(coarse.top + away, coarse.ratio);
      double rest = air.unexplained(mean);
      best = rest < least ? air : best;
      least = Math.min(least, rest);
    }
    return best;
  }

  /** The air's work with top dead centre at one place. */
  private final class Air {

    private final double top;
    private final double ratio;
    private final double[][] held;

    Air(double top, double ratio) {
      this.top = top;
      this.ratio = ratio;
      held = new double[cylinders][STEPS];
      for (int k = 0; k < cylinders; k++) {
        for (int i = 0; i < STEPS; i++) {
          held[k][i] = smooth(i * STEP - top - k * CYCLE / cylinders);
        }
      }
    }

    /** Over the angle over which speeds are taken. */
    private double smooth(double degrees) {
      return (work(degrees - 0.8 * half)
              + work(degrees - 0.4 * half)
              + work(degrees)
              + work(degrees + 0.4 * half)
              + work(degrees + 0.8 * half))
          / 5;
    }

    /** Work in the air over the intake's pressure and the swept volume. */
    private double work(double degrees) {
      double own = degrees - CYCLE * Math.rint(degrees / CYCLE);
      if (Math.abs(own) >= CLOSED) {
        return 0;
      }
      double shut = volume(CLOSED);
      double now = volume(own);
      double squeezed = Math.pow(shut / now, EXPONENT - 1) - 1;
      return shut / (EXPONENT - 1) * squeezed - (shut - now);
    }

    private double volume(double degrees) {
      double sin = Math.sin(Math.toRadians(degrees));
      double travel =
          1 - Math.cos(Math.toRadians(degrees)) + ROD - Math.sqrt(ROD * ROD - sin * sin);
      return 1 / (ratio - 1) + travel / 2;
    }

    double[] solve(double[] speed) {
      return solve(design(speed), energy(speed));
    }

    private double[] solve(Array2DRowRealMatrix design, double[] energy) {
      DecompositionSolver solver = new QRDecomposition(design).getSolver();
      return solver.solve(new ArrayRealVector(energy, false)).toArray();
    }

    private static double[] energy(double[] speed) {
      return Arrays.stream(speed).map(w -> w * w).toArray();
    }

    private Array2DRowRealMatrix design(double[] speed) {
      double mean = Arrays.stream(speed).average().orElseThrow();
      double[][] x = new double[STEPS][FIRST_CYLINDER + cylinders];
      double turned = 0;
      for (int i = 0; i < STEPS; i++) {
        x[i][0] = 1;
        x[i][1] = i;
        x[i][2] = turned;
        turned += speed[i] / mean - 1;
        for (int k = 0; k < cylinders; k++) {
          x[i][FIRST_CYLINDER + k] = -held[k][i];
        }
      }
      return new Array2DRowRealMatrix(x, false);
    }

    /** Share of the energy's variance that is left. */
    double unexplained(double[] speed) {
      Array2DRowRealMatrix design = design(speed);
      double[] energy = energy(speed);
      double[] fitted = design.operate(solve(design, energy));
      double mean = Arrays.stream(energy).average().orElseThrow();
      double rest = 0;
      double all = 0;
      for (int i = 0; i < STEPS; i++) {
        rest += (energy[i] - fitted[i]) * (energy[i] - fitted[i]);
        all += (energy[i] - mean) * (energy[i] - mean);
      }
      return rest / all;
    }
  }
}
