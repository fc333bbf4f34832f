package toothmark.desktop;

import java.util.List;
import java.util.OptionalDouble;
import javax.swing.JComponent;
import javax.swing.Timer;
import toothmark.chart.Ink;
import toothmark.chart.TraceChart;
import toothmark.desktop.JobDraft.Field;

/** What each command of the window does, and the keys of its pictures. */
final class DeskCommands {

  private static final double ZOOM = 0.7;
  private static final double PAN = 0.15;
  private static final double PAGE = 0.9;
  private static final int PLAY_EVERY_MS = 40;
  private static final double PLAY_DEGREES = 3;

  private final DeskWindow window;
  private final DeskModel model;
  private final Commands commands;
  private final FileDoor files;
  private final Timer player = new Timer(PLAY_EVERY_MS, e -> playOn());

  DeskCommands(DeskWindow window, FileDoor files) {
    this.window = window;
    this.model = window.model;
    this.commands = window.commands;
    this.files = files;
  }

  void add() {
    filesAndJob();
    ways();
    looks();
    measuring();
    aids();
    for (JComponent picture : new JComponent[] {window.trace, window.strip, window.wheel}) {
      keys(picture);
    }
    commands.bind(window.trace, "shift F10", "saveTrace");
    commands.bind(window.trace, "CONTEXT_MENU", "saveTrace");
    commands.bind(window.wheel, "RIGHT", "toothOn");
    commands.bind(window.wheel, "LEFT", "toothBack");
    commands.bind(window.wheel, "PAGE_DOWN", "turnOn");
    commands.bind(window.wheel, "PAGE_UP", "turnBack");
  }

  private void filesAndJob() {
    commands.add("open", "menu O", files::choose);
    commands.add("openJob", "", () -> files.chooseCompanion("dialog.job"));
    commands.add("openLog", "", () -> files.chooseCompanion("dialog.log"));
    commands.add("compare", "menu M", files::chooseEarlier);
    commands.add("sample", "", files::openSample);
    commands.add("openBeside", "menu shift O", files::chooseBeside);
    commands.add("newWindow", "menu N", Desk::newWindow);
    commands.add("tile", "menu D", Desk::tile);
    commands.add("together", "menu L", Desk.TOGETHER::toggle);
    commands.add("report", "menu R", files::saveReport);
    commands.add("saveJob", "menu S", files::saveJob);
    for (Field f : List.of(Field.LIGHT, Field.TABLE)) {
      commands.add("choose." + f.path(), "", () -> files.chooseFor(f));
    }
    commands.add("savePicture", "menu shift S", files::savePicture);
    commands.add("saveTrace", "", window::offerTrace);
    commands.add("openAgain", "F5", files::openAgain);
    commands.add("showFolder", "menu E", files::showFolder);
    commands.get("showFolder").setEnabled(false);
    commands.add("close", "menu W", files::close);
    commands.add("cancel", "", model.bench::cancel);
    commands.add("undo", "menu Z", model.job::undo);
    commands.add("redo", "menu shift Z", model.job::redo);
    model.job.draft.follow(d -> steps());
    model.bench.session.watch(s -> steps());
  }

  private void steps() {
    commands.get("undo").setEnabled(model.job.canUndo());
    commands.get("redo").setEnabled(model.job.canRedo());
  }

  private void ways() {
    commands.add("nextEvent", "alt RIGHT", () -> model.step(1));
    commands.add("previousEvent", "alt LEFT", () -> model.step(-1));
    commands.add("zoomIn", "menu EQUALS", () -> model.zoom(ZOOM));
    commands.add("zoomOut", "menu MINUS", () -> model.zoom(1 / ZOOM));
    commands.add("showAll", "menu 0", model::showAll);
    commands.add("left", "", () -> model.pan(-PAN));
    commands.add("right", "", () -> model.pan(PAN));
    commands.add("pageLeft", "", () -> model.pan(-PAGE));
    commands.add("pageRight", "", () -> model.pan(PAGE));
    commands.add("start", "", () -> model.pan(-1e9));
    commands.add("end", "", () -> model.pan(1e9));
    commands.add("play", "menu P", this::play);
    commands.add("toothOn", "alt UP", () -> model.stepTooth(1));
    commands.add("toothBack", "alt DOWN", () -> model.stepTooth(-1));
    commands.add("turnOn", "", () -> model.stepTurn(1));
    commands.add("turnBack", "", () -> model.stepTurn(-1));
    commands.add("findings", "menu 1", () -> window.showSide(0));
    commands.add("measures", "menu 2", () -> window.showSide(1));
    commands.add("job", "menu 3", window::showSheet);
    commands.add("whatIf", "menu 6", () -> window.showSide(3));
    commands.add(
        "trace",
        "menu 4",
        () -> {
          window.showPictures();
          window.pictures.showTrace();
          window.trace.requestFocusInWindow();
        });
    commands.add(
        "pictures",
        "menu 5",
        () -> {
          window.showPictures();
          window.pictures.tabs().requestFocusInWindow();
        });
    commands.add("keys", "F1", () -> KeysWindow.show(window.frame, commands));
  }

  private void looks() {
    commands.add("light", "", () -> wear(Ink.LIGHT));
    commands.add("dark", "", () -> wear(Ink.DARK));
    commands.add("larger", "menu shift PERIOD", () -> enlarge(1.1));
    commands.add("smaller", "menu shift COMMA", () -> enlarge(1 / 1.1));
    commands.add(
        "angle",
        "menu T",
        () ->
            model.along.set(
                model.along.get() == TraceChart.Along.TIME
                    ? TraceChart.Along.ANGLE
                    : TraceChart.Along.TIME));
    commands.add(
        "height",
        "menu H",
        () ->
            model.height.set(
                model.height.get() == TraceChart.Height.WHOLE
                    ? TraceChart.Height.VIEW
                    : TraceChart.Height.WHOLE));
  }

  private static void wear(Ink ink) {
    Look.wear(ink);
    Desk.redressAll(ink);
  }

  private static void enlarge(double factor) {
    Look.enlarge(factor * Look.enlarged());
    wear(Look.ink());
  }

  private void measuring() {
    commands.add(
        "cursorFirst",
        "",
        () -> pointed().ifPresent(t -> model.cursors.set(model.cursors.get().withFirst(t))));
    commands.add(
        "cursorSecond",
        "",
        () -> pointed().ifPresent(t -> model.cursors.set(model.cursors.get().withSecond(t))));
    commands.add("cursorsOff", "", () -> model.cursors.set(Cursors.NONE));
  }

  private void aids() {
    for (String aid : new String[] {"piston", "tape", "strobe", "firing"}) {
      commands.add("aid." + aid, "", () -> window.aids().show(aid));
    }
  }

  private OptionalDouble pointed() {
    return window.trace.pointed();
  }

  private void keys(JComponent picture) {
    commands.bind(picture, "N", "nextEvent");
    commands.bind(picture, "P", "previousEvent");
    commands.bind(picture, "PLUS", "zoomIn");
    commands.bind(picture, "ADD", "zoomIn");
    commands.bind(picture, "EQUALS", "zoomIn");
    commands.bind(picture, "UP", "zoomIn");
    commands.bind(picture, "MINUS", "zoomOut");
    commands.bind(picture, "SUBTRACT", "zoomOut");
    commands.bind(picture, "DOWN", "zoomOut");
    commands.bind(picture, "0", "showAll");
    commands.bind(picture, "LEFT", "left");
    commands.bind(picture, "RIGHT", "right");
    commands.bind(picture, "PAGE_UP", "pageLeft");
    commands.bind(picture, "PAGE_DOWN", "pageRight");
    commands.bind(picture, "HOME", "start");
    commands.bind(picture, "END", "end");
    commands.bind(picture, "A", "cursorFirst");
    commands.bind(picture, "B", "cursorSecond");
    commands.bind(picture, "ESCAPE", "cursorsOff");
    commands.bind(picture, "SPACE", "play");
  }

  /** Turns the crank slowly along the trace, or stops it. */
  private void play() {
    if (player.isRunning()) {
      player.stop();
    } else {
      player.start();
    }
  }

  private void playOn() {
    double t =
        model.selected.get().instant().orElse(model.view.get().map(TimeView::middle).orElse(0.0));
    OptionalDouble rpm = model.rpmAt(t);
    if (rpm.isEmpty() || rpm.getAsDouble() <= 0 || !window.frame.isShowing()) {
      player.stop();
      return;
    }
    model.moveTo(t + PLAY_DEGREES / (6 * rpm.getAsDouble()));
  }
}
