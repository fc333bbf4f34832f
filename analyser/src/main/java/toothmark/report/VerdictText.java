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
import toothmark.receiver.SyncLoss;
import toothmark.rotation.DecodedCrank;
import toothmark.timing.Alignment;
import toothmark.timing.GapFit;
import toothmark.units.Measured;
import toothmark.units.Say;
import toothmark.wheel.ToothEvents;

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
      lines.wrap(Role.NEXT, "", Wording.of("screen.next", e.diagnosis().nextStep()));
    }
    lines.gap();
  }

  private void findings(List<Finding> findings) {
    for (Finding f : findings.subList(0, Math.min(MOST_FINDINGS, findings.size()))) {
      lines.wrap(
          role(f.severity()),
          Wording.severity(f.severity().label()).toUpperCase(Locale.ROOT),
          f.title());
    }
    if (findings.size() > MOST_FINDINGS) {
      lines.wrap(Role.PLAIN, "", Wording.of("screen.more", findings.size() - MOST_FINDINGS));
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
        Wording.of("screen.sync"),
        losses == 0
            ? Wording.of("screen.sync.none")
            : Wording.of(
                "screen.sync.some",
                losses,
                o.receiver().losses(SyncLoss.Phase.CRANKING),
                o.receiver().losses(SyncLoss.Phase.RUNNING)));
    o.timing().alignment().ifPresent(this::alignment);
    o.timing().gap().ifPresent(g -> gapFit(g, Wording.against(o.timing().reference())));
    o.timing().log().ifPresent(l -> lines.figure(Wording.of("screen.log"), Wording.of(l)));
    o.timing().table().ifPresent(t -> lines.figure(Wording.of("screen.table"), Wording.of(t)));
    o.coils().forEach(this::coil);
  }

  private void crank(DecodedCrank crank) {
    lines.figure(Wording.of("screen.wheel"), Wording.of(crank.identification()));
    lines.figure(Wording.of("screen.speed"), Wording.speed(crank.speed()));
  }

  private void teeth(ToothEvents teeth) {
    lines.figure(Wording.of("screen.teeth"), Wording.of(teeth));
  }

  private void alignment(Alignment a) {
    Optional<String> at = a.tooth1BtdcDegrees().map(m -> Wording.of("btdc", Say.degrees(m)));
    Optional<Measured> seen = a.errorDegrees().filter(Say::isSeen);
    Optional<String> error = a.errorDegrees().map(m -> told("screen.error.", m, "°"));
    Optional<String> move =
        seen.flatMap(e -> a.sensorMoveMillimetres())
            .map(m -> Wording.of("screen.move", Say.interval(m, Say.THIN + "mm")));
    List<String> parts = new ArrayList<>();
    at.ifPresent(parts::add);
    error.ifPresent(parts::add);
    move.ifPresent(parts::add);
    if (!parts.isEmpty()) {
      parts.add(Wording.of("screen.source", Wording.of(a.source())));
      lines.figure(Wording.of("screen.tooth1"), String.join(", ", parts));
    }
  }

  private void gapFit(GapFit gap, String against) {
    List<String> parts = new ArrayList<>();
    parts.add(told("screen.offset.", gap.offsetDegrees(), "°"));
    parts.add(
        gap.delaySeconds()
            .map(d -> told("screen.delay.", d.times(1e6), MICROSECONDS))
            .orElseGet(() -> Wording.of("screen.delay.unknown")));
    if (!against.isEmpty()) {
      parts.add(against);
    }
    lines.figure(Wording.of("screen.advance"), String.join(", ", parts));
  }

  /** A value; where it cannot be told from nothing, how large it may be. */
  private static String told(String key, Measured measured, String unit) {
    return Say.isSeen(measured)
        ? Wording.of(key + "seen", Say.interval(measured, unit))
        : Wording.of(key + "unseen", Say.bound(measured, unit));
  }

  private void coil(CoilTrack track) {
    List<String> parts = new ArrayList<>();
    parts.add(Wording.count(track.sparks().size(), "coil.sparks"));
    if (!track.absent().isEmpty()) {
      parts.add(Wording.of("coil.absent", track.absent().size()));
    }
    track
        .dwell()
        .ifPresent(d -> parts.add(Wording.of("screen.coil.dwell", Say.seconds(d.meanSeconds()))));
    lines.figure(track.coil().name(), String.join(", ", parts));
  }

  private void files(List<Path> written) {
    if (written.isEmpty()) {
      return;
    }
    lines.gap();
    lines.add(new Line(Role.PATH, Wording.of("screen.report"), written.get(0).toString()));
    if (written.size() > 1) {
      Path folder = written.get(0).getParent();
      lines.add(
          new Line(
              Role.PATH,
              Wording.of("screen.data"),
              (folder == null ? "" : folder + " ")
                  + Wording.count(written.size() - 1, "screen.data.files")));
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
