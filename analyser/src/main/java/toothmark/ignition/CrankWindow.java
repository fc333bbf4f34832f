package toothmark.ignition;

import java.util.List;
import java.util.Optional;

/**
 * The stretch in which any coil fired, so that a coil that began late or stopped early is seen.
 *
 * @param fromDegrees unrolled angle of the first spark of any coil
 * @param toDegrees that of the last
 * @param cylinder1Degrees an angle at which cylinder 1 would fire, by the firing order
 */
record CrankWindow(double fromDegrees, double toDegrees, double cylinder1Degrees) {

  static CrankWindow around(List<FiringGrid> grids) {
    double from = Double.POSITIVE_INFINITY;
    double to = Double.NEGATIVE_INFINITY;
    double cylinder1 = 0;
    for (FiringGrid g : grids) {
      for (int i = 0; i < g.placed().size(); i++) {
        Optional<CrankPoint> p = g.placed().crank(i);
        if (p.isPresent()) {
          double at = p.get().degreesAfterTooth1();
          cylinder1 = at < from ? at - g.firstCylinderDegrees() : cylinder1;
          from = Math.min(from, at);
          to = Math.max(to, at);
        }
      }
    }
    return new CrankWindow(from, to, cylinder1);
  }
}
