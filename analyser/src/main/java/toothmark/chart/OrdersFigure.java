package toothmark.chart;

import java.awt.Graphics2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jfree.chart.axis.NumberAxis;
import toothmark.chart.LabelsLayer.Label;
import toothmark.chart.LabelsLayer.Place;
import toothmark.examination.Examination;
import toothmark.units.Say;

/** How often in a turn the speed swings, and how much. */
final class OrdersFigure {

  private static final int HEIGHT = 220;
  private static final double HIGHEST = 16;
  private static final int PEAKS = 4;

  /** Half orders above this are weak whatever the cylinders do. */
  private static final double LAST_HALF = 4;

  /** Peaks under this share of the highest are not named. */
  private static final double LEAST_SHARE = 0.05;

  private final Examination examination;
  private final Ink ink;

  OrdersFigure(Examination examination, Ink ink) {
    this.examination = examination;
    this.ink = ink;
  }

  Optional<Figure> draw() {
    return examination.observations().crank().flatMap(OrderSpectrum::of).map(this::draw);
  }

  private Figure draw(OrderSpectrum spectrum) {
    Points points = new Points();
    for (int i = 1; i < spectrum.size() && spectrum.order(i) <= HIGHEST; i++) {
      points.add(spectrum.order(i), spectrum.percent(i));
    }
    List<Integer> peaks = peaks(points);
    List<Label> labels = new ArrayList<>();
    for (int i : peaks) {
      labels.add(new Label(points.x(i), points.y(i), name(points.x(i)), Place.ABOVE, ink.text()));
    }
    NumberAxis up = Axes.linear(Wording.of("axis.swing"), 0.1, ink);
    up.setUpperMargin(0.15);
    return new Figure(
        Wording.of("orders.question"),
        Wording.of(
            "orders.answer",
            order(points.x(peaks.get(0))),
            Say.number(points.y(peaks.get(0)), 2) + Say.THIN + "%",
            Integer.toString(spectrum.turns())),
        Plots.chart(
            Plots.plot(
                Axes.linear(Wording.of("axis.order"), 1, ink),
                up,
                List.of(
                    new StemsLayer(points, 0, 1.2, ink.crank()),
                    new HalfOrders(points),
                    new LabelsLayer(labels, Lettering.regular(11), ink.paper())),
                ink)),
        HEIGHT);
  }

  /** The largest peaks, at least half an order apart. */
  private static List<Integer> peaks(Points points) {
    List<Integer> byHeight = new ArrayList<>();
    for (int i = 0; i < points.size(); i++) {
      byHeight.add(i);
    }
    byHeight.sort((a, b) -> Double.compare(points.y(b), points.y(a)));
    List<Integer> peaks = new ArrayList<>();
    for (int i : byHeight) {
      boolean clear = peaks.stream().allMatch(p -> Math.abs(points.x(p) - points.x(i)) >= 0.4);
      boolean high = peaks.isEmpty() || points.y(i) > LEAST_SHARE * points.y(peaks.get(0));
      if (clear && high && peaks.size() < PEAKS) {
        peaks.add(i);
      }
    }
    return peaks;
  }

  private String name(double order) {
    int cylinders = examination.observations().stated().cylinders();
    boolean firing = cylinders > 0 && Math.abs(order - cylinders / 2.0) < 0.1;
    return firing ? Wording.of("orders.firing", order(order)) : order(order);
  }

  private static String order(double order) {
    double half = Math.rint(order * 2) / 2;
    return Math.abs(order - half) < 0.1
        ? Say.number(half, half == Math.rint(half) ? 0 : 1)
        : Say.number(order, 2);
  }

  /** Rings what a finding about single cylinders rests on: what comes every second turn. */
  private record HalfOrders(Points points) implements Layer {

    private static final String FINDING = "uneven-cylinders";

    @Override
    public void paint(Graphics2D g, Frame frame) {
      // drawn only while picked out
    }

    @Override
    public void mark(Graphics2D g, Frame frame, Picked picked, Ink ink) {
      if (picked.finding().filter(f -> f.id().equals(FINDING)).isEmpty()) {
        return;
      }
      for (double order = 0.5; order < LAST_HALF; order++) {
        double wanted = order;
        IntStream.range(0, points.size())
            .boxed()
            .min(Comparator.comparingDouble(i -> Math.abs(points.x(i) - wanted)))
            .ifPresent(i -> Links.ring(g, frame.x(points.x(i)), frame.y(points.y(i)), ink));
      }
    }
  }
}
