package toothmark.desktop;

import java.awt.BorderLayout;
import java.awt.Color;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Optional;
import javax.swing.BorderFactory;
import javax.swing.DefaultListModel;
import javax.swing.Icon;
import javax.swing.JComponent;
import javax.swing.JEditorPane;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JSplitPane;
import javax.swing.KeyStroke;
import javax.swing.ListCellRenderer;
import javax.swing.ListSelectionModel;
import javax.swing.UIManager;
import toothmark.chart.Lettering;
import toothmark.findings.Finding;
import toothmark.findings.Severity;

/** The findings by rank, and what is known of the one picked out. */
final class FindingsView extends JPanel {

  private static final long serialVersionUID = 1L;

  private final transient DeskModel model;
  private final DefaultListModel<Finding> findings = new DefaultListModel<>();
  private final JList<Finding> list = new JList<>(findings);
  private final JEditorPane detail = new JEditorPane("text/html", "");
  private boolean following;

  FindingsView(DeskModel model) {
    super(new BorderLayout());
    this.model = model;
    list.setName("findings");
    list.getAccessibleContext().setAccessibleName(Phrases.of("findings.name"));
    list.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
    list.setCellRenderer(new Row());
    list.addListSelectionListener(
        e -> {
          if (!following && !e.getValueIsAdjusting() && list.getSelectedValue() != null) {
            model.select(list.getSelectedValue());
          }
        });
    list.addMouseListener(
        new MouseAdapter() {
          @Override
          public void mouseClicked(MouseEvent e) {
            showAgain();
          }
        });
    list.registerKeyboardAction(
        e -> showAgain(), KeyStroke.getKeyStroke("ENTER"), JComponent.WHEN_FOCUSED);
    detail.putClientProperty(JEditorPane.W3C_LENGTH_UNITS, Boolean.TRUE);
    detail.setEditable(false);
    detail.setName("finding");
    detail.getAccessibleContext().setAccessibleName(Phrases.of("finding.name"));
    JScrollPane upper = new JScrollPane(list);
    upper.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
    upper.setBorder(BorderFactory.createEmptyBorder());
    JScrollPane lower = new JScrollPane(detail);
    lower.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
    lower.setBorder(BorderFactory.createEmptyBorder());
    JSplitPane split = new JSplitPane(JSplitPane.VERTICAL_SPLIT, upper, lower);
    split.setResizeWeight(0.4);
    split.setBorder(BorderFactory.createEmptyBorder());
    add(split, BorderLayout.CENTER);
    model.bench.session.watch(s -> refresh());
    model.selected.watch(s -> follow());
  }

  /** Goes to the proof of the finding that is picked out already, from wherever one is. */
  private void showAgain() {
    Finding again = list.getSelectedValue();
    if (again != null) {
      Selected now = model.selected.get();
      model.selected.set(new Selected(Optional.empty(), now.tooth(), now.instant()));
      model.select(again);
    }
  }

  void refresh() {
    following = true;
    findings.clear();
    model.examination().ifPresent(e -> findings.addAll(e.diagnosis().findings()));
    following = false;
    follow();
  }

  private void follow() {
    following = true;
    Finding now = model.selected.get().finding().orElse(null);
    if (now == null) {
      list.clearSelection();
    } else {
      list.setSelectedValue(now, true);
    }
    following = false;
    String nothing = findings.isEmpty() ? "findings.empty" : "findings.none";
    boolean blank = model.examination().isEmpty();
    detail.setText(
        now == null ? page(blank ? "" : "<p>" + Phrases.of(nothing) + "</p>") : page(now));
    detail.setCaretPosition(0);
  }

  private static String page(Finding f) {
    StringBuilder s = new StringBuilder();
    s.append("<h3>").append(escape(f.title())).append("</h3>");
    if (!f.nextTest().isEmpty()) {
      part(s, "finding.next", List.of(f.nextTest()));
    }
    if (!f.caution().isEmpty()) {
      part(s, "finding.caution", List.of(f.caution()));
    }
    part(s, "finding.evidence", f.evidence());
    part(s, "finding.against", f.against());
    part(s, "finding.apart", f.toldApartFrom());
    return page(s.toString());
  }

  private static void part(StringBuilder s, String heading, List<String> lines) {
    if (!lines.isEmpty()) {
      s.append("<p class='head'>").append(escape(Phrases.of(heading))).append("</p>");
      lines.forEach(l -> s.append("<p>").append(escape(l)).append("</p>"));
    }
  }

  private static String page(String body) {
    Color text = UIManager.getColor("Label.foreground");
    int size = Math.round(Look.regular(1).getSize2D());
    return "<html><head><style>body{font-family:'"
        + Lettering.REGULAR
        + "';font-size:"
        + size
        + "px;color:"
        + hex(text)
        + ";margin:8px 10px}h3{font-family:'"
        + Lettering.STRONG
        + "';font-size:"
        + size
        + "px;margin:0 0 4px 0}p{margin:0 0 5px 0}.head{font-family:'"
        + Lettering.STRONG
        + "';margin:7px 0 1px 0;color:"
        + hex(Look.quiet())
        + "}</style></head><body>"
        + body
        + "</body></html>";
  }

  private static String hex(Color c) {
    return String.format(java.util.Locale.ROOT, "#%06x", c.getRGB() & 0xFFFFFF);
  }

  private static String escape(String text) {
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }

  /** One finding: shape and word of its severity, and its title over as many lines as needed. */
  private static final class Row implements ListCellRenderer<Finding> {

    private final JPanel row = new JPanel(new BorderLayout(8, 0));
    private final JLabel severity = new JLabel();
    private final Prose title = new Prose();

    Row() {
      row.setBorder(BorderFactory.createEmptyBorder(7, 10, 7, 8));
      JPanel words = new JPanel(new BorderLayout());
      words.setOpaque(false);
      words.add(severity, BorderLayout.NORTH);
      words.add(title, BorderLayout.CENTER);
      row.add(words, BorderLayout.CENTER);
    }

    @Override
    public Component getListCellRendererComponent(
        JList<? extends Finding> list, Finding f, int index, boolean chosen, boolean focus) {
      Font small = Look.strong(0.9);
      severity.setFont(small);
      severity.setText(Phrases.of("severity." + f.severity().label()));
      severity.setIcon(new SeverityIcon(f.severity(), small.getSize()));
      severity.setForeground(chosen ? list.getSelectionForeground() : Look.quiet());
      title.say(f.title(), () -> Look.regular(1));
      title.setForeground(chosen ? list.getSelectionForeground() : list.getForeground());
      row.setBackground(chosen ? list.getSelectionBackground() : list.getBackground());
      int width = Math.max(60, list.getParent().getWidth() - 20);
      title.setSize(width, Short.MAX_VALUE);
      Dimension size = title.getPreferredSize();
      row.setPreferredSize(
          new Dimension(width, size.height + severity.getPreferredSize().height + 14));
      row.getAccessibleContext().setAccessibleName(severity.getText() + ": " + f.title());
      return row;
    }
  }

  /** Square for a fault, triangle for a watch, circle for a note. */
  record SeverityIcon(Severity severity, int size) implements Icon {

    @Override
    public void paintIcon(Component c, Graphics graphics, int x, int y) {
      Graphics2D g = (Graphics2D) graphics.create();
      Paint.smooth(g);
      double s = size - 2.0;
      switch (severity) {
        case FAULT -> {
          g.setColor(Look.ink().trouble());
          g.fill(new Rectangle2D.Double(x + 1, y + 1, s, s));
        }
        case WATCH -> {
          g.setColor(Look.ink().coil(0));
          Path2D p = new Path2D.Double();
          p.moveTo(x + 1 + s / 2, y + 1);
          p.lineTo(x + 1 + s, y + 1 + s);
          p.lineTo(x + 1, y + 1 + s);
          p.closePath();
          g.fill(p);
        }
        case NOTE -> {
          g.setColor(Look.ink().crank());
          g.fill(new Ellipse2D.Double(x + 1, y + 1, s, s));
        }
      }
      g.dispose();
    }

    @Override
    public int getIconWidth() {
      return size + 4;
    }

    @Override
    public int getIconHeight() {
      return size;
    }
  }
}
