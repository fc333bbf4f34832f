package toothmark.desktop;

import java.awt.event.HierarchyEvent;
import java.util.Optional;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JSlider;
import javax.swing.Timer;
import net.miginfocom.swing.MigLayout;
import toothmark.desktop.WhatIf.Circuit;
import toothmark.desktop.WhatIf.Setting;
import toothmark.receiver.ConditionerReplay.Result;
import toothmark.receiver.SyncLoss;
import toothmark.units.Say;

/** Sliders for the input circuit, and what each setting would have cost. */
final class WhatIfView extends Column {

  private static final long serialVersionUID = 1L;

  private static final int WAIT_MS = 60;

  private final transient WhatIf whatIf;
  private final Prose about = new Prose();
  private final Prose caution = new Prose();
  private final JComboBox<String> circuit = new JComboBox<>();
  private final Knob level = new Knob("whatIf.level");
  private final Knob guard = new Knob("whatIf.guard");
  private final JPanel counts =
      new JPanel(new MigLayout("insets 0, gapy 3, fillx, wrap 3", "[grow][]8[]"));
  private final Timer wait;
  private boolean showing; // the controls are being set, not moved

  WhatIfView(DeskModel model) {
    super(new MigLayout("insets 10, fillx, wrap 1, gapy 6", "[grow,fill]"));
    this.whatIf = model.whatIf;
    this.wait = new Timer(WAIT_MS, e -> whatIf.play());
    wait.setRepeats(false);
    for (Circuit c : Circuit.values()) {
      circuit.addItem(Phrases.of("circuit." + c));
    }
    circuit.setName("whatIf.circuit");
    circuit.getAccessibleContext().setAccessibleName(Phrases.of("whatIf.circuit"));
    circuit.addActionListener(e -> chosen());
    lay();
    whatIf.setting.follow(this::set);
    whatIf.outcome.watch(o -> refresh());
    model.bench.session.watch(s -> ask());
    addHierarchyListener(
        e -> {
          if ((e.getChangeFlags() & HierarchyEvent.SHOWING_CHANGED) != 0) {
            whatIf.isShown.set(isShowing());
            ask();
          }
        });
    refresh();
  }

  private void lay() {
    counts.setOpaque(false);
    add(about, "wmin 40");
    add(circuit, "wmin 40");
    add(level.name, "gaptop 4");
    add(level.slider, "wmin 40");
    add(guard.name);
    add(guard.slider, "wmin 40");
    add(counts, "gaptop 8, wmin 40");
    add(caution, "wmin 40, gaptop 4");
  }

  /** Nothing is played while nobody looks. */
  private void ask() {
    if (isShowing() && !wait.isRunning()) {
      wait.start();
    }
  }

  private void set(Setting s) {
    showing = true;
    circuit.setSelectedIndex(s.circuit().ordinal());
    boolean share = s.circuit() != Circuit.FIXED;
    level.show(
        s.circuit().level(),
        s.level(),
        Phrases.of(
            "whatIf.level." + s.circuit(),
            share ? Say.percent(s.level() / 100.0) : millivolts(s.level())));
    guard.show(
        s.circuit().guard(),
        s.guard(),
        Phrases.of("whatIf.guard." + s.circuit(), millivolts(s.guard())));
    showing = false;
    ask();
  }

  private static String millivolts(int value) {
    return Say.number(value, 0) + Say.THIN + "mV";
  }

  private void chosen() {
    if (!showing) {
      whatIf.setting.set(Setting.usual(Circuit.values()[circuit.getSelectedIndex()]));
    }
  }

  private void moved() {
    if (!showing) {
      Circuit c = whatIf.setting.get().circuit();
      whatIf.setting.set(new Setting(c, level.slider.getValue(), guard.slider.getValue()));
    }
  }

  /** Says everything anew, as after a change of colours. */
  void refresh() {
    about.say(Phrases.of("whatIf.about"), () -> Look.regular(1));
    Optional<WhatIf.Outcome> o = whatIf.outcome.get();
    caution.say(
        Phrases.of(o.isPresent() ? "whatIf.caution" : "whatIf.none"), () -> Look.regular(0.92));
    counts.removeAll();
    o.ifPresent(this::counts);
    counts.revalidate();
    repaint();
  }

  private void counts(WhatIf.Outcome o) {
    counts.add(new JLabel(Phrases.of("whatIf.reference")), "skip 1, right");
    counts.add(new JLabel(Phrases.of("whatIf.tried")), "right");
    row("whatIf.teeth", o.reference().teethLost(), o.tried().teethLost());
    row("whatIf.strays", o.reference().straysAdmitted(), o.tried().straysAdmitted());
    for (SyncLoss.Phase p : SyncLoss.Phase.values()) {
      row("whatIf.losses." + p, losses(o.reference(), p), losses(o.tried(), p));
    }
  }

  private static int losses(Result r, SyncLoss.Phase phase) {
    return r.trace().losses(phase);
  }

  private void row(String key, int reference, int tried) {
    counts.add(new JLabel(Phrases.of(key)), "wmin 20");
    counts.add(new JLabel(Say.count(reference)), "right");
    JLabel value = Caption.of(Say.count(tried), () -> Look.strong(1));
    value.setName(key);
    counts.add(value, "right");
  }

  /** A slider and its name, which says the value. */
  private final class Knob {

    private final JLabel name = new JLabel(" ");
    private final JSlider slider = new JSlider();

    Knob(String key) {
      slider.setName(key);
      name.setLabelFor(slider);
      slider.addChangeListener(e -> moved());
    }

    void show(WhatIf.Span span, int value, String words) {
      name.setText(words);
      slider.getAccessibleContext().setAccessibleName(words);
      if (slider.getMinimum() != span.least() || slider.getMaximum() != span.most()) {
        slider.getModel().setRangeProperties(value, 0, span.least(), span.most(), false);
      }
      if (slider.getValue() != value) {
        slider.setValue(value);
      }
    }
  }
}
