package toothmark.desktop;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import toothmark.capture.Capture;
import toothmark.capture.CaptureReader;
import toothmark.capture.Channel;
import toothmark.capture.ReadingOptions;
import toothmark.capture.SampledSignal;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.UnsupportedCaptureException;
import toothmark.chart.Curve;
import toothmark.chart.SignalCurve;
import toothmark.chart.SignalPyramid;
import toothmark.chart.TraceChart;
import toothmark.examination.Examination;
import toothmark.examination.Examiner;
import toothmark.examination.JobSheetException;

/**
 * An open capture and what is known of it so far.
 *
 * @param request the files
 * @param capture what was recorded
 * @param drawn its channels and their curves
 * @param given what goes with the capture
 * @param examination what was found; empty while it is not known
 */
record Session(
    Request request,
    Capture capture,
    List<TraceChart.Drawn> drawn,
    Request.Given given,
    Optional<Examination> examination) {

  Session {
    drawn = List.copyOf(drawn);
  }

  /** Reads a capture, its curves still to grow. */
  static Session recorded(Request request, Request.Given given, ReadingOptions options)
      throws UnreadableCaptureException, UnsupportedCaptureException, IOException {
    Capture capture = CaptureReader.read(request.capture(), options);
    List<TraceChart.Drawn> drawn = new ArrayList<>();
    for (Channel c : capture.channels()) {
      Optional<Curve> curve =
          c.signal() instanceof SampledSignal s
              ? Optional.of(SignalPyramid.growing(s))
              : SignalCurve.of(c.signal());
      drawn.add(new TraceChart.Drawn(c, curve));
    }
    return new Session(request, capture, drawn, given, Optional.empty());
  }

  /** Those of its curves that grow while they are looked at. */
  List<SignalPyramid> growing() {
    return drawn.stream()
        .flatMap(d -> d.curve().stream())
        .filter(SignalPyramid.class::isInstance)
        .map(SignalPyramid.class::cast)
        .toList();
  }

  Session with(Examination next) {
    return new Session(request, capture, drawn, given, Optional.of(next));
  }

  /** Examined by all that goes with it; what does not fit it is left out, which is told. */
  Session examined(Runnable betweenStages) throws JobSheetException {
    try {
      return examined(given, betweenStages);
    } catch (JobSheetException misfit) {
      for (Request.Given less : given.ever(misfit)) {
        try {
          return examined(less, betweenStages);
        } catch (JobSheetException e) {
          misfit.addSuppressed(e);
        }
      }
      throw misfit;
    }
  }

  private Session examined(Request.Given by, Runnable betweenStages) throws JobSheetException {
    Examination found = Examiner.examine(capture, by.sheet(), by.log(), betweenStages);
    Examination told = by.leftOut().map(l -> found.withAssumption(l.sentence())).orElse(found);
    return new Session(request, capture, drawn, by, Optional.of(told));
  }

  /** The curve to stand for the whole capture: the crank's, else the first there is. */
  Optional<Curve> leadingCurve() {
    return drawn.stream()
        .filter(
            d -> examination.filter(e -> e.roles().crank().equals(d.channel().name())).isPresent())
        .findFirst()
        .or(() -> drawn.stream().findFirst())
        .flatMap(TraceChart.Drawn::curve);
  }
}
