package toothmark.simulator;

import java.util.ArrayList;
import java.util.List;
import toothmark.simulator.LevelChanges.Level;
import toothmark.simulator.Sensor.Edge;

/** Turns the passing teeth into the two levels of a switching sensor. */
final class HallOutput {
  private final Sensor.Hall sensor;
  private final List<Mark> marks = new ArrayList<>();

  private record Mark(double degrees, Edge edge) {}

  HallOutput(Sensor.Hall sensor, Wheel wheel, ToothLayout layout) {
    this.sensor = sensor;
    for (int i = 0; i < layout.teeth(); i++) {
      if (!layout.isBroken(i)) {
        addPulse(layout.degrees(i), layout.pulseDegrees(i, sensor));
      }
    }
    if (wheel.boltHead().strength() > 0.0) {
      double width = wheel.boltHead().strength() * sensor.toothShare();
      addPulse(wheel.boltHead().degrees(), width * wheel.pattern().pitchDegrees());
    }
    marks.sort((a, b) -> Double.compare(a.degrees(), b.degrees()));
  }

  private void addPulse(double place, double width) {
    boolean steadyEnds = sensor.steadyEdge() == Edge.FALLING;
    double from = steadyEnds ? place - width : place;
    marks.add(new Mark(from, Edge.RISING));
    marks.add(new Mark(from + width, Edge.FALLING));
  }

  /** The output from time zero to a time. */
  LevelChanges run(CrankMotion wheel, double seconds, Randomness random) {
    MarkRing ring = new MarkRing(360.0, marks.stream().mapToDouble(Mark::degrees).toArray());
    long next = ring.firstAtOrAfter(wheel.angleAt(0.0));
    Level first = mark(next).edge() == Edge.FALLING ? Level.HIGH : Level.LOW;
    List<Double> times = new ArrayList<>();
    CrankMotion.Cursor cursor = wheel.cursor();
    wheel.passings(
        ring,
        0.0,
        seconds,
        (index, t, direction) -> {
          cursor.moveTo(t);
          double speed = Math.max(1.0, Math.abs(cursor.degreesPerSecond()));
          boolean steady = mark(index).edge() == sensor.steadyEdge();
          double scatter = steady ? sensor.steadyScatterDegrees() : sensor.otherScatterDegrees();
          double noisy = t + scatter * random.gaussian() / speed;
          double last = times.isEmpty() ? 0.0 : times.get(times.size() - 1);
          times.add(Math.max(noisy, last));
        });
    return new LevelChanges(first, times.stream().mapToDouble(Double::doubleValue).toArray());
  }

  private Mark mark(long index) {
    return marks.get((int) Math.floorMod(index, (long) marks.size()));
  }
}
