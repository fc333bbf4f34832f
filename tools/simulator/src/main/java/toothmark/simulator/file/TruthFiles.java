package toothmark.simulator.file;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import toothmark.simulator.Disturbance;
import toothmark.simulator.Recorder;
import toothmark.simulator.Scenario;
import toothmark.simulator.Sensor;
import toothmark.simulator.SimulatedCapture;
import toothmark.simulator.Spark;
import toothmark.simulator.ToothPassing;
import toothmark.simulator.WheelSlip;

/** The truth beside a capture: {@code truth.json} and {@code truth-teeth.csv}. */
final class TruthFiles {
  private final SimulatedCapture capture;
  private final Scenario scenario;
  private final Dialect dialect;

  TruthFiles(SimulatedCapture capture, Dialect dialect) {
    this.capture = capture;
    this.dialect = dialect;
    scenario = capture.scenario();
  }

  String teethCsv() {
    StringBuilder out = new StringBuilder("time,tooth,revolution,theta,missing\n");
    for (ToothPassing tooth : capture.truth().teeth()) {
      Decimals.append(out, tooth.seconds(), 9);
      out.append(',').append(tooth.tooth()).append(',').append(tooth.revolution()).append(',');
      Decimals.append(out, tooth.crankDegrees(), 4);
      out.append(tooth.outcome() == ToothPassing.Outcome.LOST ? ",1\n" : ",0\n");
    }
    return out.toString();
  }

  String json(String captureFile, String note) {
    Map<String, Object> truth = new LinkedHashMap<>();
    Recorder recorder = scenario.recorder();
    truth.put("name", scenario.name());
    truth.put("note", note);
    truth.put("seed", scenario.seed());
    truth.put("wheel", scenario.wheel().pattern().name());
    truth.put("sensor", scenario.sensor() instanceof Sensor.Hall ? "hall" : "vr");
    truth.put("sample_rate", recorder.sampleRateHz());
    truth.put("duration", recorder.durationSeconds());
    truth.put("polarity", polarity());
    truth.put("tooth1_btdc", capture.truth().alignment().tooth1BtdcDegrees());
    truth.put("nominal_btdc", capture.truth().alignment().nominalDegrees());
    truth.put("alignment_error", capture.truth().alignment().errorDegrees());
    truth.put("delay_us", scenario.controller().timing().delaySeconds() * 1e6);
    truth.put("dwell_ms", scenario.controller().dwell().seconds() * 1e3);
    truth.put("sparks", sparks());
    truth.put("open_windows", openWindows());
    truth.put("faults", capture.truth().faults());
    truth.put("fair_findings", scenario.fairFindings());
    truth.put("rpm_min", capture.truth().speed().minRpm());
    truth.put("rpm_max", capture.truth().speed().maxRpm());
    truth.put("slip", slip());
    truth.put("dialect", dialect.truthName());
    truth.put("sensor_lag_us", lagSeconds() * 1e6);
    truth.put("runout_deg", runOutDegrees());
    if (dialect.countsFromFirstEdge()) {
      truth.put("time_origin", "first-edge");
    }
    truth.put("time_shift", recorder.startSeconds());
    truth.put("capture", captureFile);
    truth.put("coils_recorded", dialect.hasOneChannel() ? List.of() : scenario.hookup().coils());
    return Json.of(truth) + "\n";
  }

  private String polarity() {
    return scenario.sensor() instanceof Sensor.VariableReluctance coil
            && coil.polarity() == Sensor.Polarity.REVERSED
        ? "reversed"
        : "normal";
  }

  private double lagSeconds() {
    return scenario.sensor() instanceof Sensor.VariableReluctance coil ? coil.lagSeconds() : 0.0;
  }

  private double runOutDegrees() {
    double radius = 0.5 * scenario.wheel().mount().diameterMm();
    return StrictMath.toDegrees(scenario.wheel().errors().eccentricityMm() / radius);
  }

  /** Spark times count from the start of the capture; {@code time_shift} is to be added. */
  private List<Object> sparks() {
    List<Object> list = new ArrayList<>();
    for (Spark spark : capture.truth().sparks()) {
      Map<String, Object> one = new LinkedHashMap<>();
      one.put("time", spark.seconds() - scenario.recorder().startSeconds());
      one.put("coil", spark.coil());
      one.put("cut", !spark.fired());
      one.put("commanded", spark.angles().commandedDegrees());
      one.put("actual", spark.angles().actualDegrees());
      one.put("dwell_ms", spark.dwellSeconds() * 1e3);
      one.put("rpm", spark.angles().rpm());
      one.put("outcome", spark.outcome().name().toLowerCase(Locale.ROOT).replace('_', '-'));
      list.add(one);
    }
    return list;
  }

  private List<Object> openWindows() {
    List<Object> list = new ArrayList<>();
    for (Disturbance disturbance : scenario.disturbances()) {
      if (disturbance instanceof Disturbance.OpenCircuit open) {
        open.windows().forEach(w -> list.add(List.of(w.fromSeconds(), w.toSeconds())));
      }
    }
    return list;
  }

  private Object slip() {
    WheelSlip slip = scenario.wheel().mount().slip();
    if (slip.degrees() == 0.0) {
      return null;
    }
    Map<String, Object> one = new LinkedHashMap<>();
    one.put("time", slip.fromSeconds());
    one.put("over", slip.overSeconds());
    one.put("degrees", slip.degrees());
    return one;
  }
}
