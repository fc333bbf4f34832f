package toothmark.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.Arrays;
import java.util.Random;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.junit.jupiter.api.Test;
import toothmark.capture.SampledSignal;

class QuickCurveLayerTest {

  private static final int WIDTH = 200;
  private static final int HEIGHT = 100;
  private static final int PER_COLUMN = 50;
  private static final Random RANDOM = new Random(5);

  @Test
  void aColumnReachesFromTheLowestToTheHighestSampleInIt() {
    double[] samples = noise(WIDTH * PER_COLUMN);
    Picture picture = new Picture(1, samples);
    // the sample on the edge between two columns is in both
    for (int x = 1; x < WIDTH - 1; x++) {
      double[] in = Arrays.copyOfRange(samples, x * PER_COLUMN, (x + 1) * PER_COLUMN + 1);
      assertThat(picture.highest(x)).isCloseTo(Arrays.stream(in).max().orElseThrow(), within(1.01));
      assertThat(picture.lowest(x)).isCloseTo(Arrays.stream(in).min().orElseThrow(), within(1.01));
      assertThat(picture.breaks(x)).isZero();
    }
  }

  @Test
  void aSpikeIsAsThickAsTheTypeIsLarge() {
    double[] samples = noise(WIDTH * PER_COLUMN);
    samples[120 * PER_COLUMN + 7] = 90;
    for (int scale = 1; scale <= 3; scale++) {
      Picture picture = new Picture(scale, samples);
      int columns = 0;
      for (int x = 0; x < WIDTH * scale; x++) {
        if (picture.highest(x) > 80) {
          assertThat(x).isBetween(119 * scale, 121 * scale + scale);
          columns++;
        }
      }
      assertThat(columns).isBetween(scale, scale + 1);
    }
  }

  @Test
  void aSteepLineHasNoHolesAtAnyScale() {
    double[] samples = new double[WIDTH * PER_COLUMN];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = 50 + 45 * Math.sin(i * 2 * Math.PI / (7.3 * PER_COLUMN));
    }
    for (double scale : new double[] {0.75, 1, 1.1, 1.7, 2}) {
      Picture picture = new Picture(scale, samples);
      for (int x = 2; x < (int) (WIDTH * scale) - 2; x++) {
        assertThat(picture.breaks(x)).isZero();
        assertThat(picture.lowest(x)).isLessThanOrEqualTo(picture.highest(x + 1) + 1 / scale);
        assertThat(picture.lowest(x + 1)).isLessThanOrEqualTo(picture.highest(x) + 1 / scale);
      }
    }
  }

  @Test
  void aPauseStaysEmpty() {
    int size = WIDTH * PER_COLUMN;
    double[] times = new double[size];
    for (int i = 0; i < size; i++) {
      times[i] = i < size / 2 ? 0.8 * i : size - 0.8 * (size - i);
    }
    Picture picture = new Picture(1, new SeriesCurve(times, noise(size), 2), size);
    for (int x = 1; x < WIDTH - 1; x++) {
      assertThat(picture.isEmpty(x)).isEqualTo(x >= 80 && x < 120);
    }
  }

  private static double[] noise(int n) {
    return RANDOM.doubles(n, 20, 60).toArray();
  }

  /** A signal of one sample a second, drawn over its whole length between 0 and 100. */
  private static final class Picture {

    private final BufferedImage image;
    private final double scale;

    Picture(double scale, double... samples) {
      this(scale, SignalCurve.of(SampledSignal.of(0, 1, samples)).orElseThrow(), samples.length);
    }

    Picture(double scale, Curve curve, double seconds) {
      this.scale = scale;
      int w = (int) (WIDTH * scale);
      image = new BufferedImage(w, (int) (HEIGHT * scale), BufferedImage.TYPE_INT_ARGB);
      Graphics2D g = image.createGraphics();
      g.scale(scale, scale);
      NumberAxis across = new NumberAxis();
      across.setRange(0, seconds);
      NumberAxis up = new NumberAxis();
      up.setRange(0, HEIGHT);
      Frame frame =
          new Frame(
              new Rectangle2D.Double(0, 0, WIDTH, HEIGHT),
              across,
              up,
              new XYPlot(null, across, up, null));
      new QuickCurveLayer(curve, Color.BLACK).paint(g, frame);
      assertThat(g.getTransform().getScaleX()).isEqualTo(scale);
      g.dispose();
    }

    private boolean inked(int x, int y) {
      return image.getRGB(x, y) >>> 24 != 0;
    }

    double highest(int x) {
      int y = 0;
      while (!inked(x, y)) {
        y++;
      }
      return HEIGHT - y / scale;
    }

    double lowest(int x) {
      int y = image.getHeight() - 1;
      while (!inked(x, y)) {
        y--;
      }
      return HEIGHT - (y + 1) / scale;
    }

    int breaks(int x) {
      int breaks = -1;
      for (int y = 1; y < image.getHeight(); y++) {
        breaks += inked(x, y) && !inked(x, y - 1) ? 1 : 0;
      }
      return breaks;
    }

    boolean isEmpty(int x) {
      return breaks(x) < 0;
    }
  }
}
