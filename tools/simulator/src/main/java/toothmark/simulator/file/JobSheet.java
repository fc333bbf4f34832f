package toothmark.simulator.file;

import java.util.List;
import toothmark.simulator.Coils;
import toothmark.simulator.Recorder;
import toothmark.simulator.Scenario;
import toothmark.simulator.Sensor;
import toothmark.simulator.SimulatedCapture;
import toothmark.simulator.Trace;

/** The installer's job sheet as TOML: what is known about the engine before the capture is read. */
final class JobSheet {
  private final SimulatedCapture capture;
  private final Scenario scenario;
  private final Dialect dialect;
  private final StringBuilder out = new StringBuilder();

  JobSheet(SimulatedCapture capture, Dialect dialect) {
    this.capture = capture;
    this.dialect = dialect;
    scenario = capture.scenario();
  }

  String toml() {
    out.append("[engine]\ncylinders = ").append(scenario.engine().cylinders());
    out.append("\n\n[engine.firing]\norder = ").append(scenario.engine().firingOrder());
    out.append("\n\n[wheel]\npattern = \"").append(scenario.toldPattern());
    out.append("\"\ntooth1_btdc_deg = ");
    out.append(scenario.controller().nominalTooth1BtdcDegrees());
    out.append("\nsensor_circle_mm = ").append(scenario.wheel().mount().diameterMm());
    sensor();
    channels();
    if (!dialect.hasOneChannel()) {
      scenario.hookup().coils().forEach(this::coil);
    }
    if (capture.log().isEmpty()) {
      out.append("\n[commanded]\nadvance_deg = ");
      out.append(scenario.controller().advance().baseDegrees()).append('\n');
    }
    return out.toString();
  }

  private void sensor() {
    if (scenario.sensor() instanceof Sensor.Hall hall) {
      out.append("\n\n[sensor]\nkind = \"hall\"\n");
      if (hall.timedEdge() == Sensor.Edge.RISING) {
        out.append("edge = \"rising\"\n");
      }
    } else {
      out.append("\n\n[sensor]\nkind = \"variable-reluctance\"\n");
    }
  }

  private void channels() {
    if (dialect.hasOneChannel()) {
      return;
    }
    List<Trace> traces = capture.traces();
    out.append("\n[channels]\n");
    for (int i = 0; i < traces.size(); i++) {
      Trace.Role role = traces.get(i).role();
      if (role != Trace.Role.COIL) {
        out.append(role == Trace.Role.CRANK ? "crank" : "tdc").append(" = \"");
        out.append(dialect.channelName(traces, i).orElseThrow()).append("\"\n");
      }
    }
  }

  private void coil(int coil) {
    String name = "coil " + (coil + 1);
    boolean drive =
        scenario.coils().signal() == Coils.Signal.DRIVE
            || dialect.recorderKind() != Recorder.Kind.OSCILLOSCOPE;
    for (int i = 0; i < capture.traces().size(); i++) {
      if (capture.traces().get(i).name().equals(name)) {
        out.append("\n[[coils]]\nname = \"").append(name).append("\"\nchannel = \"");
        out.append(dialect.channelName(capture.traces(), i).orElseThrow());
        out.append("\"\ncylinders = ");
        out.append(scenario.coils().cylinders(scenario.engine(), coil));
        out.append("\nsignal = \"").append(drive ? "logic" : "primary-voltage").append("\"\n");
      }
    }
  }
}
