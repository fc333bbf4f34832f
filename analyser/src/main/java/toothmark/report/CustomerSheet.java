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

  /** So that all stays on one sheet. */
  private static final int MOST = 3;

  private static final double SURE = 0.95;

  private final HtmlWriter html;
  private final Examination examination;

  CustomerSheet(HtmlWriter html, Examination examination) {
    this.html = html;
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
    html.element("h1", heading.title().isEmpty() ? Wording.of("sheet.title") : heading.title());
    html.element("p", whatWeDid());
    List<Finding> telling =
        examination.diagnosis().findings().stream()
            .filter(f -> f.severity() != Severity.NOTE)
            .toList();
    List<Finding> shown = telling.subList(0, Math.min(MOST, telling.size()));
    html.element("h3", Wording.of("sheet.found")).element("p", summary(telling));
    found(shown);
    html.element("h3", Wording.of("sheet.next"));
    next(shown);
    unchecked(shown);
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
    double span = o.capture().span().seconds();
    String seconds = Say.number(span, span < 10 ? 1 : 0);
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

  /** How many things, and of what weight. */
  private String summary(List<Finding> telling) {
    if (telling.isEmpty()) {
      boolean decoded = examination.observations().crank().isPresent();
      return Wording.of(decoded ? "sheet.sum.none" : "sheet.sum.unjudged");
    }
    List<String> parts = new ArrayList<>();
    for (Severity s : List.of(Severity.FAULT, Severity.WATCH)) {
      long n = telling.stream().filter(f -> f.severity() == s).count();
      if (n > 0) {
        parts.add(Wording.count(n, "sheet.sum." + s.label()));
      }
    }
    if (telling.size() > MOST) {
      parts.add(Wording.count(telling.size() - MOST, "sheet.sum.more"));
    }
    return String.join(" ", parts);
  }

  private void found(List<Finding> shown) {
    if (shown.isEmpty()) {
      return;
    }
    html.open("ul");
    for (Finding f : shown) {
      html.open("li").text(f.forOwner() + " ");
      html.element("span", plain(f), "class", "quiet").close();
    }
    html.close();
  }

  private void next(List<Finding> shown) {
    List<String> steps = shown.stream().map(Finding::nextForOwner).distinct().toList();
    if (steps.size() < 2) {
      html.element("p", steps.isEmpty() ? Wording.of("sheet.next.none") : steps.get(0));
      return;
    }
    html.open("ol");
    steps.forEach(s -> html.element("li", s));
    html.close();
  }

  /** That the wheel's own angle was not checked, where nothing above says so. */
  private void unchecked(List<Finding> shown) {
    examination.diagnosis().findings().stream()
        .filter(f -> f.id().equals("tdc-unknown") && !shown.contains(f))
        .forEach(f -> html.element("p", f.forOwner() + " " + f.nextForOwner()));
  }

  /** How sure it is and how much it matters. */
  private static String plain(Finding f) {
    boolean sure = f.severity() == Severity.FAULT && f.probability() >= SURE;
    return Wording.of("sheet.severity." + f.severity().label() + (sure ? ".sure" : ""));
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
    boolean assumed = sparks && !Wording.against(o.timing().reference()).isEmpty();
    (sparks ? done : open)
        .add(Wording.of(assumed ? "sheet.checked.sparks.assumed" : "sheet.checked.sparks"));
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
