package toothmark.timing;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import toothmark.ignition.FiringOrder;
import toothmark.units.CrankAngle;
import toothmark.wheel.WheelPattern;

/**
 * Which tooth goes before each charge and spark, and by how much: what a controller waits for, and
 * what a planner of wheel and sensor wants to know before anything is drilled.
 */
public final class FiringTeeth {

  private final double[] toothDegrees;
  private final double tooth1BtdcDegrees;
  private final FiringOrder order;

  /**
   * Describes wheel and engine; the array is copied.
   *
   * @param toothDegrees where each tooth stands, degrees after tooth 1, rising from 0
   * @param tooth1BtdcDegrees how far before TDC of cylinder 1 tooth 1 passes, degrees
   * @param order the engine's firing order
   */
  public FiringTeeth(double[] toothDegrees, double tooth1BtdcDegrees, FiringOrder order) {
    if (toothDegrees.length == 0 || toothDegrees[0] != 0) {
      throw new IllegalArgumentException("teeth are counted from tooth 1, which stands at 0");
    }
    this.toothDegrees = toothDegrees.clone();
    this.tooth1BtdcDegrees = tooth1BtdcDegrees;
    this.order = order;
  }

  /**
   * Describes a wheel without faults.
   *
   * @param wheel its pattern
   * @param tooth1BtdcDegrees how far before TDC of cylinder 1 tooth 1 passes, degrees
   * @param order the engine's firing order
   * @return the same
   */
  public static FiringTeeth of(WheelPattern wheel, double tooth1BtdcDegrees, FiringOrder order) {
    return new FiringTeeth(degrees(wheel), tooth1BtdcDegrees, order);
  }

  static double[] degrees(WheelPattern wheel) {
    return IntStream.rangeClosed(1, wheel.teeth()).mapToDouble(wheel::degreesAfterTooth1).toArray();
  }

  /**
   * A place on the wheel.
   *
   * @param tooth the last tooth to pass before it, numbered from 1
   * @param degreesAfter how far the crank turns from there
   */
  public record Place(int tooth, double degreesAfter) {}

  /**
   * One firing.
   *
   * @param cylinder which cylinder
   * @param charge where charging begins
   * @param spark where the spark comes
   * @param teethBetween teeth that pass while the coil charges
   */
  public record Firing(int cylinder, Place charge, Place spark, int teethBetween) {}

  /**
   * The place of an advance before TDC of a cylinder.
   *
   * @param cylinder from 1
   * @param advanceDegrees degrees before its TDC
   * @return the tooth before it and the rest
   */
  public Place place(int cylinder, double advanceDegrees) {
    return at(afterTooth1(cylinder, advanceDegrees));
  }

  /**
   * All firings of a cycle at a speed.
   *
   * @param advanceDegrees advance, degrees BTDC
   * @param dwellSeconds how long the coil charges, s
   * @param rpm speed, rev/min
   * @return in firing order
   */
  public List<Firing> plan(double advanceDegrees, double dwellSeconds, double rpm) {
    double charging = CrankAngle.turned(rpm, dwellSeconds);
    List<Firing> out = new ArrayList<>();
    for (int cylinder : order.order()) {
      double spark = afterTooth1(cylinder, advanceDegrees);
      out.add(
          new Firing(
              cylinder,
              at(spark - charging),
              at(spark),
              teethPassed(spark) - teethPassed(spark - charging)));
    }
    return out;
  }

  /**
   * Whether a gap of the wheel passes the sensor while a cylinder's coil charges or may fire.
   *
   * @param cylinder from 1
   * @param fromAdvanceDegrees where the window begins, degrees before its TDC
   * @param toAdvanceDegrees where it ends, degrees before its TDC, not more
   * @return true when some of a gap lies in it
   */
  public boolean gapBetween(int cylinder, double fromAdvanceDegrees, double toAdvanceDegrees) {
    double from = afterTooth1(cylinder, fromAdvanceDegrees);
    double pitch = toothDegrees.length > 1 ? toothDegrees[1] : CrankAngle.REVOLUTION;
    for (int i = 0; i < toothDegrees.length; i++) {
      double length = next(i) - toothDegrees[i];
      double before = CrankAngle.wrap(from - toothDegrees[i]);
      double window = fromAdvanceDegrees - toAdvanceDegrees;
      boolean met = before < length || before + window > CrankAngle.REVOLUTION;
      if (length > 1.5 * pitch && met) {
        return true;
      }
    }
    return false;
  }

  /**
   * How far before a spark the last tooth passes, at most, over a window of advances.
   *
   * @param cylinder from 1
   * @param fromAdvanceDegrees where the window begins, degrees before its TDC
   * @param toAdvanceDegrees where it ends, degrees before its TDC, not more
   * @return degrees
   */
  public double farthest(int cylinder, double fromAdvanceDegrees, double toAdvanceDegrees) {
    double window = fromAdvanceDegrees - toAdvanceDegrees;
    double left = window + place(cylinder, fromAdvanceDegrees).degreesAfter();
    int tooth = place(cylinder, fromAdvanceDegrees).tooth() - 1;
    double farthest = 0;
    while (left >= 0) {
      double length = next(tooth) - toothDegrees[tooth];
      farthest = Math.max(farthest, Math.min(length, left));
      left -= length;
      tooth = (tooth + 1) % toothDegrees.length;
    }
    return farthest;
  }

  private double next(int tooth) {
    boolean last = tooth == toothDegrees.length - 1;
    return last ? CrankAngle.REVOLUTION : toothDegrees[tooth + 1];
  }

  /**
   * Where the crank stands at an advance before TDC of a cylinder.
   *
   * @param cylinder from 1
   * @param advanceDegrees degrees before its TDC
   * @return degrees after tooth 1, not wrapped
   */
  public double afterTooth1(int cylinder, double advanceDegrees) {
    return tooth1BtdcDegrees + order.degreesAfterCylinder1(cylinder) - advanceDegrees;
  }

  private Place at(double degreesAfterTooth1) {
    return lastBefore(toothDegrees, degreesAfterTooth1);
  }

  /** The tooth that passed last before an angle. */
  static Place lastBefore(double[] toothDegrees, double degreesAfterTooth1) {
    double wrapped = CrankAngle.wrap(degreesAfterTooth1);
    int i = last(toothDegrees, wrapped);
    return new Place(i + 1, wrapped - toothDegrees[i]);
  }

  private static int last(double[] toothDegrees, double wrapped) {
    int i = toothDegrees.length - 1;
    while (toothDegrees[i] > wrapped) {
      i--;
    }
    return i;
  }

  private int teethPassed(double degrees) {
    int turns = (int) Math.floor(degrees / CrankAngle.REVOLUTION);
    return turns * toothDegrees.length + last(toothDegrees, CrankAngle.wrap(degrees)) + 1;
  }
}
