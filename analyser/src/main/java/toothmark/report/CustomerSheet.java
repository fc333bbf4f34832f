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
        "span", heading.shop().isEmpty() ? Wording.of("sheet") : heading.shop(), "class", "name");
    html.element("span", Wording.of("sheet.for")).close();
    html.open("div", "class", "body");
    html.element("h1", heading.title().isEmpty() ? Wording.of("sheet.found") : heading.title());
    html.element("p", whatWeDid());
    html.element("h3", Wording.of("sheet.found")).element("p", examination.diagnosis().verdict());
    found();
    html.element("h3", Wording.of("sheet.next"));
    String next = examination.diagnosis().nextStep();
    html.element("p", next.isEmpty() ? Wording.of("sheet.next.none") : next);
    unchecked(next);
    checked();
    html.close();
    html.open("div", "class", "signature");
    html.element("span", Wording.of("sheet.date"))
        .element("span", Wording.of("sheet.technician"))
        .close()
        .close();
  }

  private String whatWeDid() {
    Observations o = examination.observations();
    String seconds = Say.seconds(o.capture().span().seconds());
    boolean sparks = !o.coils().isEmpty();
    return o.crank()
        .map(DecodedCrank::speed)
        .map(
            v ->
                Wording.of(
                    sparks ? "sheet.done.sparks" : "sheet.done",
                    seconds,
                    Say.number(v.minRpm(), 0),
                    Say.number(v.maxRpm(), 0)))
        .orElseGet(
            () ->
                Wording.of(
                    sparks ? "sheet.done.undecoded.sparks" : "sheet.done.undecoded", seconds));
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
    return Wording.of("sheet.severity." + severity.label());
  }

  private void checked() {
    List<String> done = new ArrayList<>();
    List<String> open = new ArrayList<>();
    Observations o = examination.observations();
    boolean decoded = o.crank().isPresent();
    (decoded ? done : open).add(Wording.of("sheet.checked.wheel"));
    (decoded ? done : open).add(Wording.of("sheet.checked.sensor"));
    done.add(Wording.of("sheet.checked.sync"));
    boolean angle = o.timing().alignment().isPresent();
    boolean sparks = o.timing().gap().isPresent();
    (angle ? done : open).add(Wording.of("sheet.checked.angle"));
    String against = Wording.against(o.timing().reference());
    (sparks ? done : open)
        .add(
            against.isEmpty() || !sparks
                ? Wording.of("sheet.checked.sparks")
                : Wording.of("sheet.checked.sparks.against", against));
    (o.coils().isEmpty() ? open : done).add(Wording.of("sheet.checked.coils"));
    boolean compared = Cranking.of(o).filter(c -> !c.compressions().isEmpty()).isPresent();
    (compared ? done : open).add(Wording.of("sheet.checked.compression"));
    html.element("h3", Wording.of("sheet.checked")).open("ul");
    done.forEach(item -> html.element("li", item));
    html.close();
    if (!open.isEmpty()) {
      html.element("p", Wording.of("sheet.unchecked", String.join(Wording.of("sheet.nor"), open)));
    }
  }
}
