package toothmark.desktop;

import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTable;
import javax.swing.JTextField;
import javax.swing.table.DefaultTableModel;
import net.miginfocom.swing.MigLayout;

/** One sum at the bench: what is asked at the left, what comes of it and its picture beside it. */
final class AidView extends JPanel {

  private static final long serialVersionUID = 1L;

  private static final int ROWS = 8;
  private static final String WIDE = "wmin 40, growx";

  private transient Aid aid;
  private final transient Consumer<Aid.Printed> save;
  private final Map<String, JTextField> fields = new LinkedHashMap<>();
  private final Optional<DefaultTableModel> readings;
  private final Prose complaint = new Prose();
  private final Prose first = new Prose();
  private final Prose others = new Prose();
  private final JButton print = new JButton(Phrases.of("aid.save"));
  private final Canvas canvas;
  private transient Optional<Aid.Outcome> outcome = Optional.empty();

  /** Shows a sum; {@code save} takes what is to be printed. */
  AidView(Aid aid, Consumer<Aid.Printed> save) {
    super(new BorderLayout());
    this.aid = aid;
    this.save = save;
    this.canvas = new Canvas();
    this.readings =
        aid.columns().isEmpty() ? Optional.empty() : Optional.of(new DefaultTableModel(ROWS, 0));
    setName("aid." + aid.name());
    add(asked(), BorderLayout.WEST);
    add(answered(), BorderLayout.CENTER);
    refresh();
  }

  private JComponent asked() {
    Column form =
        new Column(new MigLayout("insets 12, gapy 3, fillx, wrap 1", "[310::,grow,fill]"));
    Prose how = new Prose();
    how.say(Phrases.of("aid." + aid.name() + ".how"), () -> Look.regular(1));
    form.add(how, WIDE);
    readings.ifPresent(r -> form.add(table(r), "gaptop 6, " + WIDE));
    for (Aid.Entry e : aid.entries()) {
      JTextField field = new JTextField(e.first());
      field.setName("aid." + e.key());
      JLabel label = new JLabel(Phrases.of("aid." + e.key()));
      label.setLabelFor(field);
      field.getDocument().addDocumentListener(new Changed(this::refresh));
      fields.put(e.key(), field);
      form.add(label, "gaptop 4");
      form.add(field, WIDE);
    }
    complaint.setName("aid.complaint");
    form.add(complaint, "gaptop 6, hidemode 3, " + WIDE);
    return form.scrolled();
  }

  private JComponent table(DefaultTableModel model) {
    aid.columns().forEach(c -> model.addColumn(Phrases.of("aid." + c)));
    JTable table = new JTable(model);
    table.setName("aid.readings");
    table.getAccessibleContext().setAccessibleName(Phrases.of("aid.readings"));
    table.putClientProperty("terminateEditOnFocusLost", Boolean.TRUE);
    table.setSurrendersFocusOnKeystroke(true);
    table.setCellSelectionEnabled(true);
    table.setShowGrid(true);
    table.setRowHeight((int) (22 * Look.scale()));
    table.setPreferredScrollableViewportSize(new Dimension(260, ROWS * table.getRowHeight()));
    model.addTableModelListener(e -> refresh());
    return new JScrollPane(table);
  }

  private JComponent answered() {
    JPanel words =
        new JPanel(new MigLayout("insets 12 12 4 12, gapy 4, fillx, wrap 1", "[grow,fill]"));
    words.setOpaque(false);
    first.setName("aid.answer");
    first.setFocusable(true);
    others.setFocusable(true);
    words.add(first, WIDE);
    words.add(others, WIDE);
    print.setName("aid.save");
    print.addActionListener(e -> outcome.flatMap(Aid.Outcome::file).ifPresent(save));
    words.add(print, "growx 0, hidemode 3");
    JPanel right = new JPanel(new BorderLayout());
    right.add(words, BorderLayout.NORTH);
    right.add(canvas, BorderLayout.CENTER);
    return right;
  }

  /**
   * Takes what a field begins with from another sheet, where that says otherwise than the one
   * before.
   *
   * @param anew whether all fields begin anew, since it is another engine
   */
  void take(Aid next, boolean anew) {
    if (!next.equals(aid)) {
      List<Aid.Entry> before = aid.entries();
      aid = next;
      next.entries().stream()
          .filter(e -> anew || !before.contains(e))
          .forEach(e -> fields.get(e.key()).setText(e.first()));
    }
  }

  /** Works it out anew, as after a letter typed or a change of colours. */
  void refresh() {
    String wrong = "";
    try {
      outcome = aid.work(typed());
    } catch (IllegalArgumentException e) {
      outcome = Optional.empty();
      wrong = e.getMessage();
    }
    complaint.say(wrong, () -> Look.regular(0.95));
    complaint.setForeground(Look.ink().trouble());
    List<String> sentences =
        outcome.map(Aid.Outcome::sentences).orElse(List.of(Phrases.of("aid.nothing")));
    first.say(sentences.get(0), () -> Look.strong(1.15));
    others.say(String.join("\n", sentences.subList(1, sentences.size())), () -> Look.regular(1));
    print.setVisible(outcome.flatMap(Aid.Outcome::file).isPresent());
    revalidate();
    repaint();
  }

  private Typed typed() {
    Map<String, String> texts = new LinkedHashMap<>();
    fields.forEach((key, field) -> texts.put(key, field.getText()));
    List<List<String>> rows = new ArrayList<>();
    readings.ifPresent(r -> r.getDataVector().forEach(row -> rows.add(row(row))));
    return new Typed(texts, rows);
  }

  private static List<String> row(List<?> cells) {
    return cells.stream().map(c -> c == null ? "" : c.toString()).toList();
  }

  /** The picture. */
  private final class Canvas extends PictureView {

    private static final long serialVersionUID = 1L;

    Canvas() {
      super("aid.picture", Phrases.of("aid." + aid.name()), FocusRing.Idle.NOTHING);
    }

    @Override
    protected void paintComponent(Graphics graphics) {
      Graphics2D g = (Graphics2D) graphics.create();
      g.setColor(Look.ink().paper());
      g.fillRect(0, 0, getWidth(), getHeight());
      Paint.smooth(g);
      g.scale(Look.scale(), Look.scale());
      Rectangle2D area =
          new Rectangle2D.Double(
              12, 10, getWidth() / Look.scale() - 24, getHeight() / Look.scale() - 20);
      outcome.ifPresent(o -> o.picture().draw(g, area));
      g.dispose();
    }
  }
}
