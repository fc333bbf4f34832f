package toothmark.chart;

import static toothmark.chart.SampleMotion.BENT;
import static toothmark.chart.SampleMotion.BENT_BY;
import static toothmark.chart.SampleMotion.END;
import static toothmark.chart.SampleMotion.TOOTH1_BTDC;
import static toothmark.chart.SampleMotion.WHEEL;
import static toothmark.chart.SampleMotion.angleAt;
import static toothmark.chart.SampleMotion.rpmAt;
import static toothmark.chart.SampleMotion.timeAt;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import toothmark.capture.Capture;
import toothmark.capture.Channel;
import toothmark.capture.Reading;
import toothmark.capture.SampledSignal;
import toothmark.capture.StatedLayout;
import toothmark.edges.CrankEdges;
import toothmark.edges.Disturbances;
import toothmark.edges.EdgeDirection;
import toothmark.edges.EdgeTrain;
import toothmark.edges.SensorKind;
import toothmark.edges.SignalQuality;
import toothmark.examination.Examination;
import toothmark.examination.JobSheet;
import toothmark.findings.Diagnosis;
import toothmark.findings.Diagnostician;
import toothmark.findings.Finding;
import toothmark.findings.NotExamined;
import toothmark.findings.Observations;
import toothmark.findings.Picture;
import toothmark.findings.Severity;
import toothmark.ignition.AbsentSpark;
import toothmark.ignition.ChargingLevel;
import toothmark.ignition.Coil;
import toothmark.ignition.CoilTrack;
import toothmark.ignition.CrankPoint;
import toothmark.ignition.MeanTime;
import toothmark.ignition.PickUp;
import toothmark.ignition.Spark;
import toothmark.receiver.ReceiverTrace;
import toothmark.receiver.SyncLoss;
import toothmark.rotation.AngleTimeline;
import toothmark.rotation.DecodedCrank;
import toothmark.rotation.SpeedTrace;
import toothmark.timing.SparkTiming;
import toothmark.timing.TdcReadings;
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
 * An examination written down by hand: a four-cylinder engine of our invention that is revved from
 * 1000 to 5000 rev/min in four seconds, with a bent tooth 11, lost teeth, strays, a wheel that is
 * 2.6 degrees off and sparks that are 100 microseconds late.
 */
public final class SampleRun {

  private static final double DELAY = 100e-6;

  private final List<Double> knotTimes = new ArrayList<>();
  private final List<Double> knotAngles = new ArrayList<>();
  private final ToothEvents teeth = teeth();
  private final AngleTimeline angle = timeline();

  private SampleRun() {}

  /** The whole examination. */
  public static Examination full() {
    return new SampleRun().examination();
  }

  /**
   * A capture of two teeth in which nothing could be decoded and nothing but the crank is there.
   */
  public static Examination undecodable() {
    Channel crank = new Channel("A", "V", SampledSignal.of(0, 1e-3, 0, 1, -1, 0, 0, 0));
    EdgeTrain none = new EdgeTrain(new double[0], new double[0], new double[0], new double[0]);
    Observations o =
        new Observations(
            new Capture("flat.csv", List.of(crank), new Reading("text", List.of(), List.of())),
            "V",
            stated(),
            new CrankEdges(
                SensorKind.VARIABLE_RELUCTANCE,
                none,
                none,
                new SignalQuality(1000, -1, 1, 0, 0, 0, 0)),
            Disturbances.NONE,
            Optional.empty(),
            "There are 2 edges; 20 are needed.",
            new ReceiverTrace(new double[0], List.of()),
            List.of(),
            new Timing(
                Timing.Reference.UNKNOWN,
                Optional.empty(),
                List.of(),
                List.of(),
                List.of(),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.empty()));
    return new Examination(
        JobSheet.empty(),
        new Examination.Roles("A", Optional.empty(), Map.of(), ""),
        o,
        new Diagnosis("There is no crank signal.", "", List.of(), List.of(), List.of()),
        Optional.empty());
  }

  /** The same with another diagnosis. */
  public static Examination with(Examination e, Diagnosis diagnosis) {
    return new Examination(e.sheet(), e.roles(), e.observations(), diagnosis, e.teeth());
  }

  /** The same without a mark of top dead centre, as diagnosed with one more note. */
  public static Examination withoutTdc() {
    Examination e = full();
    Observations o = e.observations();
    Timing t = o.timing();
    Timing told =
        new Timing(
            Timing.Reference.NOMINAL,
            Optional.empty(),
            List.of(),
            t.sparks(),
            t.coils(),
            t.sequence(),
            t.bands(),
            t.gap(),
            t.limiters(),
            t.log(),
            t.table());
    Observations seen =
        new Observations(
            o.capture(),
            o.crankUnit(),
            o.stated(),
            o.edges(),
            o.disturbances(),
            o.crank(),
            o.undecodable(),
            o.receiver(),
            o.coils(),
            told);
    return new Examination(e.sheet(), e.roles(), seen, Diagnostician.diagnose(seen), e.teeth());
  }

  private static Observations.Stated stated() {
    return new Observations.Stated(
        4,
        Optional.of(WHEEL),
        OptionalDouble.of(150),
        EdgeDirection.FALLING,
        Observations.Statement.STATED,
        Observations.Firing.NOTHING);
  }

  private ToothEvents teeth() {
    ToothEvents.Builder b = new ToothEvents.Builder();
    for (int r = 0; 360.0 * (r + 1) < angleAt(END); r++) {
      for (int k = 1; k <= WHEEL.teeth(); k++) {
        double nominal = 360.0 * r + WHEEL.degreesAfterTooth1(k);
        double t = timeAt(nominal + (k == BENT ? BENT_BY : 0));
        boolean lost = r > 20 && r < 60 && k == 12 && r % 4 == 0;
        if (!lost) {
          knotTimes.add(t);
          knotAngles.add(nominal + (k == BENT ? BENT_BY : 0));
        }
        b.add(
            new ToothEvent(
                t, 1e-6, lost ? ToothKind.MISSING : ToothKind.SEEN, k, r, 0.99, lost ? 0 : 1));
        if (r > 90 && r % 13 == 0 && k == 20) {
          b.add(new ToothEvent(t + 8e-5, 1e-6, ToothKind.STRAY, 0, r, 0.9, 0.3));
        }
      }
    }
    return b.build();
  }

  private AngleTimeline timeline() {
    double[] t = knotTimes.stream().mapToDouble(d -> d).toArray();
    double[] a = knotAngles.stream().mapToDouble(d -> d).toArray();
    double[] rates = new double[t.length];
    for (int i = 0; i < t.length; i++) {
      rates[i] = 6 * rpmAt(t[i]);
    }
    return new AngleTimeline(t, a, rates);
  }

  private Examination examination() {
    List<SparkTiming> sparks = new ArrayList<>();
    List<CoilTrack> tracks = List.of(track(0, sparks), track(1, sparks));
    sparks.sort((x, y) -> Double.compare(x.spark().timeSeconds(), y.spark().timeSeconds()));
    ReceiverTrace receiver = receiver();
    Observations o =
        new Observations(
            SampleSignals.capture(sparks),
            "V",
            stated(),
            edges(),
            Disturbances.NONE,
            Optional.of(crank()),
            "",
            receiver,
            tracks,
            SampleTiming.of(sparks));
    return new Examination(sheet(), roles(), o, diagnosis(receiver), Optional.of(teeth));
  }

  private static JobSheet sheet() {
    return new JobSheet(
        new JobSheet.Heading("Bench 3", "Test engine <one>", "revved by hand & \"hot\""),
        new JobSheet.Engine(OptionalInt.of(4), List.of(1, 3, 4, 2), List.of()),
        new JobSheet.Wheel(Optional.of(WHEEL), OptionalDouble.of(90), OptionalDouble.of(150)),
        new JobSheet.Sensor(Optional.empty(), Optional.of(EdgeDirection.FALLING)),
        new JobSheet.Channels(Optional.of("CH1"), Optional.of("CH4")),
        TdcReadings.NONE,
        List.of(),
        JobSheet.Commanded.NOTHING,
        StatedLayout.NOTHING);
  }

  private static Examination.Roles roles() {
    Map<String, String> coils = new LinkedHashMap<>();
    coils.put("coil 1", "CH2");
    coils.put("coil 2", "CH3");
    return new Examination.Roles("CH1", Optional.of("CH4"), coils, "");
  }

  private CoilTrack track(int coil, List<SparkTiming> all) {
    String name = "coil " + (coil + 1);
    List<Spark> sparks = new ArrayList<>();
    List<AbsentSpark> absent = new ArrayList<>();
    double tdc = TOOTH1_BTDC + 180 * coil;
    for (int r = 1; 360.0 * (r + 1) < angleAt(END) - 400; r++) {
      double rough = rpmAt(timeAt(360.0 * r + tdc));
      double commanded = 10 + rough / 400;
      double t = timeAt(360.0 * r + tdc - commanded) + DELAY + 2e-6 * Math.sin(r * 1.7);
      CrankPoint where = new CrankPoint(angle.degreesAt(t), rpmAt(t), 1000);
      if (r % 50 == 40) {
        absent.add(new AbsentSpark(t, where));
        continue;
      }
      Spark s =
          new Spark(
              t,
              1e-6,
              OptionalDouble.of(t - 3e-3 + 1e-7 * rough),
              Optional.of(where),
              Spark.Turn.FIRST);
      sparks.add(s);
      double advance = 360.0 * r + tdc - angle.degreesAt(t) - 2.6;
      all.add(
          new SparkTiming(
              coil,
              name,
              s,
              OptionalDouble.of(advance),
              OptionalDouble.of(commanded),
              SparkTiming.Standing.FITTED));
    }
    return new CoilTrack(
        new Coil(name, List.of(1 + coil, 4 - coil), PickUp.LOGIC),
        ChargingLevel.HIGH,
        360,
        sparks,
        absent,
        Optional.of(new MeanTime(2.71e-3, 0.11e-3, sparks.size())),
        Optional.empty(),
        Optional.empty());
  }

  private DecodedCrank crank() {
    double[] offsets = new double[WHEEL.teeth()];
    double[] u = new double[WHEEL.teeth()];
    double[] amplitudes = new double[WHEEL.teeth()];
    for (int i = 0; i < offsets.length; i++) {
      offsets[i] = i + 1 == BENT ? BENT_BY : 0.02 * Math.sin(i * 2.1);
      u[i] = 0.004;
      amplitudes[i] = i + 1 == BENT ? 0.72 : 1 + 0.03 * Math.cos(i);
    }
    double[] t = new double[knotTimes.size() - 1];
    double[] rpm = new double[t.length];
    for (int i = 0; i < t.length; i++) {
      t[i] = (knotTimes.get(i) + knotTimes.get(i + 1)) / 2;
      rpm[i] = rpmAt(t[i]);
    }
    return new DecodedCrank(
        new WheelIdentification(
            WHEEL,
            0.993,
            List.of(new WheelIdentification.Candidate(WheelPattern.of(36, 2), 0.007)),
            EdgeDirection.FALLING,
            Orientation.NORMAL,
            List.of("One span in 35 is twice as long as its neighbours.")),
        new DecodedWheel(
            WHEEL, teeth, new ToothGeometry(offsets, u, amplitudes, 190), List.of(), List.of()),
        angle,
        new SpeedTrace(t, rpm, 2990));
  }

  private CrankEdges edges() {
    double[] times = knotTimes.stream().mapToDouble(d -> d).toArray();
    double[] u = new double[times.length];
    double[] ones = new double[times.length];
    java.util.Arrays.fill(u, 1e-6);
    java.util.Arrays.fill(ones, 1);
    EdgeTrain train = new EdgeTrain(times, u, ones, ones);
    return new CrankEdges(
        SensorKind.VARIABLE_RELUCTANCE,
        train,
        train,
        new SignalQuality(50_000, -10, 10, 0, 0.01, 0, 14));
  }

  private ReceiverTrace receiver() {
    List<SyncLoss> losses = new ArrayList<>();
    for (int i = 0; i < teeth.size(); i++) {
      if (teeth.kind(i) == ToothKind.MISSING) {
        double t = teeth.time(i + 1);
        losses.add(new SyncLoss(t, 12, rpmAt(t), SyncLoss.Phase.RUNNING));
      }
    }
    return new ReceiverTrace(knotTimes.stream().mapToDouble(d -> d).toArray(), losses);
  }

  private static Diagnosis diagnosis(ReceiverTrace receiver) {
    List<String> causes =
        new ArrayList<>(java.util.Collections.nCopies(receiver.losses().size(), "damaged-tooth"));
    return new Diagnosis(
        "Tooth 11 is bent and sync is lost at tooth 12. The wheel also stands 2.6° late.",
        "Look at tooth 11 of the wheel with the engine stopped and the battery off.",
        List.of(
            finding("damaged-tooth", Severity.FAULT, Picture.WHEEL, List.of()),
            finding(
                "intermittent-connection",
                Severity.WATCH,
                Picture.WAVEFORM,
                List.of(new Interval(1.0, 1.0))),
            finding("timing-delay", Severity.FAULT, Picture.ADVANCE, List.of()),
            finding(
                "spark-cut-limiter",
                Severity.NOTE,
                Picture.SPEED,
                List.of(new Interval(3.8, 3.95)))),
        List.of(new NotExamined("dwell-short", "The job sheet does not give the dwell asked for.")),
        causes);
  }

  private static Finding finding(
      String id, Severity severity, Picture picture, List<Interval> where) {
    return new Finding(
        id,
        severity,
        0.97,
        "Tooth 11 passes 0.80° late on every turn.",
        List.of(
            "Tooth 11 passes 0.80 ± 0.01° after its place on all of 190 turns.",
            "Its signal is 28 % weaker than its neighbours'."),
        List.of(),
        List.of("Run-out would move all teeth in a wave; only one is off."),
        "Turn the engine by hand and look at tooth 11.",
        "Keep the ignition off while hands are near the wheel.",
        picture,
        where,
        OptionalInt.empty());
  }
}
