package toothmark.timing;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import toothmark.ignition.CrankPoint;
import toothmark.ignition.Spark;
import toothmark.rotation.AngleTimeline;
import toothmark.units.CrankAngle;
import toothmark.units.Interval;

/**
 * Measures ignition timing: alignment first, then each spark's advance, then the gap.
 *
 * <p>Advance is in crank degrees before the top dead centre of the coil's own cylinders. The gap is
 * actual less commanded advance; over speed n, rev/min, it is taken apart into an offset in degrees
 * and a delay t in seconds: gap = offset - 6 n t. Sparks that a limiter moves are left out first.
 * Every figure has a standard uncertainty (JCGM 100:2008). The method, its sources and limits are
 * in {@code docs/methods/timing.md}.
 */
public final class TimingMeasurement {

  /** Where speed changes by more than this share from tooth to tooth, no delay can be read. */
  private static final double LARGEST_CHANGE_A_TOOTH = 0.1;

  /**
   * Where ripple bends the angle over a tooth's pitch by more, what it does between teeth is not
   * known to a tenth of a degree or so: coarse wheels on the starter.
   */
  private static final double MOST_BEND_DEGREES = 1;

  private final TimingInputs in;

  private TimingMeasurement(TimingInputs in) {
    this.in = in;
  }

  /**
   * Measures.
   *
   * @param inputs what to measure from
   * @return what the capture shows; parts that it cannot show are empty
   */
  public static Timing measure(TimingInputs inputs) {
    return new TimingMeasurement(inputs).measure();
  }

  private Timing measure() {
    TdcReadings read = in.readings();
    AlignmentByHand hand = new AlignmentByHand(in.wheel());
    Map<TdcSource, Optional<AlignedWheel>> sources = new EnumMap<>(TdcSource.class);
    if (!in.marks().isEmpty()) {
      sources.put(
          TdcSource.MARK_CHANNEL, Optional.of(AlignmentFit.measure(in.marks(), in.wheel())));
    }
    read.tooth1ByStop()
        .ifPresent(m -> sources.put(TdcSource.PISTON_STOP, Optional.of(hand.byStop(m))));
    if (read.light().isPresent()) {
      Optional<GapFit> told = measure(Optional.empty(), List.of()).gap();
      sources.put(TdcSource.TIMING_LIGHT, told.map(g -> hand.byLight(read, g)));
    }
    Optional<TdcSource> best =
        sources.keySet().stream().filter(s -> sources.get(s).isPresent()).findFirst();
    List<TdcEvidence> unused = new ArrayList<>();
    sources.forEach(
        (s, wheel) -> {
          if (!best.equals(Optional.of(s))) {
            unused.add(new TdcEvidence(s, wheel.flatMap(w -> w.alignment().tooth1BtdcDegrees())));
          }
        });
    return measure(best.flatMap(sources::get), unused);
  }

  private Timing measure(Optional<AlignedWheel> aligned, List<TdcEvidence> unused) {
    List<SparkTiming> sparks = new AdvanceReader(in, aligned).read();
    List<CoilTiming> coils = CoilPlaces.of(sparks, in);
    GapReadings all = readings(sparks, coils);
    List<Limiter> limiters = new ArrayList<>();
    CutSearch.find(in.coils()).ifPresent(limiters::add);
    Optional<RetardSearch.Found> retard = RetardSearch.find(all);
    retard.ifPresent(r -> limiters.add(limiter(r, all, sparks)));
    GapReadings free = all.where(i -> retard.isEmpty() || !retard.get().limited()[i]);
    Optional<GapFitter.Outcome> gap = new GapFitter(in.wheel(), aligned).fit(free);
    mark(sparks, all, SparkTiming.Standing.LIMITED);
    mark(sparks, free, SparkTiming.Standing.REJECTED);
    gap.ifPresent(g -> mark(sparks, g.kept(), SparkTiming.Standing.FITTED));
    return new Timing(
        reference(aligned),
        aligned.map(AlignedWheel::alignment),
        unused,
        sparks,
        coils,
        FiringSequence.of(in.coils(), in.order()),
        SpeedBands.of(sparks),
        gap.map(GapFitter.Outcome::fit),
        limiters,
        in.commanded().flatMap(CommandedAdvance::match),
        in.commanded()
            .filter(TableAdvance.class::isInstance)
            .map(c -> ((TableAdvance) c).use(sparks, in.timeline())));
  }

  private Timing.Reference reference(Optional<AlignedWheel> aligned) {
    if (aligned.isPresent()) {
      return Timing.Reference.MEASURED;
    }
    return in.wheel().nominalTooth1BtdcDegrees().isPresent()
        ? Timing.Reference.NOMINAL
        : Timing.Reference.UNKNOWN;
  }

  private GapReadings readings(List<SparkTiming> sparks, List<CoilTiming> coils) {
    List<GapReadings.Reading> out = new ArrayList<>();
    for (int i = 0; i < sparks.size(); i++) {
      SparkTiming s = sparks.get(i);
      Optional<CrankPoint> crank = s.spark().crank();
      if (s.gapDegrees().isPresent()
          && s.spark().turn() == Spark.Turn.FIRST
          && steady(crank.orElseThrow(), s.spark().timeSeconds())) {
        reading(i, s, crank.get(), turned(s, coils)).ifPresent(out::add);
      }
    }
    return new GapReadings(out.toArray(GapReadings.Reading[]::new));
  }

  private static double turned(SparkTiming s, List<CoilTiming> coils) {
    return coils.stream()
        .filter(c -> c.coil() == s.coil())
        .mapToDouble(CoilTiming::turnedDegrees)
        .findFirst()
        .orElse(0);
  }

  /** A gap, unless the crank's angle is not known long enough before the spark. */
  private Optional<GapReadings.Reading> reading(int i, SparkTiming s, CrankPoint p, double turned) {
    double time = s.spark().timeSeconds();
    double commanded = s.commandedDegrees().getAsDouble();
    List<Double> shifts = new ArrayList<>();
    shifts.add(commanded(time, ScheduledSpeed.EARLIER).orElse(commanded) - commanded);
    shifts.add(commanded(time, ScheduledSpeed.LAST_TEETH).orElse(commanded) - commanded);
    for (Foretelling f : Foretelling.WAYS) {
      f.degreesAt(time, in.timeline()).ifPresent(shifts::add);
    }
    return shifts.size() < GapReadings.LOOKS + Foretelling.WAYS.size()
        ? Optional.empty()
        : Optional.of(
            new GapReadings.Reading(
                i,
                p.rpm(),
                s.gapDegrees().getAsDouble() - turned,
                CrankAngle.turned(p.rpm(), s.spark().uncertaintySeconds()),
                p.degreesAfterTooth1(),
                shifts));
  }

  private OptionalDouble commanded(double time, ScheduledSpeed look) {
    return in.commanded().orElseThrow().at(time, in.timeline(), look);
  }

  /** Whether the speed keeps so well from tooth to tooth that the angle between them is known. */
  private boolean steady(CrankPoint p, double time) {
    double toothSeconds = in.wheel().pattern().pitchDegrees() / (6 * p.rpm());
    return Math.abs(p.rpmPerSecond()) * toothSeconds < LARGEST_CHANGE_A_TOOTH * p.rpm()
        && bend(time, toothSeconds / 2) < MOST_BEND_DEGREES;
  }

  /** How far the angle at an instant is off the straight line between those a time away. */
  private double bend(double time, double away) {
    AngleTimeline angle = in.timeline();
    return angle.covers(time - away) && angle.covers(time + away)
        ? Math.abs(
            angle.degreesAt(time)
                - (angle.degreesAt(time - away) + angle.degreesAt(time + away)) / 2)
        : 0;
  }

  private static Limiter limiter(
      RetardSearch.Found found, GapReadings all, List<SparkTiming> sparks) {
    double start = Double.POSITIVE_INFINITY;
    double end = Double.NEGATIVE_INFINITY;
    int late = 0;
    for (int i = 0; i < all.size(); i++) {
      if (found.limited()[i]) {
        double time = sparks.get(all.spark(i)).spark().timeSeconds();
        start = Math.min(start, time);
        end = Math.max(end, time);
        late++;
      }
    }
    int due = 0;
    for (int i = 0; i < all.size(); i++) {
      double time = sparks.get(all.spark(i)).spark().timeSeconds();
      due += time >= start && time <= end ? 1 : 0;
    }
    return new Limiter(
        Limiter.Manner.RETARD,
        found.fromRpm(),
        new Interval(start, end),
        late,
        due,
        found.pulledBackDegrees());
  }

  private static void mark(
      List<SparkTiming> sparks, GapReadings which, SparkTiming.Standing standing) {
    for (int i = 0; i < which.size(); i++) {
      SparkTiming s = sparks.get(which.spark(i));
      sparks.set(
          which.spark(i),
          new SparkTiming(
              s.coil(),
              s.coilName(),
              s.spark(),
              s.advanceDegrees(),
              s.commandedDegrees(),
              standing));
    }
  }
}
