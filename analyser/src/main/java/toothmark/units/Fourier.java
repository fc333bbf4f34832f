package toothmark.units;

import org.jtransforms.fft.DoubleFFT_1D;
import org.jtransforms.utils.CommonUtils;

/** The Fourier transform of evenly spaced real values. */
public final class Fourier {

  static {
    // threads of the library's own swallow the interrupt by which work is called off
    CommonUtils.setThreadsBeginN_1D_FFT_2Threads(Integer.MAX_VALUE);
    CommonUtils.setThreadsBeginN_1D_FFT_4Threads(Integer.MAX_VALUE);
  }

  private Fourier() {}

  /**
   * Transforms in place, on the calling thread.
   *
   * @param values n real values, n even; after it the real and imaginary parts of the first n/2
   *     frequencies by turns, the real part of frequency n/2 in the place of the first's imaginary
   *     one
   */
  public static void forward(double[] values) {
    new DoubleFFT_1D(values.length).realForward(values);
  }
}
