package toothmark.simulator;

import toothmark.simulator.Wheel.DamagedTooth;

/** Where each tooth of one real wheel is, and how far its tip is from the sensor's. */
final class ToothLayout {
  private final double[] degrees;
  private final double[] extraGapMm;
  private final boolean[] broken;

  ToothLayout(Wheel wheel, Randomness random) {
    Pattern pattern = wheel.pattern();
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

  /** All teeth, the broken ones included, moved by an angle. */
  MarkRing ring(double movedDegrees) {
    double[] moved = new double[degrees.length];
    for (int i = 0; i < moved.length; i++) {
      moved[i] = degrees[i] + movedDegrees;
    }
    return new MarkRing(360.0, moved);
  }
}
