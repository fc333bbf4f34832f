package toothmark.report;

import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import toothmark.chart.Figure;
import toothmark.chart.Ink;
import toothmark.chart.Lettering;

/** Lays the elements of a page out on sheets. */
final class PrintedPage {

  private static final Set<String> INLINE = Set.of("a", "span");
  private static final Set<String> STRONG = Set.of("label", "name");

  /** Charts are laid out this wide, so that their type of 12 prints at 9 points. */
  private static final double CHART_WIDTH = PageFlow.WIDTH * 12 / 9;

  private final PageFigures figures;
  private final PageFlow flow;

  PrintedPage(PageFigures figures, PageFlow flow) {
    this.figures = figures;
    this.flow = flow;
  }

  /** Lays out what is inside an element. */
  void lay(Element parent) {
    List<Node> inline = new ArrayList<>();
    for (Node child : children(parent)) {
      if (child instanceof Element e && !INLINE.contains(e.getTagName())) {
        paragraph(inline, parent);
        inline.clear();
        block(e);
      } else {
        inline.add(child);
      }
    }
    paragraph(inline, parent);
  }

  private void block(Element e) {
    switch (e.getTagName()) {
      case "nav", "svg" -> {} // for the screen only
      case "table" -> table(e);
      default -> part(e);
    }
  }

  private void part(Element e) {
    switch (e.getAttribute("class")) {
      case "chart" -> chart(e);
      case "masthead", "signature" -> lines(List.of(look(e).saying(oneLine(e))), e);
      case "notes quiet" ->
          e.getTextContent().lines().forEach(l -> lines(List.of(look(e).saying(l)), e));
      case "customer" -> {
        flow.breakSheet();
        lay(e);
      }
      default -> lay(e);
    }
  }

  private static String oneLine(Element e) {
    return spans(e).stream().map(Node::getTextContent).collect(Collectors.joining(" · "));
  }

  private static List<Element> spans(Element e) {
    return children(e).stream()
        .filter(n -> n.getNodeName().equals("span"))
        .map(Element.class::cast)
        .toList();
  }

  /** Inline nodes one after the other; a badge at their head says how they look. */
  private void paragraph(List<Node> nodes, Element parent) {
    Element dress =
        !nodes.isEmpty() && nodes.get(0) instanceof Element e && PrintStyle.isBadge(e) ? e : parent;
    List<TextRun> runs = runs(nodes, look(dress));
    if (!runs.stream().allMatch(r -> r.text().isBlank())) {
      lines(runs, dress);
    }
  }

  private void lines(List<TextRun> runs, Element dress) {
    PrintStyle style = PrintStyle.of(dress);
    boolean caption = dress.getParentNode().getNodeName().equals("figcaption");
    PageFlow.Keep keep = caption ? PageFlow.Keep.WITH_NEXT : style.keep();
    flow.add(new PageFlow.Space(style.above()), PageFlow.Keep.WITH_NEXT);
    boolean first = true;
    for (TextLine line : TextLine.broken(runs, PageFlow.WIDTH - style.indent())) {
      flow.add(new Line(line, style, first), keep);
      first = false;
    }
  }

  private static TextRun look(Element e) {
    return dressed(new TextRun("", PrintStyle.of(e).font(), Ink.LIGHT.text()), e);
  }

  private static TextRun dressed(TextRun look, Element e) {
    String role = e.getAttribute("class");
    boolean quiet = role.endsWith("quiet") || role.equals("basis") || role.equals("captured");
    return new TextRun(
        "",
        STRONG.contains(role) ? Lettering.strong(look.font().getSize2D()) : look.font(),
        quiet ? Ink.LIGHT.quiet() : look.colour());
  }

  private static List<TextRun> runs(List<Node> nodes, TextRun look) {
    List<TextRun> runs = new ArrayList<>();
    for (Node n : nodes) {
      if (n instanceof Element e) {
        runs.addAll(runs(children(e), dressed(look, e)));
        runs.add(look.saying(PrintStyle.isBadge(e) ? ", " : ""));
      } else {
        runs.add(look.saying(n.getTextContent().replaceAll("\\s+", " ")));
      }
    }
    return runs;
  }

  private void table(Element e) {
    PrintedTable table = new PrintedTable();
    NodeList rows = e.getElementsByTagName("tr");
    for (int i = 0; i < rows.getLength(); i++) {
      table.add(
          children(rows.item(i)).stream()
              .filter(Element.class::isInstance)
              .map(c -> cell((Element) c))
              .toList());
    }
    flow.add(new PageFlow.Space(PrintStyle.BODY.above()), PageFlow.Keep.WITH_NEXT);
    table.blocks(PageFlow.WIDTH).forEach(b -> flow.add(b, PageFlow.Keep.FREE));
  }

  private static PrintedTable.Cell cell(Element e) {
    boolean right = e.getAttribute("class").equals("right");
    return new PrintedTable.Cell(
        runs(children(e), look(e)), right ? PrintedTable.Side.RIGHT : PrintedTable.Side.LEFT);
  }

  private void chart(Element e) {
    Element svg = (Element) e.getElementsByTagName("svg").item(0);
    String id = ((Element) svg.getElementsByTagName("g").item(0)).getAttribute("id");
    flow.add(new PageFlow.Space(PrintStyle.BODY.above()), PageFlow.Keep.WITH_NEXT);
    flow.add(new Chart(figures.drawn(id).figure()), PageFlow.Keep.FREE);
  }

  private static List<Node> children(Node parent) {
    NodeList all = parent.getChildNodes();
    return IntStream.range(0, all.getLength()).mapToObj(all::item).toList();
  }

  private record Line(TextLine text, PrintStyle style, boolean first) implements PageFlow.Block {

    @Override
    public double height() {
      return text.height();
    }

    @Override
    public void draw(Graphics2D g, double x, double y) {
      style
          .mark(height(), first)
          .ifPresent(
              m -> {
                g.setPaint(m.colour());
                g.fill(
                    AffineTransform.getTranslateInstance(x, y).createTransformedShape(m.shape()));
              });
      text.draw(g, x + style.indent(), y);
    }
  }

  private record Chart(Figure figure) implements PageFlow.Block {

    private static final double SCALE = PageFlow.WIDTH / CHART_WIDTH;

    @Override
    public double height() {
      return figure.height() * SCALE;
    }

    @Override
    public void draw(Graphics2D g, double x, double y) {
      AffineTransform kept = g.getTransform();
      g.translate(x, y);
      g.scale(SCALE, SCALE);
      Rectangle2D area = new Rectangle2D.Double(0, 0, CHART_WIDTH, figure.height());
      g.clip(area); // a name that is longer than its axis stays off the text above
      figure.chart().draw(g, area);
      g.setClip(null);
      g.setTransform(kept);
    }
  }
}
