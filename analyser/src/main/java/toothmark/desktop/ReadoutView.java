package toothmark.desktop;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import javax.swing.JLabel;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import toothmark.examination.Examination;
import toothmark.units.Say;
import toothmark.wheel.ToothEvents;
import toothmark.wheel.ToothGeometry;
import toothmark.wheel.ToothKind;

/** What is at the selected instant, what the tooth there is like, and what the cursors measure. */
final class ReadoutView extends JPanel {

  private static final long serialVersionUID = 1L;

  private static final String NOTHING = "–";

  private final transient DeskModel model;
  private final JLabel time = value("readout.time");
  private final JLabel angle = value("readout.angle");
  private final JLabel speed = value("readout.speed");
  private final JLabel tooth = value("readout.tooth");
  private final Prose measured = new Prose();

  ReadoutView(DeskModel model, Commands commands) {
    super(new MigLayout("insets 8 10 8 10, gapy 2, fillx, wrap 2", "[][grow,right]"));
    this.model = model;
    setName("readout");
    row("readout.time", time);
    row("readout.angle", angle);
    row("readout.speed", speed);
    row("readout.tooth", tooth);
    tooth.setToolTipText(Phrases.of("readout.tooth.help"));
    add(measured, "span 2, growx, wmin 40, gaptop 6, hidemode 3");
    measured.setName("measured");
    add(commands.button("cursorFirst"), "split 3, span 2, growx, gaptop 2");
    add(commands.button("cursorSecond"), "growx");
    add(commands.button("cursorsOff"), "growx");
    model.selected.watch(s -> refresh());
    model.cursors.watch(c -> refresh());
    model.bench.session.watch(s -> refresh());
    refresh();
  }

  private static JLabel value(String name) {
    JLabel label = new JLabel(NOTHING);
    label.setName(name);
    return label;
  }

  private void row(String key, JLabel value) {
    JLabel name = Caption.quiet(Phrases.of(key), () -> Look.regular(1));
    name.setLabelFor(value);
    add(name);
    add(value);
  }

  void refresh() {
    OptionalDouble t = model.selected.get().instant();
    time.setText(t.isPresent() ? Say.number(t.getAsDouble(), 6) + Say.THIN + "s" : NOTHING);
    OptionalDouble d = t.isPresent() ? model.degreesAt(t.getAsDouble()) : t;
    angle.setText(d.isPresent() ? Say.degrees(d.getAsDouble()) : NOTHING);
    OptionalDouble r = t.isPresent() ? model.rpmAt(t.getAsDouble()) : t;
    speed.setText(r.isPresent() ? Say.rpm(r.getAsDouble()) : NOTHING);
    tooth();
    measured();
  }

  private void tooth() {
    int k = model.selected.get().tooth().orElse(0);
    if (isMissing(k)) {
      tooth.setText(Phrases.of("readout.missing", Integer.toString(k)));
      return;
    }
    Optional<ToothGeometry> g =
        model
            .examination()
            .flatMap(e -> e.observations().crank())
            .map(c -> c.wheel().geometry())
            .filter(x -> x.turns() > 0 && k >= 1 && k <= x.teeth());
    // one line for all of the tooth, so that the wheel above has room
    tooth.setText(
        g.map(
                x ->
                    Phrases.of(
                        x.offsetDegrees(k) >= 0 ? "readout.late" : "readout.early",
                        Integer.toString(k),
                        Say.degrees(Math.abs(x.offsetDegrees(k))),
                        Say.percent(x.amplitude(k))))
            .orElse(k == 0 ? NOTHING : Integer.toString(k)));
  }

  /** Whether no edge came of the tooth at the selected instant. */
  private boolean isMissing(int k) {
    OptionalDouble t = model.selected.get().instant();
    Optional<ToothEvents> teeth = model.examination().flatMap(Examination::teeth);
    if (t.isEmpty() || teeth.isEmpty()) {
      return false;
    }
    OptionalInt i = Teeth.indexNearest(teeth.get(), k, t.getAsDouble());
    return i.isPresent() && teeth.get().kind(i.getAsInt()) == ToothKind.MISSING;
  }

  private void measured() {
    Cursors c = model.cursors.get();
    boolean both = c.first().isPresent() && c.second().isPresent();
    measured.say(
        both
            ? model
                .examination()
                .map(e -> Phrases.of("cursor.between", c.measure(e).say()))
                .orElse("")
            : "",
        () -> Look.strong(1));
  }
}
