package toothmark.chart;

import java.awt.Color;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import toothmark.examination.Examination;
import toothmark.findings.Finding;
import toothmark.receiver.SyncLoss;
import toothmark.units.Say;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothKind;

/** Sync losses by cause, strays and missing teeth along the time line. */
final class SyncFigure {

  private static final int AXIS = 56;
  private static final int LANE = 30;
  private static final int MOST_CAUSES = 5;

  private final Examination examination;
  private final Ink ink;
  private final Map<String, Points> lanes = new LinkedHashMap<>();
  private final Map<String, Mark> marks = new LinkedHashMap<>();

  SyncFigure(Examination examination, Ink ink) {
    this.examination = examination;
    this.ink = ink;
  }

  Optional<Figure> draw() {
    losses();
    examination.teeth().ifPresent(this::teeth);
    if (lanes.isEmpty()) {
      return Optional.empty();
    }
    List<String> names = new ArrayList<>();
    List<Layer> layers = new ArrayList<>();
    int lane = lanes.size() - 1;
    for (Map.Entry<String, Points> e : lanes.entrySet()) {
      Points here = new Points();
      for (int i = 0; i < e.getValue().size(); i++) {
        here.add(e.getValue().x(i), lane);
      }
      names.add(Wording.of("sync.lane.count", e.getKey(), Say.count(here.size())));
      Color colour = ink.trouble();
      layers.add(
          new MarksLayer(
              here, marks.get(e.getKey()), 9, new MarksLayer.Style(colour, ink.paper())));
      lane--;
    }
    return Optional.of(
        new Figure(
            Wording.of("sync.question"),
            answer(),
            Plots.chart(
                Plots.plot(
                    Axes.time(Timeline.span(examination), ink),
                    Axes.lanes(names, ink),
                    layers,
                    ink)),
            AXIS + LANE * names.size()));
  }

  private void losses() {
    List<SyncLoss> losses = examination.observations().receiver().losses();
    List<String> causes = examination.diagnosis().syncLossCauses();
    for (int i = 0; i < losses.size(); i++) {
      String lane = lane(i < causes.size() ? causes.get(i) : "");
      if (!lanes.containsKey(lane) && lanes.size() == MOST_CAUSES) {
        lane = lanes.keySet().iterator().next();
      }
      add(lane, Mark.FLAG, losses.get(i).timeSeconds());
    }
  }

  private static String lane(String cause) {
    return Wording.find("sync.lane." + (cause.isEmpty() ? "none" : cause))
        .orElseGet(() -> Wording.of("sync.lane", Finding.name(cause)));
  }

  private void teeth(ToothEvents teeth) {
    for (int i = 0; i < teeth.size(); i++) {
      if (teeth.kind(i) == ToothKind.STRAY) {
        add(Wording.of("mark.strays"), Mark.CROSS, teeth.time(i));
      }
    }
    for (int i = 0; i < teeth.size(); i++) {
      if (teeth.kind(i) == ToothKind.MISSING) {
        add(Wording.of("sync.missing"), Mark.HOLLOW, teeth.time(i));
      }
    }
  }

  private void add(String lane, Mark mark, double time) {
    marks.put(lane, mark);
    lanes.computeIfAbsent(lane, k -> new Points()).add(time, 0);
  }

  private String answer() {
    int cranking = examination.observations().receiver().losses(SyncLoss.Phase.CRANKING);
    int running = examination.observations().receiver().losses(SyncLoss.Phase.RUNNING);
    if (cranking == 0) {
      return running == 0 ? Wording.of("sync.never") : Wording.of("sync.running", times(running));
    }
    return running == 0
        ? Wording.of("sync.cranking", times(cranking))
        : Wording.of("sync.both", times(running), times(cranking));
  }

  private static String times(int n) {
    return switch (n) {
      case 1 -> Wording.of("sync.once");
      case 2 -> Wording.of("sync.twice");
      default -> Wording.of("sync.times", Say.count(n));
    };
  }
}
