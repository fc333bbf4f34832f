package toothmark.wheel;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.util.KthSelector;

/**
 * The normal equations of a fit to many windows, summed by blocks so that the fit can be told by
 * how its parts agree (jackknife), each unknown held by a prior.
 */
final class BlockedEquations {

  static final int BLOCKS = 8;

  /** Of no block. */
  static final int NONE = -1;

  /** However steady the edges, the crank's motion is not known better than their floor. */
  private static final double LEAST_SCALE = 1;

  private final List<GeometryWindow> windows;
  private final double[] prior;
  private final int unknowns;
  private double[][][] normal;
  private RealVector[] right;
  private double scale = 1;

  /**
   * Prepares equations.
   *
   * @param windows what is fitted
   * @param prior standard deviation of each unknown; may be changed between solutions
   */
  BlockedEquations(List<GeometryWindow> windows, double[] prior) {
    this.windows = windows;
    this.prior = prior;
    this.unknowns = prior.length;
  }

  /** How far passings are off the fit, in their uncertainties. */
  double scale() {
    return scale;
  }

  /**
   * Sums the normal equations by blocks of windows, with less weight to what is known not to fit.
   *
   * @param known the unknowns as last found
   * @param ripple how free each window's ripple is
   * @param robust whether to give less weight
   */
  void accumulate(RealVector known, GeometryWindow.Ripple ripple, boolean robust) {
    double[][][] sums = new double[BLOCKS][unknowns][unknowns];
    double[][] sides = new double[BLOCKS][unknowns];
    double[][] residuals = new double[windows.size()][];
    eachBlock(
        (b, w) -> {
          GeometryWindow.Rows plain = windows.get(w).rows(ripple);
          residuals[w] = plain.residuals(known);
          if (!robust) {
            plain.addTo(sums[b], sides[b]);
          }
        });
    double[] r = new double[Arrays.stream(residuals).mapToInt(of -> of.length).sum()];
    int n = 0;
    for (double[] of : residuals) {
      for (double x : of) {
        r[n++] = Math.abs(x);
      }
    }
    scale = Math.max(LEAST_SCALE, 1.4826 * new KthSelector().select(r, null, n / 2));
    if (robust) {
      eachBlock(
          (b, w) ->
              windows.get(w).robustRows(ripple, residuals[w], scale).addTo(sums[b], sides[b]));
    }
    normal = sums;
    right = Arrays.stream(sides).map(ArrayRealVector::new).toArray(RealVector[]::new);
  }

  /** Takes blocks side by side and the windows of each in order, so that sums do not vary. */
  private void eachBlock(BlockWork work) {
    int n = windows.size();
    IntStream.range(0, BLOCKS)
        .parallel()
        .forEach(
            b -> {
              for (int w = (b * n + BLOCKS - 1) / BLOCKS; w * BLOCKS / n == b; w++) {
                work.take(b, w);
              }
            });
  }

  private interface BlockWork {
    void take(int block, int window);
  }

  /**
   * Solves all blocks together, or all but one.
   *
   * @param without the block to leave out; {@link #NONE}
   */
  RealVector solve(int without) {
    return decompose(without).getSolver().solve(sum(right, without));
  }

  private CholeskyDecomposition decompose(int without) {
    double[][] a = new double[unknowns][unknowns];
    for (int i = 0; i < unknowns; i++) {
      for (int b = 0; b < BLOCKS; b++) {
        for (int j = i; b != without && j < unknowns; j++) {
          a[i][j] += normal[b][i][j];
        }
      }
      a[i][i] += scale * scale / (prior[i] * prior[i]);
      for (int j = 0; j < i; j++) {
        a[i][j] = a[j][i];
      }
    }
    return new CholeskyDecomposition(new Array2DRowRealMatrix(a, false), 1e-9, 1e-14);
  }

  private static RealVector sum(RealVector[] parts, int without) {
    RealVector s = new ArrayRealVector(parts[0].getDimension());
    for (int b = 0; b < parts.length; b++) {
      s = b == without ? s : s.add(parts[b]);
    }
    return s;
  }

  /** Covariance of the unknowns by what the fit leaves open. */
  RealMatrix left() {
    return decompose(NONE).getSolver().getInverse().scalarMultiply(scale * scale);
  }
}
