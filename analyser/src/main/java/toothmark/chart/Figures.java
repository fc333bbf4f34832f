package toothmark.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import toothmark.capture.Capture;
import toothmark.examination.Examination;
import toothmark.findings.Finding;
import toothmark.findings.Picture;
import toothmark.receiver.LevelWindow;
import toothmark.units.Interval;

/** The figures of an examination. One that would show nothing is not drawn. */
public final class Figures {

  private final Examination examination;
  private final Ink ink;

  private Figures(Examination examination, Ink ink) {
    this.examination = examination;
    this.ink = ink;
  }

  /**
   * Figures of an examination.
   *
   * @param examination what was found
   * @param ink for which ground
   * @return nothing is drawn yet
   */
  public static Figures of(Examination examination, Ink ink) {
    return new Figures(examination, ink);
  }

  /**
   * A figure that does not depend on a place in the capture.
   *
   * @param picture which; of the waveform the most telling excerpt
   * @return empty when there is nothing to show
   */
  public Optional<Figure> draw(Picture picture) {
    return switch (picture) {
      case WAVEFORM -> Excerpt.mostTelling(examination).flatMap(this::waveform);
      case TOOTH_PERIOD -> new ToothPeriodFigure(examination, ink).draw();
      case SPEED -> new SpeedFigure(examination, ink).draw();
      case WHEEL -> new WheelFigure(examination, ink).draw();
      case SYNC -> new SyncFigure(examination, ink).draw();
      case ADVANCE -> new AdvanceFigure(examination, ink).draw();
      case ALIGNMENT -> new AlignmentFigure(examination, ink).draw();
      case DWELL -> new DwellFigure(examination, ink).draw();
      case ORDERS -> new OrdersFigure(examination, ink).draw();
    };
  }

  /**
   * The figure that proves a finding.
   *
   * @param finding one of the examination's
   * @return empty when there is nothing to show
   */
  public Optional<Figure> draw(Finding finding) {
    List<Interval> where = finding.where();
    return finding.picture() == Picture.WAVEFORM && !where.isEmpty()
        ? waveform(where.get(0))
        : draw(finding.picture());
  }

  /**
   * The crank signal around a span of time, its teeth numbered.
   *
   * @param about what to show; about a turn is added around it, and a long span is cut after a few
   *     turns
   * @return empty when nothing was recorded there
   */
  public Optional<Figure> waveform(Interval about) {
    return new WaveformFigure(examination, ink).draw(Excerpt.around(examination, about));
  }

  /**
   * A channel laid over itself by turns or cycles of the crank, all of them at once; its signal is
   * read once.
   *
   * @param channel its name; one that the capture lacks stands for the crank sensor's
   * @param fold by how much it is laid over itself
   * @param cancelled asked between turns; true to stop
   * @return empty when fewer than two turns or cycles were decoded
   * @throws java.util.concurrent.CancellationException if asked to stop
   */
  public Optional<Figure> turns(String channel, Fold fold, BooleanSupplier cancelled) {
    Capture capture = examination.observations().capture();
    return capture
        .channel(channel)
        .or(() -> capture.channel(examination.roles().crank()))
        .flatMap(c -> new TurnsFigure(examination, fold, ink).draw(c, cancelled));
  }

  /**
   * With which fixed levels a record would have been followed without a loss.
   *
   * @param window what was tried
   * @param ink for which ground
   * @return the figure
   */
  public static Figure levels(LevelWindow window, Ink ink) {
    return new LevelsFigure(window, ink).draw();
  }

  /**
   * The figures that every page shows, whatever was found.
   *
   * @return in the order of the page: wheel, speed, timing, sync losses
   */
  public List<Figure> overview() {
    List<Figure> figures = new ArrayList<>();
    draw(Picture.WHEEL).ifPresent(figures::add);
    draw(Picture.SPEED).ifPresent(figures::add);
    draw(Picture.ADVANCE).ifPresent(figures::add);
    draw(Picture.ALIGNMENT).ifPresent(figures::add);
    draw(Picture.DWELL).ifPresent(figures::add);
    draw(Picture.SYNC).ifPresent(figures::add);
    draw(Picture.TOOTH_PERIOD).ifPresent(figures::add);
    return figures;
  }
}
