package toothmark.report;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import toothmark.examination.Examination;
import toothmark.findings.Finding;
import toothmark.findings.Observations;
import toothmark.findings.Severity;
import toothmark.ignition.CoilTrack;
import toothmark.ignition.MeanTime;
import toothmark.receiver.SyncLoss;
import toothmark.rotation.DecodedCrank;
import toothmark.rotation.SpeedTrace;
import toothmark.timing.Alignment;
import toothmark.timing.GapFit;
import toothmark.units.Measured;
import toothmark.units.Say;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;

/**
 * What an examination found, on one screen of a terminal: the verdict, what to do next, the
 * findings, the figures, and where the files are.
 */
public final class VerdictText {

  private static final String MICROSECONDS = Say.THIN + "µs";

  private static final int MOST_FINDINGS = 8;

  private final ScreenLines lines;

  private VerdictText(int width) {
    this.lines = new ScreenLines(width);
  }

  /**
   * Says what was found.
   *
   * @param examination the examination
   * @param written files written, the page first; empty when none were
   * @param width columns of the screen, 40 or more
   * @return the lines, none wider than the screen unless one word or path is
   */
  public static List<Line> of(Examination examination, List<Path> written, int width) {
    VerdictText text = new VerdictText(width);
    text.verdict(examination);
    text.findings(examination.diagnosis().findings());
    text.figures(examination);
    text.files(written);
    return text.lines.lines();
  }

  private void verdict(Examination e) {
    lines.wrap(Role.VERDICT, "", e.diagnosis().verdict());
    if (!e.diagnosis().nextStep().isEmpty()) {
      lines.wrap(Role.NEXT, "", "Next: " + e.diagnosis().nextStep());
    }
    lines.gap();
  }

  private void findings(List<Finding> findings) {
    for (Finding f : findings.subList(0, Math.min(MOST_FINDINGS, findings.size()))) {
      lines.wrap(role(f.severity()), f.severity().label().toUpperCase(Locale.ROOT), f.title());
    }
    if (findings.size() > MOST_FINDINGS) {
      lines.wrap(Role.PLAIN, "", findings.size() - MOST_FINDINGS + " more in the report");
    }
    if (!findings.isEmpty()) {
      lines.gap();
    }
  }

  private void figures(Examination e) {
    Observations o = e.observations();
    o.crank().ifPresent(this::crank);
    e.teeth().ifPresent(this::teeth);
    int losses = o.receiver().losses().size();
    lines.figure(
        "sync losses",
        losses == 0
            ? "none"
            : losses
                + " ("
                + o.receiver().losses(SyncLoss.Phase.CRANKING)
                + " cranking, "
                + o.receiver().losses(SyncLoss.Phase.RUNNING)
                + " running)");
    o.timing().alignment().ifPresent(this::alignment);
    o.timing().gap().ifPresent(g -> gapFit(g, Wording.against(o.timing().reference())));
    o.timing().log().ifPresent(l -> lines.figure("log", Wording.of(l)));
    o.timing().table().ifPresent(t -> lines.figure("ignition table", Wording.of(t)));
    o.coils().forEach(this::coil);
  }

  private void crank(DecodedCrank crank) {
    lines.figure(
        "wheel",
        crank.identification().pattern() + ", " + Say.sure(crank.identification().confidence()));
    SpeedTrace speed = crank.speed();
    lines.figure(
        "speed",
        Say.number(speed.minRpm(), 0)
            + " to "
            + Say.rpm(speed.maxRpm())
            + ", mean "
            + Say.number(speed.meanRpm(), 0));
  }

  private void teeth(ToothEvents teeth) {
    lines.figure(
        "teeth",
        Say.count(teeth.count(ToothKind.SEEN))
            + " seen, "
            + Say.count(teeth.count(ToothKind.MISSING))
            + " missing, "
            + Say.count(teeth.count(ToothKind.STRAY))
            + " stray");
  }

  private void alignment(Alignment a) {
    Optional<String> at = a.tooth1BtdcDegrees().map(m -> Say.degrees(m) + " BTDC");
    Optional<Measured> seen = a.errorDegrees().filter(Say::isSeen);
    Optional<String> error =
        a.errorDegrees()
            .map(m -> Say.isSeen(m) ? "error " + Say.degrees(m) : unseen("error", m, "°"));
    Optional<String> move =
        seen.flatMap(e -> a.sensorMoveMillimetres())
            .map(m -> Say.interval(m, Say.THIN + "mm") + " at the sensor");
    List<String> parts = new ArrayList<>();
    at.ifPresent(parts::add);
    error.ifPresent(parts::add);
    move.ifPresent(parts::add);
    if (!parts.isEmpty()) {
      parts.add("by " + a.source().words());
      lines.figure("tooth 1", String.join(", ", parts));
    }
  }

  private void gapFit(GapFit gap, String against) {
    Measured angle = gap.offsetDegrees();
    String offset =
        Say.isSeen(angle) ? "offset " + Say.degrees(angle) : unseen("offset", angle, "°");
    String delay =
        gap.delaySeconds()
            .map(d -> d.times(1e6))
            .map(
                d ->
                    Say.isSeen(d)
                        ? "delay " + Say.interval(d, MICROSECONDS)
                        : unseen("delay", d, MICROSECONDS))
            .orElse("delay not to be told at these speeds");
    lines.figure("advance", offset + ", " + delay + (against.isEmpty() ? "" : ", " + against));
  }

  /** What cannot be told from nothing, and how large it may be. */
  private static String unseen(String what, Measured measured, String unit) {
    return "no " + what + " seen (within " + Say.bound(measured, unit) + ")";
  }

  private void coil(CoilTrack track) {
    StringBuilder s = new StringBuilder(Say.count(track.sparks().size())).append(" sparks");
    if (!track.absent().isEmpty()) {
      s.append(", ").append(track.absent().size()).append(" absent");
    }
    if (track.dwell().isPresent()) {
      MeanTime d = track.dwell().get();
      s.append(", dwell ").append(Say.seconds(d.meanSeconds()));
    }
    lines.figure(track.coil().name(), s.toString());
  }

  private void files(List<Path> written) {
    if (written.isEmpty()) {
      return;
    }
    lines.gap();
    lines.add(new Line(Role.PATH, "report", written.get(0).toString()));
    if (written.size() > 1) {
      Path folder = written.get(0).getParent();
      lines.add(
          new Line(
              Role.PATH,
              "data",
              (folder == null ? "" : folder + " ") + "(" + (written.size() - 1) + " files)"));
    }
  }

  private static Role role(Severity severity) {
    return switch (severity) {
      case FAULT -> Role.FAULT;
      case WATCH -> Role.WATCH;
      case NOTE -> Role.NOTE;
    };
  }

  /** What a line says, for its colour on a terminal. */
  public enum Role {
    /** The verdict. */
    VERDICT,
    /** What to do next. */
    NEXT,
    /** A fault. */
    FAULT,
    /** Something to watch. */
    WATCH,
    /** A note. */
    NOTE,
    /** A figure or an empty line. */
    PLAIN,
    /** The path of a file. */
    PATH
  }

  /**
   * One line of the screen.
   *
   * @param role what it says
   * @param label what stands before it in a column of its own; empty for none, a space in the
   *     further lines of a wrapped text
   * @param text the rest
   */
  public record Line(Role role, String label, String text) {

    /**
     * The line without colour.
     *
     * @return label padded to its column, then the text
     */
    public String plain() {
      return label.isEmpty() ? text : paddedLabel() + text;
    }

    /**
     * The label, padded to its column.
     *
     * @return empty when there is no label
     */
    public String paddedLabel() {
      return label.isEmpty()
          ? ""
          : label + " ".repeat(Math.max(2, ScreenLines.LABEL + 2 - label.length()));
    }
  }
}
