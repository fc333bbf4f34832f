package toothmark.desktop;

import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JProgressBar;
import net.miginfocom.swing.MigLayout;
import toothmark.capture.Channel;
import toothmark.examination.Examination;
import toothmark.units.Say;

/** The upper band: what was captured, the verdict, what to do next, and the way to the events. */
final class VerdictView extends JPanel {

  private static final long serialVersionUID = 1L;

  /** Narrower, the buttons beside them would leave the words too little. */
  private static final int ROOM_BESIDE = 720;

  private final transient DeskModel model;
  private final transient Commands commands;
  private final JLabel captured = Caption.quiet(" ", () -> Look.regular(0.95));
  private final Prose verdict = new Prose();
  private final Prose next = new Prose();
  private final Prose event = new Prose();
  private final JProgressBar progress = new JProgressBar(0, 1000);
  private final JButton cancel;
  private final JPanel steps = new JPanel(new MigLayout("insets 0, gap 6", "[grow,fill]"));
  private final JPanel start = new JPanel(new MigLayout("insets 0, gap 6", "[grow,fill]"));

  VerdictView(DeskModel model, Commands commands) {
    super(new MigLayout("insets 8 12 8 12, gapy 2, fillx, hidemode 3", "[grow,fill]16[280!,fill]"));
    this.model = model;
    this.commands = commands;
    setName("verdict");
    captured.setName("captured");
    verdict.setName("verdict.text");
    verdict.setFocusable(true);
    next.setName("verdict.next");
    next.setFocusable(true);
    next.getAccessibleContext().setAccessibleName(Phrases.of("finding.next"));
    verdict.getAccessibleContext().setAccessibleName(Phrases.of("verdict.name"));
    cancel = new JButton(commands.get("cancel"));
    cancel.setName("cancel");
    progress.setName("progress");
    progress.setStringPainted(true);
    event.setName("event");
    event.setFocusable(true);
    pair(steps, "previousEvent", "nextEvent");
    pair(start, "open", "sample");
    arrange(false);
    addComponentListener(
        new ComponentAdapter() {
          @Override
          public void componentResized(ComponentEvent e) {
            arrange(getWidth() < ROOM_BESIDE * Look.scale());
          }
        });
    model.bench.session.watch(s -> refresh());
    model.bench.progress.follow(p -> progress(p));
    model.selected.watch(s -> event());
    refresh();
  }

  private void pair(JPanel in, String first, String second) {
    in.setOpaque(false);
    in.add(commands.button(first), "sizegroup b");
    in.add(commands.button(second), "sizegroup b");
  }

  /** The way to the events stands beside the words, or below them where those would be squeezed. */
  private void arrange(boolean below) {
    String words = below ? " 2 1, growx, wmin 40" : ", growx, wmin 40";
    String way = below ? "cell 0 3 2 1" : "cell 1 1 1 2, flowy, top";
    removeAll();
    add(captured, "cell 0 0 2 1, wmin 40");
    add(verdict, "cell 0 1" + words);
    add(next, "cell 0 2" + words);
    add(start, way);
    add(steps, way);
    add(event, way + ", growx, wmin 40");
    add(progress, "cell 0 4, split 2, growx, hmin 20");
    add(cancel, "cell 0 4");
  }

  private void progress(Optional<Bench.Progress> p) {
    boolean busy = p.isPresent();
    if (model.examination().isEmpty()) {
      verdict.say(unknown(), () -> Look.strong(1.2));
    }
    progress.setVisible(busy);
    cancel.setVisible(busy);
    p.ifPresent(
        now -> {
          progress.setIndeterminate(now.share() < 0);
          progress.setValue((int) Math.round(1000 * Math.max(0, now.share())));
          progress.setString(now.doing());
        });
  }

  void refresh() {
    Optional<Examination> e = model.examination();
    captured.setText(e.map(this::captured).orElse(" "));
    verdict.say(
        e.map(x -> x.diagnosis().verdict()).orElseGet(this::unknown), () -> Look.strong(1.2));
    next.say(e.map(this::next).orElse(""), () -> Look.regular(1));
    steps.setVisible(e.isPresent());
    start.setVisible(model.bench.session.get().isEmpty());
    event();
    revalidate();
  }

  /** What to do next; where nothing is wrong, what could not be judged and what it needs. */
  private String next(Examination e) {
    if (!e.diagnosis().nextStep().isEmpty()) {
      return e.diagnosis().nextStep();
    }
    boolean place = e.sheet().wheel().tooth1BtdcDegrees().isEmpty();
    boolean advance =
        !e.observations().coils().isEmpty()
            && e.sheet().commanded().advanceDegrees().isEmpty()
            && e.sheet().commanded().table().isEmpty()
            && model.bench.session.get().flatMap(s -> s.given().log()).isEmpty();
    return Stream.of(
            place ? Phrases.of("verdict.unjudged.place") : "",
            advance ? Phrases.of("verdict.unjudged.advance") : "")
        .filter(s -> !s.isEmpty())
        .collect(Collectors.joining(" "));
  }

  private String unknown() {
    if (model.bench.session.get().isEmpty() && model.bench.progress.get().isPresent()) {
      return Phrases.of("verdict.busy");
    }
    return model
        .bench
        .session
        .get()
        .map(s -> Phrases.of("verdict.start", Say.seconds(s.capture().span().seconds())))
        .orElse(Phrases.of("verdict.empty"));
  }

  private void event() {
    List<CaptureEvent> events = model.events();
    commands.get("previousEvent").setEnabled(!events.isEmpty());
    commands.get("nextEvent").setEnabled(!events.isEmpty());
    Optional<CaptureEvent> here = model.eventHere();
    String text =
        here.map(
                h ->
                    Phrases.of(
                        "event.of",
                        Say.count(events.indexOf(h) + 1),
                        Say.count(events.size()),
                        h.line()))
            .orElseGet(
                () ->
                    events.isEmpty()
                        ? Phrases.of("event.none")
                        : Phrases.of("event.count", Say.count(events.size())));
    event.say(text, () -> Look.regular(0.95));
    event.setVisible(model.examination().isPresent());
  }

  private String captured(Examination e) {
    double rate = e.observations().edges().quality().sampleRateHz();
    List<String> names = e.observations().capture().channels().stream().map(Channel::name).toList();
    StringBuilder s = new StringBuilder(Desk.TITLES.of(model).orElseThrow());
    if (!e.sheet().heading().title().isEmpty()) {
      s.insert(0, e.sheet().heading().title() + "  ·  ");
    }
    s.append("  ·  ").append(Say.seconds(e.observations().capture().span().seconds()));
    if (rate > 0) {
      s.append("  ·  ").append(Say.scaled(rate, "Sa/s"));
    }
    s.append("  ·  ").append(String.join(", ", names));
    s.append("  ·  ").append(e.observations().capture().reading().format());
    return s.toString();
  }
}
