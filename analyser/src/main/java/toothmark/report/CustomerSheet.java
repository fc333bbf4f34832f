package toothmark.report;

import java.util.ArrayList;
import java.util.List;
import toothmark.examination.Examination;
import toothmark.examination.JobSheet;
import toothmark.findings.Cranking;
import toothmark.findings.Finding;
import toothmark.findings.Observations;
import toothmark.findings.Severity;
import toothmark.rotation.DecodedCrank;
import toothmark.units.Say;

/** One sheet for the owner of the engine, in plain words. */
final class CustomerSheet {

  private static final int MOST = 4;

  private final HtmlWriter html;
  private final PageFigures figures;
  private final Examination examination;

  CustomerSheet(HtmlWriter html, PageFigures figures, Examination examination) {
    this.html = html;
    this.figures = figures;
    this.examination = examination;
  }

  void write() {
    JobSheet.Heading heading = examination.sheet().heading();
    html.open("section", "class", "customer", "id", "customer");
    html.open("div", "class", "masthead");
    html.element(
        "span", heading.shop().isEmpty() ? "Your engine" : heading.shop(), "class", "name");
    html.element("span", "for the customer").close();
    html.open("div", "class", "body");
    html.element("h1", heading.title().isEmpty() ? "What we found" : heading.title());
    html.element("p", whatWeDid());
    html.element("h3", "What we found").element("p", examination.diagnosis().verdict());
    found();
    html.element("h3", "What happens next");
    String next = examination.diagnosis().nextStep();
    html.element("p", next.isEmpty() ? "Nothing needs doing." : next);
    unchecked(next);
    checked();
    html.close();
    html.open("div", "class", "signature");
    html.element("span", "Date").element("span", "Technician").close().close();
  }

  private String whatWeDid() {
    Observations o = examination.observations();
    StringBuilder s = new StringBuilder("Your engine's control unit knows where the crankshaft is");
    s.append(" from a toothed wheel and a sensor. We recorded the sensor's signal for ");
    s.append(Say.seconds(o.capture().span().seconds()));
    o.crank()
        .map(DecodedCrank::speed)
        .ifPresent(
            v -> {
              s.append(", from ").append(Say.number(v.minRpm(), 0));
              s.append(" to ").append(Say.number(v.maxRpm(), 0)).append(" turns a minute");
            });
    if (!o.coils().isEmpty()) {
      s.append(", together with the ignition");
    }
    return s.append(", and measured every tooth of it.").toString();
  }

  private void found() {
    List<Finding> telling =
        examination.diagnosis().findings().stream()
            .filter(f -> f.severity() != Severity.NOTE)
            .toList();
    if (telling.isEmpty()) {
      return;
    }
    html.open("ul");
    for (Finding f : telling.subList(0, Math.min(MOST, telling.size()))) {
      html.open("li").text(f.title() + " ");
      html.element("span", plain(f.severity()), "class", "quiet").close();
    }
    html.close();
    figures.proof(telling.get(0)).ifPresent(d -> figures.again(html, d));
  }

  /** How to check the wheel's own angle, if it was not and something graver comes first. */
  private void unchecked(String next) {
    examination.diagnosis().findings().stream()
        .filter(f -> f.id().equals("tdc-unknown") && !f.nextTest().equals(next))
        .forEach(f -> html.element("p", f.title() + " " + f.nextTest()));
  }

  private static String plain(Severity severity) {
    return switch (severity) {
      case FAULT -> "This should be mended.";
      case WATCH -> "This is worth keeping an eye on.";
      case NOTE -> "This is normal.";
    };
  }

  private void checked() {
    List<String> done = new ArrayList<>();
    List<String> open = new ArrayList<>();
    Observations o = examination.observations();
    boolean decoded = o.crank().isPresent();
    (decoded ? done : open).add("the trigger wheel, tooth by tooth");
    (decoded ? done : open).add("the sensor and its wiring, as far as the signal shows them");
    done.add("whether the control unit can follow the signal");
    boolean angle = o.timing().alignment().isPresent();
    boolean sparks = o.timing().gap().isPresent();
    (angle ? done : open).add("whether the wheel stands at its angle on the engine");
    String against = Wording.against(o.timing().reference());
    (sparks ? done : open)
        .add("the moment of the sparks" + (against.isEmpty() || !sparks ? "" : ", " + against));
    (o.coils().isEmpty() ? open : done).add("the work of each ignition coil");
    boolean compared = Cranking.of(o).filter(c -> !c.compressions().isEmpty()).isPresent();
    (compared ? done : open)
        .add("how evenly the cylinders compress, by the crank's speed on the starter");
    html.element("h3", "What was checked").open("ul");
    done.forEach(item -> html.element("li", item));
    html.close();
    if (!open.isEmpty()) {
      html.element("p", "This recording does not show " + String.join("; nor ", open) + ".");
    }
  }
}
