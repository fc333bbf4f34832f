package toothmark.simulator;

import toothmark.simulator.Wheel.DamagedTooth;

/** Where each tooth of one real wheel is, and how far its tip is from the sensor's. */
final class ToothLayout {
  /** Clearance at which a switching sensor's pulse has shrunk by a factor e. */
  private static final double PULSE_DECAY_MM = 1.5;

  private static final double WIDEST_PULSE = 0.75;

  private final double pitchDegrees;
  private final double[] degrees;
  private final double[] extraGapMm;
  private final boolean[] broken;

  ToothLayout(Wheel wheel, Randomness random) {
    Pattern pattern = wheel.pattern();
    pitchDegrees = pattern.pitchDegrees();
    degrees = new double[pattern.teeth()];
    extraGapMm = new double[pattern.teeth()];
    broken = new boolean[pattern.teeth()];
    double radius = 0.5 * wheel.mount().diameterMm();
    double eccentricity = wheel.errors().eccentricityMm();
    for (int i = 0; i < degrees.length; i++) {
      double place = pattern.toothSlots().get(i) * pattern.pitchDegrees();
      double high = StrictMath.toRadians(place - wheel.errors().eccentricityDegrees());
      double turned = StrictMath.toDegrees(eccentricity / radius) * StrictMath.sin(high);
      degrees[i] = place + wheel.errors().pitchRmsDegrees() * random.gaussian() + turned;
      extraGapMm[i] = -eccentricity * StrictMath.cos(high);
    }
    for (DamagedTooth tooth : wheel.damaged()) {
      degrees[tooth.tooth() - 1] -= tooth.bentDegrees();
      extraGapMm[tooth.tooth() - 1] += tooth.shortMm();
      broken[tooth.tooth() - 1] = Double.isInfinite(tooth.shortMm());
    }
  }

  int teeth() {
    return degrees.length;
  }

  /** Degrees of the wheel after the place of tooth 1. */
  double degrees(int index) {
    return degrees[index];
  }

  double extraGapMm(int index) {
    return extraGapMm[index];
  }

  boolean isBroken(int index) {
    return broken[index];
  }

  /**
   * Width of the pulse that a switching sensor makes of a tooth, degrees of the wheel: less for a
   * short tooth, and never more than leaves room for the next.
   */
  double pulseDegrees(int index, Sensor.Hall sensor) {
    double shrink = StrictMath.exp(-extraGapMm[index] / PULSE_DECAY_MM);
    double room = pitchDegrees;
    int before = index == 0 ? degrees.length - 1 : index - 1;
    int after = index == degrees.length - 1 ? 0 : index + 1;
    room = Math.min(room, turned(degrees[index] - degrees[before]));
    room = Math.min(room, turned(degrees[after] - degrees[index]));
    return Math.min(shrink * sensor.toothShare() * pitchDegrees, WIDEST_PULSE * room);
  }

  private static double turned(double difference) {
    return difference <= 0.0 ? difference + 360.0 : difference;
  }

  /** Where each tooth's timed edge is, the broken teeth included. */
  MarkRing timedRing(Sensor sensor) {
    double[] marks = degrees.clone();
    if (sensor instanceof Sensor.Hall hall && hall.timedEdge() != hall.steadyEdge()) {
      double sign = hall.steadyEdge() == Sensor.Edge.FALLING ? -1.0 : 1.0;
      for (int i = 0; i < marks.length; i++) {
        marks[i] += isBroken(i) ? 0.0 : sign * pulseDegrees(i, hall);
      }
    }
    return new MarkRing(360.0, marks);
  }
}
