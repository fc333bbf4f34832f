package toothmark.report;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import toothmark.chart.RunOutline;
import toothmark.examination.Examination;
import toothmark.ignition.CrankPoint;
import toothmark.receiver.ReceiverTrace;
import toothmark.receiver.SyncLoss;
import toothmark.rotation.AngleTimeline;
import toothmark.rotation.DecodedCrank;
import toothmark.timing.SparkTiming;
import toothmark.units.CrankAngle;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothGeometry;
import toothmark.wheel.ToothKind;

/**
 * The tables of an examination for spreadsheets and scripts.
 *
 * <p>Times in seconds with nine decimals, so that a nanosecond (0.00005 degrees at 8000 rev/min) is
 * not lost; a cell is empty where the capture cannot tell.
 */
final class ResultTables {

  private static final int TIME = 9;
  private static final int DEGREES = 4;
  private static final int FINE = 6;
  private static final int RPM = 2;
  private static final int MILLISECONDS = 5;

  private ResultTables() {}

  /**
   * Every tooth seen, tooth missing and stray. The angle is in degrees after tooth 1 of the row's
   * own revolution, so tooth 1 may read slightly under or over 0.
   */
  static void teeth(Examination e, OutputStream out) throws IOException {
    CsvTable table = new CsvTable(out, "time_s,tooth,revolution,kind,angle_deg,rpm");
    if (e.teeth().isPresent()) {
      Optional<AngleTimeline> angle = e.observations().crank().map(DecodedCrank::angle);
      ToothEvents teeth = e.teeth().get();
      for (int i = 0; i < teeth.size(); i++) {
        tooth(table, teeth, i, angle);
      }
    }
    table.flush();
  }

  private static void tooth(CsvTable table, ToothEvents teeth, int i, Optional<AngleTimeline> angle)
      throws IOException {
    double time = teeth.time(i);
    table.fixed(time, TIME);
    if (teeth.kind(i) == ToothKind.STRAY) {
      table.empty();
    } else {
      table.whole(teeth.tooth(i));
    }
    int revolution = teeth.revolution(i);
    table.whole(revolution).text(teeth.kind(i).label());
    if (angle.isPresent() && angle.get().covers(time)) {
      AngleTimeline a = angle.get();
      table.fixed(a.degreesAt(time) - revolution * CrankAngle.REVOLUTION, DEGREES);
      table.fixed(a.rpmAt(time), RPM);
    } else {
      table.empty().empty();
    }
    table.endRow();
  }

  /** Every spark; advance is before the top dead centre of the coil's own cylinders. */
  static void sparks(Examination e, OutputStream out) throws IOException {
    CsvTable table =
        new CsvTable(out, "time_s,coil,dwell_ms,rpm,advance_deg,commanded_deg,gap_deg");
    for (SparkTiming s : e.observations().timing().sparks()) {
      OptionalDouble dwell = s.spark().dwellSeconds();
      table.fixed(s.spark().timeSeconds(), TIME).text(s.coilName());
      table.fixed(
          dwell.isPresent() ? OptionalDouble.of(1e3 * dwell.getAsDouble()) : dwell, MILLISECONDS);
      Optional<CrankPoint> crank = s.spark().crank();
      if (crank.isPresent()) {
        table.fixed(crank.get().rpm(), RPM);
      } else {
        table.empty();
      }
      table.fixed(s.advanceDegrees(), DEGREES);
      table.fixed(s.commandedDegrees(), DEGREES);
      table.fixed(s.gapDegrees(), DEGREES).endRow();
    }
    table.flush();
  }

  /** The edges that the reference receiver passed on. */
  static void receiverEdges(Examination e, OutputStream out) throws IOException {
    CsvTable table = new CsvTable(out, "time_s");
    ReceiverTrace receiver = e.observations().receiver();
    for (int i = 0; i < receiver.edges(); i++) {
      table.fixed(receiver.edgeTime(i), TIME).endRow();
    }
    table.flush();
  }

  /** What the turns together say of each tooth, no row where nothing was learned. */
  static void wheel(Examination e, OutputStream out) throws IOException {
    CsvTable table = new CsvTable(out, "tooth,late_deg,standard_uncertainty_deg,strength");
    Optional<ToothGeometry> learned =
        e.observations().crank().map(c -> c.wheel().geometry()).filter(g -> g.turns() > 0);
    for (int k = 1; k <= learned.map(ToothGeometry::teeth).orElse(0); k++) {
      ToothGeometry g = learned.get();
      table.whole(k).fixed(g.offsetDegrees(k), FINE).fixed(g.uncertaintyDegrees(k), FINE);
      table.fixed(g.amplitude(k), DEGREES).endRow();
    }
    table.flush();
  }

  /** Some turns of the crank signal, to be drawn without the capture. */
  static void turns(Examination e, OutputStream out) throws IOException {
    CsvTable table = new CsvTable(out, "turn,rpm,angle_deg,value");
    int number = 0;
    for (RunOutline.Turn turn : RunOutline.of(e).turns()) {
      number++;
      for (int i = 0; i < turn.signal().size(); i++) {
        table.whole(number).fixed(turn.rpm(), RPM).fixed(turn.signal().x(i), DEGREES);
        table.fixed(turn.signal().y(i), FINE).endRow();
      }
    }
    table.flush();
  }

  /** Where the reference receiver lost its count, and the finding that explains it. */
  static void syncLosses(Examination e, OutputStream out) throws IOException {
    CsvTable table = new CsvTable(out, "time_s,revolution,teeth_counted,rpm,phase,cause");
    List<SyncLoss> losses = e.observations().receiver().losses();
    List<String> causes = e.diagnosis().syncLossCauses();
    Optional<AngleTimeline> angle = e.observations().crank().map(DecodedCrank::angle);
    for (int i = 0; i < losses.size(); i++) {
      SyncLoss loss = losses.get(i);
      double time = loss.timeSeconds();
      table.fixed(time, TIME);
      if (angle.isPresent() && angle.get().covers(time)) {
        table.whole((int) Math.floor(angle.get().degreesAt(time) / CrankAngle.REVOLUTION));
      } else {
        table.empty();
      }
      table.whole(loss.teethCounted()).fixed(loss.rpm(), RPM);
      table.text(Wording.phase(loss.phase())).text(i < causes.size() ? causes.get(i) : "");
      table.endRow();
    }
    table.flush();
  }
}
