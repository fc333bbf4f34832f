package toothmark.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import toothmark.capture.Reading;
import toothmark.examination.Examination;
import toothmark.findings.Diagnosis;
import toothmark.findings.NotExamined;

/** What could not be examined, how the capture was read and computed, and the cautions. */
final class MethodSection {

  private static final List<String> COMPUTED =
      List.of(
          "Edges are timed between samples. Of a variable-reluctance sensor the timing edge is the"
              + " steep zero crossing at the tooth centre.",
          "The wheel is named from the edges alone, then every edge is named together with all"
              + " others, so that one lost or stray edge does not move the rest. Errors of the teeth"
              + " are learned over whole turns and told apart from changes of speed.",
          "Sync losses are those of a plain textbook receiver that sees the same signal as a"
              + " controller does: it arms at a third of the last peak (at least 30 mV), counts"
              + " teeth, and expects the gap after the last one. Faults of the signal are not mended"
              + " for it.",
          "The gap between actual and commanded advance is split into an angle, which is the same at"
              + " all speeds, and a time, which costs more degrees the faster the engine turns: gap ="
              + " offset − 6 × rev/min × seconds.",
          "Uncertainties are combined after the Guide to the expression of uncertainty in"
              + " measurement (JCGM 100:2008).");

  private static final List<String> CAUTIONS =
      List.of(
          "Keep hands, hair, clothes and leads away from belts, fans and pulleys; an engine may start"
              + " while it is cranked.",
          "Block the wheels, set the brake and select neutral; work on stands, never on a jack alone.",
          "Exhaust, coils and coolant are hot. Let no exhaust gas collect in a closed room.",
          "Ignition voltage can injure, and destroy instruments: touch no part of it while the engine"
              + " turns, and use an attenuated probe or a clamp made for it. Give every coil a path"
              + " for its spark.",
          "Unplug the sensor from the controller before measuring its resistance.",
          "Stop when the advance is far beyond what was commanded: an engine that knocks is soon"
              + " damaged.",
          "The engine maker's data and the rules of the place come first. Where the law asks for a"
              + " licensed technician, leave the work to one.");

  private final HtmlWriter html;
  private final Examination examination;

  MethodSection(HtmlWriter html, Examination examination) {
    this.html = html;
    this.examination = examination;
  }

  void write() {
    notExamined(examination.diagnosis());
    reading(examination.observations().capture().reading());
    html.element("h2", "How it was computed", "id", "computed");
    list(COMPUTED);
    files();
    html.element("h2", "Cautions", "id", "cautions");
    list(CAUTIONS);
  }

  private void notExamined(Diagnosis diagnosis) {
    if (diagnosis.notExamined().isEmpty()) {
      return;
    }
    html.element("h2", "What could not be examined", "id", "not-examined");
    Map<String, String> idsByReason = new LinkedHashMap<>();
    for (NotExamined n : diagnosis.notExamined()) {
      idsByReason.merge(n.reason(), n.id().replace('-', ' '), (a, b) -> a + ", " + b);
    }
    html.open("ul");
    for (Map.Entry<String, String> e : idsByReason.entrySet()) {
      html.open("li").element("span", capital(e.getValue()) + ": ", "class", "label");
      html.text(e.getKey()).close();
    }
    html.close();
  }

  private static String capital(String words) {
    return Character.toUpperCase(words.charAt(0)) + words.substring(1);
  }

  private void reading(Reading reading) {
    html.element("h2", "How it was read", "id", "read");
    html.element("p", "Read as " + reading.format() + ".");
    html.open("table");
    for (Reading.Fact fact : reading.facts()) {
      fact(fact.label(), fact.value());
    }
    fact("crank", examination.roles().crank());
    examination.roles().tdc().ifPresent(c -> fact("top dead centre of cylinder 1", c));
    for (Map.Entry<String, String> coil : examination.roles().coils().entrySet()) {
      fact(coil.getKey(), coil.getValue());
    }
    html.close();
    List<String> doubts = new ArrayList<>(reading.doubts());
    if (!examination.roles().assumption().isEmpty()) {
      doubts.add(examination.roles().assumption());
    }
    examination.observations().timing().log().ifPresent(l -> doubts.add(l.reason()));
    examination
        .observations()
        .timing()
        .table()
        .ifPresent(t -> doubts.add("Commanded advance is that of " + Wording.of(t) + "."));
    list(doubts);
  }

  private void fact(String label, String value) {
    html.open("tr").element("td", label, "class", "basis").element("td", value).close();
  }

  private void files() {
    html.open("p", "class", "small quiet").text("All figures as tables beside this page: ");
    List<String> names =
        ResultFolder.fileNames().stream().filter(n -> !n.equals(ResultFolder.PAGE)).toList();
    for (int i = 0; i < names.size(); i++) {
      html.element("a", names.get(i), "href", names.get(i)).text(i + 1 < names.size() ? ", " : ".");
    }
    html.close();
  }

  private void list(List<String> sentences) {
    if (!sentences.isEmpty()) {
      html.open("ul");
      sentences.forEach(s -> html.element("li", s));
      html.close();
    }
  }
}
