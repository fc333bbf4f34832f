package toothmark.findings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import toothmark.capture.Capture;
import toothmark.capture.Channel;
import toothmark.capture.Reading;
import toothmark.capture.StepSignal;
import toothmark.edges.CrankEdges;
import toothmark.edges.Disturbances;
import toothmark.edges.EdgeDirection;
import toothmark.edges.EdgeTrain;
import toothmark.edges.SensorKind;
import toothmark.edges.SignalQuality;
import toothmark.ignition.AbsentSpark;
import toothmark.ignition.ChargeCurrent;
import toothmark.ignition.ChargingLevel;
import toothmark.ignition.Coil;
import toothmark.ignition.CoilTrack;
import toothmark.ignition.CrankPoint;
import toothmark.ignition.PickUp;
import toothmark.ignition.Spark;
import toothmark.receiver.FollowedWheel;
import toothmark.receiver.ReceiverEdges;
import toothmark.receiver.ReceiverTrace;
import toothmark.receiver.ReferenceReceiver;
import toothmark.rotation.AngleTimeline;
import toothmark.rotation.DecodedCrank;
import toothmark.rotation.SpeedTrace;
import toothmark.timing.Alignment;
import toothmark.timing.CoilTiming;
import toothmark.timing.FiringSequence;
import toothmark.timing.GapFit;
import toothmark.timing.Limiter;
import toothmark.timing.LogMatch;
import toothmark.timing.SparkTiming;
import toothmark.timing.TdcEvidence;
import toothmark.timing.Timing;
import toothmark.units.Interval;
import toothmark.wheel.DecodedWheel;
import toothmark.wheel.Orientation;
import toothmark.wheel.ToothEvent;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothGeometry;
import toothmark.wheel.ToothKind;
import toothmark.wheel.WheelIdentification;
import toothmark.wheel.WheelPattern;

/**
 * A capture written down by hand: a healthy four-cylinder engine with a 36-1 wheel at 900 rev/min,
 * everything of which can be changed before {@link #seen()}.
 */
final class Scene {

  /** Decides something of a tooth as it passes. */
  interface OfTooth {
    boolean holds(double time, int tooth, int revolution);
  }

  WheelPattern wheel = WheelPattern.of(36, 1);
  Optional<WheelPattern> told = Optional.empty();
  double confidence = 0.99;
  Orientation orientation = Orientation.NORMAL;
  SensorKind kind = SensorKind.VARIABLE_RELUCTANCE;
  double fromRpm = 900;
  double toRpm = 900;
  double seconds = 1.6;
  double restSeconds = 0;
  boolean decoded = true;
  String undecodable = "";
  OfTooth lost = (t, k, r) -> false;
  OfTooth notReceived = (t, k, r) -> false;
  List<Double> strays = new ArrayList<>();

  /** Disturbances of the wave that nothing takes for an edge. */
  List<Double> spikes = new ArrayList<>();

  /** Spans in which no edge comes and teeth are not counted on. */
  List<Interval> undecided = new ArrayList<>();

  List<Interval> standstills = new ArrayList<>();

  double[] offsets = new double[35];
  double[] strengths = ones(35);
  int turnsLearned = 20;
  double hertz = 80_000;

  /** Peak-to-peak height of the wave at 200 rev/min, where 120 teeth of 36 slots pass a second. */
  double voltsAt200 = 1;

  String unit = "V";

  /** Share of the strength that is left at the end. */
  double fadesTo = 1;

  double low = -3;
  double high = 3;
  double mean = 0;
  double noise = 0.01;
  double clippedShare = 0;
  double samplesPerEdge = 40;
  double fallingJitterPitches = 0;
  double risingJitterPitches = 0;
  double humHertz = 0;
  double humDegrees = 0;

  /** A second hum of the same size; 0 for none. */
  double secondHumHertz = 0;

  double weakCylinder = 0;

  /** What rings at one frequency; at 0 Hz nothing does. */
  Ringing ringing = new Ringing(0);

  /** By which share the strength of the signal changes with each degree of that swing. */
  double ringsStronger = 0;

  /** How far a coil's current lifts the zero of the wave by the end of a charge. */
  double groundVolts = 0;

  int cylinders = 4;

  /** What turns the crank in place of an even speed; null for that. */
  StarterModel starter = null;

  /** By how much the wheel's centre being off moves a tooth, degrees. */
  double runOutDegrees = 0;

  Observations.Firing firing = Observations.Firing.NOTHING;

  /** Teeth that the receiver is told stand before the gap; 0 for those of the wheel. */
  int followedTeeth = 0;

  boolean coilsRecorded = true;
  int silentCoil = -1;
  double dwellSeconds = 3e-3;
  double dwellSpread = 0;
  int everyNthSparkAbsent = 0;
  int everyNthSparkTwice = 0;
  Timing.Reference reference = Timing.Reference.MEASURED;
  Optional<Alignment> alignment = Optional.empty();
  Optional<ChargeCurrent> charge = Optional.empty();
  List<TdcEvidence> unused = List.of();
  Optional<FiringSequence> sequence = Optional.empty();
  List<CoilTiming> coilTimings = new ArrayList<>();
  Optional<GapFit> gap = Optional.empty();

  /** The gap rises evenly from the first spark's to the last one's, degrees. */
  double gapFrom = 0;

  /** Standard deviation of each spark, degrees. */
  double gapJitter = 0;

  double gapTo = 0;
  List<Limiter> limiters = new ArrayList<>();
  Optional<LogMatch> log = Optional.empty();

  private final List<Double> times = new ArrayList<>();
  private final List<Double> angles = new ArrayList<>();
  private final List<Integer> numbers = new ArrayList<>();
  private final Random random = new Random(42);

  static Scene healthy() {
    return new Scene();
  }

  static double[] ones(int n) {
    double[] x = new double[n];
    Arrays.fill(x, 1);
    return x;
  }

  /** Time at which the crank has turned so far, degrees. */
  double timeOf(double degrees) {
    if (starter != null) {
      return starter.timeOf(degrees);
    }
    double rise = (toRpm - fromRpm) / seconds;
    double revs = degrees / 6;
    if (rise == 0) {
      return revs / fromRpm;
    }
    return (-fromRpm + Math.sqrt(fromRpm * fromRpm + 2 * rise * revs)) / rise;
  }

  double rpmAt(double time) {
    return starter != null ? starter.rpmAt(time) : fromRpm + (toRpm - fromRpm) * time / seconds;
  }

  /** Times of sparks, two a turn, 10 degrees before 90 and 270. */
  List<Double> sparkTimes(int coil) {
    List<Double> t = new ArrayList<>();
    for (int r = 0; timeOf(360.0 * r + 260) < seconds; r++) {
      t.add(timeOf(360.0 * r + 80 + 180 * coil));
    }
    return t;
  }

  Observations seen() {
    passTeeth();
    DecodedCrank crank = decode();
    return new Observations(
        capture(),
        unit,
        new Observations.Stated(
            cylinders,
            told,
            OptionalDouble.of(150),
            EdgeDirection.FALLING,
            Observations.Statement.ASSUMED,
            firing),
        edges(),
        new Disturbances(
            spikes.stream().mapToDouble(Double::doubleValue).sorted().toArray(),
            ones(spikes.size())),
        decoded ? Optional.of(crank) : Optional.empty(),
        undecodable,
        receiver(),
        coilsRecorded ? coils() : List.of(),
        new Timing(
            reference,
            alignment,
            unused,
            sparkTimings(),
            coilTimings,
            sequence,
            List.of(),
            gap,
            limiters,
            log,
            Optional.empty()));
  }

  private void passTeeth() {
    times.clear();
    angles.clear();
    numbers.clear();
    for (int r = 0; timeOf(360.0 * r) < seconds; r++) {
      for (int k = 1; k <= wheel.teeth(); k++) {
        double degrees = 360.0 * r + wheel.degreesAfterTooth1(k);
        double t = timeOf(degrees + runOutDegrees * Math.cos(Math.toRadians(degrees)));
        boolean counted =
            undecided.stream().noneMatch(u -> t > u.startInclusive() && t < u.endExclusive());
        if (t < seconds && counted) {
          double hum =
              humDegrees
                  * (Math.sin(2 * Math.PI * humHertz * t)
                      + Math.sin(2 * Math.PI * secondHumHertz * t));
          double ripple = weakCylinder * 57.3 * Math.sin(Math.toRadians(degrees / 2));
          times.add(
              t + (hum + ripple + ringing.degrees(rpmAt(t), degrees)) / (6 * rpmAt(t)) + lifted(t));
          angles.add(degrees);
          numbers.add(k);
        }
      }
    }
  }

  /** How much longer a wave of that height stays above a zero below it, by half a tooth, s. */
  private double lifted(double t) {
    double height = voltsAt200 / 2 * rpmAt(t) / 200;
    double turns = wheel.slots() * rpmAt(t) / 60;
    return groundVolts * current(t) / height / (2 * Math.PI * turns);
  }

  /** Current of the coils, 1 at a spark. */
  private double current(double t) {
    double sum = 0;
    for (int coil = 0; coil < 2 && groundVolts != 0; coil++) {
      for (double spark : sparkTimes(coil)) {
        sum += t < spark ? Math.max(0, 1 - (spark - t) / dwellSeconds) : 0;
      }
    }
    return sum;
  }

  private DecodedCrank decode() {
    int n = times.size();
    ToothEvents.Builder b = new ToothEvents.Builder();
    List<ToothEvent> events = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      int r = (int) Math.floor(angles.get(i) / 360);
      boolean gone = lost.holds(times.get(i), numbers.get(i), r);
      events.add(
          new ToothEvent(
              times.get(i),
              1e-6,
              gone ? ToothKind.MISSING : ToothKind.SEEN,
              numbers.get(i),
              r,
              0.99,
              gone ? 0 : 1));
    }
    for (double t : strays) {
      events.add(new ToothEvent(t, 1e-6, ToothKind.STRAY, 0, 0, 0.9, 0.2));
    }
    events.sort((x, y) -> Double.compare(x.timeSeconds(), y.timeSeconds()));
    events.forEach(b::add);
    double[] u = new double[offsets.length];
    Arrays.fill(u, 0.01);
    return new DecodedCrank(
        new WheelIdentification(
            wheel,
            confidence,
            List.of(new WheelIdentification.Candidate(WheelPattern.of(60, 2), 1 - confidence)),
            EdgeDirection.FALLING,
            orientation,
            List.of()),
        new DecodedWheel(
            wheel,
            b.build(),
            new ToothGeometry(offsets, u, strengths, turnsLearned),
            undecided,
            standstills),
        timeline(),
        speed());
  }

  private AngleTimeline timeline() {
    int n = times.size();
    double[] t = new double[n];
    double[] a = new double[n];
    double[] rate = new double[n];
    for (int i = 0; i < n; i++) {
      t[i] = times.get(i);
      a[i] = angles.get(i);
      rate[i] = 6 * rpmAt(t[i]);
    }
    return new AngleTimeline(t, a, rate);
  }

  private SpeedTrace speed() {
    double[] t = new double[times.size()];
    double[] rpm = new double[t.length];
    for (int i = 0; i < t.length; i++) {
      t[i] = times.get(i);
      rpm[i] = rpmAt(t[i]);
    }
    return new SpeedTrace(t, rpm, (fromRpm + toRpm) / 2);
  }

  private ReceiverTrace receiver() {
    List<Double> heard = new ArrayList<>(strays);
    for (int i = 0; i < times.size(); i++) {
      int r = (int) Math.floor(angles.get(i) / 360);
      double t = times.get(i);
      if (!lost.holds(t, numbers.get(i), r) && !notReceived.holds(t, numbers.get(i), r)) {
        heard.add(orientation == Orientation.REVERSED ? slotAfter(i) : t);
      }
    }
    heard.sort(null);
    double[] h = heard.stream().mapToDouble(Double::doubleValue).toArray();
    return ReferenceReceiver.follow(ReceiverEdges.of(h), followed());
  }

  private FollowedWheel followed() {
    if (wheel.teeth() > wheel.slots()) {
      return FollowedWheel.withExtraTooth(wheel.slots());
    }
    int gap = wheel.slots() - wheel.teeth();
    int teeth = followedTeeth > 0 ? followedTeeth : wheel.teeth();
    return gap == 0
        ? FollowedWheel.plain(wheel.slots())
        : FollowedWheel.withGaps(new int[] {teeth}, new int[] {gap});
  }

  private double slotAfter(int i) {
    int k = numbers.get(i);
    double next = k == wheel.teeth() ? 360 - wheel.degreesAfterTooth1(k) : wheel.pitchDegrees();
    return timeOf(angles.get(i) + next / 2);
  }

  private CrankEdges edges() {
    double[] rising = new double[times.size()];
    for (int i = 0; i < rising.length; i++) {
      double t = timeOf(angles.get(i) + wheel.pitchDegrees() / 2);
      rising[i] = t - lifted(t);
    }
    double[] falling = times.stream().mapToDouble(Double::doubleValue).toArray();
    return new CrankEdges(
        kind, train(falling, fallingJitterPitches), train(rising, risingJitterPitches), quality());
  }

  /** Adapt here when the record grows. */
  private SignalQuality quality() {
    return new SignalQuality(hertz, low, high, mean, noise, clippedShare, samplesPerEdge);
  }

  private EdgeTrain train(double[] t, double jitterPitches) {
    double[] jittered = t.clone();
    for (int i = 0; i < t.length; i++) {
      double pitch = wheel.pitchDegrees() / 6 / rpmAt(t[i]);
      jittered[i] += jitterPitches * pitch * random.nextGaussian();
    }
    Arrays.sort(jittered);
    double[] u = new double[t.length];
    double[] swings = new double[t.length];
    for (int i = 0; i < t.length && kind == SensorKind.VARIABLE_RELUCTANCE; i++) {
      double faded = 1 + (fadesTo - 1) * t[i] / seconds;
      double nearer = Math.exp(ringsStronger * ringing.degrees(rpmAt(t[i]), angles.get(i)));
      swings[i] = voltsAt200 / (2 * Math.PI * 120) * strengths[numbers.get(i) - 1] * faded * nearer;
    }
    return new EdgeTrain(jittered, u, ones(t.length), ones(t.length), swings);
  }

  private Capture capture() {
    StepSignal signal =
        new StepSignal(new double[] {0}, new double[] {0}, 0, seconds + restSeconds);
    return new Capture(
        "by-hand.csv",
        List.of(new Channel("CH1", unit, signal)),
        new Reading("text", List.of(), List.of()));
  }

  private List<CoilTrack> coils() {
    return List.of(coil(0), coil(1));
  }

  private CoilTrack coil(int number) {
    List<Spark> sparks = new ArrayList<>();
    List<AbsentSpark> absent = new ArrayList<>();
    int n = 0;
    for (double t : number == silentCoil ? List.<Double>of() : sparkTimes(number)) {
      n++;
      CrankPoint at = new CrankPoint(360.0 * n, rpmAt(t), 0);
      if (everyNthSparkAbsent > 0 && n % everyNthSparkAbsent == 0) {
        absent.add(new AbsentSpark(t, at));
        continue;
      }
      sparks.add(spark(t, at, Spark.Turn.FIRST));
      if (everyNthSparkTwice > 0 && n % everyNthSparkTwice == 0) {
        sparks.add(spark(t + 2e-3, at, Spark.Turn.REPEATED));
      }
    }
    List<Integer> own = number == 0 ? List.of(1, 4) : List.of(3, 2);
    Coil coil = new Coil("coil " + (number + 1), own, PickUp.LOGIC);
    return new CoilTrack(
        coil, ChargingLevel.HIGH, 360, sparks, absent, Optional.empty(), Optional.empty(), charge);
  }

  private Spark spark(double t, CrankPoint at, Spark.Turn turn) {
    double dwell = dwellSeconds * (1 + dwellSpread * random.nextGaussian());
    return new Spark(t, 1e-6, OptionalDouble.of(t - dwell), Optional.of(at), turn);
  }

  private List<SparkTiming> sparkTimings() {
    List<SparkTiming> all = new ArrayList<>();
    List<Double> t = sparkTimes(0);
    Random jitter = new Random(7);
    for (int i = 0; i < t.size(); i++) {
      double g =
          gapFrom + (gapTo - gapFrom) * i / (t.size() - 1) + jitter.nextGaussian() * gapJitter;
      Spark spark =
          spark(t.get(i), new CrankPoint(360.0 * i, rpmAt(t.get(i)), 0), Spark.Turn.FIRST);
      all.add(
          new SparkTiming(
              0,
              "coil 1",
              spark,
              OptionalDouble.of(10 + g),
              OptionalDouble.of(10),
              SparkTiming.Standing.FITTED));
    }
    return all;
  }
}
