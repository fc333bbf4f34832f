package toothmark.chart;

import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.XYPlot;

/** Where the values of a plot's axes lie on the paper. */
record Frame(Rectangle2D area, ValueAxis xAxis, ValueAxis yAxis, XYPlot plot) {

  double x(double value) {
    return xAxis.valueToJava2D(value, area, plot.getDomainAxisEdge());
  }

  double y(double value) {
    return yAxis.valueToJava2D(value, area, plot.getRangeAxisEdge());
  }

  double fromX() {
    return xAxis.getLowerBound();
  }

  double toX() {
    return xAxis.getUpperBound();
  }

  /** Puts the points of a line on the paper. */
  Curve.Line onto(Path2D path) {
    return new Curve.Line() {
      @Override
      public void moveTo(double x, double y) {
        path.moveTo(x(x), y(y));
      }

      @Override
      public void lineTo(double x, double y) {
        path.lineTo(x(x), y(y));
      }
    };
  }

  /** Columns of one unit across the plot. */
  int columns() {
    return Math.max(1, (int) Math.ceil(area.getWidth()));
  }

  boolean showsX(double value) {
    return value >= xAxis.getLowerBound() && value <= xAxis.getUpperBound();
  }
}
