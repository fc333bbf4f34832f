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

  Session with(Examination next) {
    return new Session(request, capture, drawn, given, Optional.of(next));
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
