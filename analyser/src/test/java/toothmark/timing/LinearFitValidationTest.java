package toothmark.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.function.DoubleFunction;
import org.junit.jupiter.api.Test;

/**
 * The regression code against certified values of the NIST Statistical Reference Datasets, linear
 * least squares regression (https://www.itl.nist.gov/div898/strd/lls/lls.shtml), and against the
 * worked example H.3 of the GUM.
 */
class LinearFitValidationTest {

  private static final double[] NORRIS_Y = {
    0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8,
    339.3, 448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5,
    778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2
  };
  private static final double[] NORRIS_X = {
    0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5,
    666.9, 338.0, 447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2,
    999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5
  };
  private static final double[] PONTIUS_Y = {
    .11019, .21956, .32949, .43899, .54803, .65694, .76562, .87487, .98292, 1.09146, 1.20001,
    1.30822, 1.41599, 1.52399, 1.63194, 1.73947, 1.84646, 1.95392, 2.06128, 2.16844, .11052, .22018,
    .32939, .43886, .54798, .65739, .76596, .87474, .98300, 1.09150, 1.20004, 1.30818, 1.41613,
    1.52408, 1.63159, 1.73965, 1.84696, 1.95445, 2.06177, 2.16829
  };
  private static final double[][] LONGLEY = {
    {60323, 83.0, 234289, 2356, 1590, 107608, 1947},
    {61122, 88.5, 259426, 2325, 1456, 108632, 1948},
    {60171, 88.2, 258054, 3682, 1616, 109773, 1949},
    {61187, 89.5, 284599, 3351, 1650, 110929, 1950},
    {63221, 96.2, 328975, 2099, 3099, 112075, 1951},
    {63639, 98.1, 346999, 1932, 3594, 113270, 1952},
    {64989, 99.0, 365385, 1870, 3547, 115094, 1953},
    {63761, 100.0, 363112, 3578, 3350, 116219, 1954},
    {66019, 101.2, 397469, 2904, 3048, 117388, 1955},
    {67857, 104.6, 419180, 2822, 2857, 118734, 1956},
    {68169, 108.4, 442769, 2936, 2798, 120445, 1957},
    {66513, 110.8, 444546, 4681, 2637, 121950, 1958},
    {68655, 112.6, 482704, 3813, 2552, 123366, 1959},
    {69564, 114.2, 502601, 3931, 2514, 125368, 1960},
    {69331, 115.7, 518173, 4806, 2572, 127852, 1961},
    {70551, 116.9, 554894, 4007, 2827, 130081, 1962}
  };

  private static LinearFit fit(double[] x, double[] y, DoubleFunction<double[]> row) {
    double[][] rows = Arrays.stream(x).mapToObj(row).toArray(double[][]::new);
    return LinearFit.of(rows, y, ones(y.length));
  }

  private static double[] ones(int n) {
    double[] w = new double[n];
    Arrays.fill(w, 1);
    return w;
  }

  /** Checks value and standard deviation of a coefficient to a relative difference. */
  private static void check(
      LinearFit fit,
      int observations,
      int index,
      double value,
      double deviation,
      double closeness) {
    double variance = fit.weightedSquares() / (observations - fit.coefficients().length);
    assertThat(fit.coefficient(index)).isCloseTo(value, within(Math.abs(value) * closeness));
    assertThat(Math.sqrt(variance * fit.covariance(index, index)))
        .isCloseTo(deviation, within(deviation * closeness));
  }

  @Test
  void norris() {
    LinearFit fit = fit(NORRIS_X, NORRIS_Y, x -> new double[] {1, x});

    check(fit, 36, 0, -0.262323073774029, 0.232818234301152, 1e-11);
    check(fit, 36, 1, 1.00211681802045, 0.429796848199937E-03, 1e-11);
    assertThat(fit.weightedSquares()).isCloseTo(26.6173985294224, within(1e-10));
  }

  @Test
  void pontius() {
    double[] x = new double[40];
    for (int i = 0; i < x.length; i++) {
      x[i] = 150000.0 * (i % 20 + 1);
    }

    LinearFit fit = fit(x, PONTIUS_Y, v -> new double[] {1, v, v * v});

    check(fit, 40, 0, 0.673565789473684E-03, 0.107938612033077E-03, 1e-9);
    check(fit, 40, 1, 0.732059160401003E-06, 0.157817399981659E-09, 1e-9);
    check(fit, 40, 2, -0.316081871345029E-14, 0.486652849992036E-16, 1e-9);
  }

  @Test
  void longley() {
    double[][] rows = new double[16][];
    double[] y = new double[16];
    for (int i = 0; i < 16; i++) {
      rows[i] = LONGLEY[i].clone();
      rows[i][0] = 1;
      y[i] = LONGLEY[i][0];
    }

    LinearFit fit = LinearFit.of(rows, y, ones(16));

    check(fit, 16, 0, -3482258.63459582, 890420.383607373, 1e-8);
    check(fit, 16, 1, 15.0618722713733, 84.9149257747669, 1e-7);
    check(fit, 16, 2, -0.358191792925910E-01, 0.334910077722432E-01, 1e-8);
    check(fit, 16, 3, -2.02022980381683, 0.488399681651699, 1e-8);
    check(fit, 16, 4, -1.03322686717359, 0.214274163161675, 1e-8);
    check(fit, 16, 5, -0.511041056535807E-01, 0.226073200069370, 1e-7);
    check(fit, 16, 6, 1829.15146461355, 455.478499142212, 1e-8);
  }

  @Test
  void regressionThroughTheOrigin() {
    double[] x1 = {60, 61, 62, 63, 64, 65, 66, 67, 68, 69, 70};
    double[] y1 = {130, 131, 132, 133, 134, 135, 136, 137, 138, 139, 140};

    check(
        fit(x1, y1, x -> new double[] {x}), 11, 0, 2.07438016528926, 0.165289256198347E-01, 1e-12);
    check(
        fit(new double[] {4, 5, 6}, new double[] {3, 4, 4}, x -> new double[] {x}),
        3,
        0,
        0.727272727272727,
        0.420827318078432E-01,
        1e-12);
  }

  /**
   * Calibration of a thermometer, JCGM 100:2008, H.3: published y1 -0.1712(29), y2 0.00218(67),
   * correlation -0.930, b(30) -0.1494 with u 0.0041. It is the problem of offset and slope, and of
   * the value at a place outside the readings.
   */
  @Test
  void thermometer() {
    double[] t = {
      21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511
    };
    double[] b = {
      -0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160
    };

    LinearFit fit = fit(t, b, x -> new double[] {1, x - 20});

    double variance = fit.weightedSquares() / 9;
    assertThat(fit.coefficient(0)).isCloseTo(-0.1712, within(5e-5));
    assertThat(Math.sqrt(variance * fit.covariance(0, 0))).isCloseTo(0.0029, within(5e-5));
    assertThat(fit.coefficient(1)).isCloseTo(0.00218, within(5e-6));
    assertThat(Math.sqrt(variance * fit.covariance(1, 1))).isCloseTo(0.00067, within(5e-6));
    assertThat(fit.covariance(0, 1) / Math.sqrt(fit.covariance(0, 0) * fit.covariance(1, 1)))
        .isCloseTo(-0.930, within(5e-4));
    assertThat(Math.sqrt(variance)).isCloseTo(0.0035, within(5e-5));
    Line line =
        new Line(
            20,
            fit.coefficient(0),
            -fit.coefficient(1) / Line.DEGREES,
            variance * fit.covariance(0, 0),
            variance * fit.covariance(1, 1) / (Line.DEGREES * Line.DEGREES),
            -variance * fit.covariance(0, 1) / Line.DEGREES);
    assertThat(line.at(30)).isCloseTo(-0.1494, within(5e-5));
    assertThat(Math.sqrt(line.varianceAt(30))).isCloseTo(0.0041, within(5e-5));
  }

  @Test
  void theNormalEquationsAgreeOnWellScaledColumns() {
    double[][] rows =
        Arrays.stream(NORRIS_X).mapToObj(x -> new double[] {1, x / 1000}).toArray(double[][]::new);

    assertThat(NormalEquations.of(rows, NORRIS_Y).solve().residualSquares())
        .isCloseTo(26.6173985294224, within(1e-7));
  }

  /** Few observations cannot show how errors follow each other; the ordinary fit is left. */
  @Test
  void ofFewReadingsTheGeneralisedFitIsTheOrdinaryOne() {
    double[] x = {60, 61, 62, 63, 64, 65, 66, 67, 68, 69, 70};
    double[] y = {130, 131, 132, 133, 134, 135, 136, 137, 138, 139, 140};
    double[][] rows = Arrays.stream(x).mapToObj(v -> new double[] {v}).toArray(double[][]::new);

    double[] even = new double[11];
    Arrays.fill(even, 1);

    CorrelatedFit fit = CorrelatedFit.of(rows, y, new CorrelatedFit.Sizes(new double[11], even));

    assertThat(fit.coefficient(0)).isCloseTo(2.07438016528926, within(1e-12));
    assertThat(Math.sqrt(fit.covariance(0, 0)))
        .as("NIST NoInt1; the variance is sought in steps of less than 1 %")
        .isCloseTo(0.165289256198347E-01, within(0.01 * 0.0165));
  }
}
