package toothmark.desktop;

import java.util.List;
import java.util.Optional;
import toothmark.capture.Capture;
import toothmark.chart.Curve;
import toothmark.chart.TraceChart;
import toothmark.examination.Examination;
import toothmark.timing.ControllerLog;

/**
 * An open capture and what is known of it so far.
 *
 * @param request the files
 * @param capture what was recorded
 * @param drawn its channels and their curves
 * @param log what the controller logged
 * @param examination what was found; empty while it is not known
 */
record Session(
    Request request,
    Capture capture,
    List<TraceChart.Drawn> drawn,
    Optional<ControllerLog> log,
    Optional<Examination> examination) {

  Session {
    drawn = List.copyOf(drawn);
  }

  Session with(Examination next) {
    return new Session(request, capture, drawn, log, Optional.of(next));
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
