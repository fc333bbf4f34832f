package toothmark.capture.wav;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.UnsupportedCaptureException;

/**
 * How the samples of a wave file are written.
 *
 * @param coding whole numbers or floating point
 * @param channels 1 or more
 * @param sampleRateHz samples a second of each channel
 * @param bytes of one sample of one channel
 */
record WavFormat(Coding coding, int channels, long sampleRateHz, int bytes) {

  private static final int PCM = 1;
  private static final int FLOAT = 3;
  private static final int EXTENSIBLE = 0xFFFE;
  private static final int SUBFORMAT = 24;
  private static final int MOST_CHANNELS = 64;

  enum Coding {
    WHOLE,
    FLOATING
  }

  static WavFormat parse(String file, byte[] chunk)
      throws UnreadableCaptureException, UnsupportedCaptureException {
    if (chunk.length < 16) {
      throw new UnreadableCaptureException(
          file + ": the format chunk holds " + chunk.length + " bytes, not 16; export it again");
    }
    ByteBuffer b = ByteBuffer.wrap(chunk).order(ByteOrder.LITTLE_ENDIAN);
    int tag = b.getShort(0) & 0xFFFF;
    if (tag == EXTENSIBLE && chunk.length >= SUBFORMAT + 2) {
      tag = b.getShort(SUBFORMAT) & 0xFFFF;
    }
    int channels = b.getShort(2) & 0xFFFF;
    long rate = b.getInt(4) & 0xFFFFFFFFL;
    int bits = b.getShort(14) & 0xFFFF;
    boolean whole = tag == PCM && (bits == 8 || bits == 16 || bits == 24 || bits == 32);
    boolean floating = tag == FLOAT && (bits == 32 || bits == 64);
    if (!whole && !floating) {
      throw new UnsupportedCaptureException(
          file
              + ": sound of coding "
              + tag
              + " with "
              + bits
              + " bits is not supported; export it as PCM of 8 to 32 bits or as floating point");
    }
    if (channels < 1 || channels > MOST_CHANNELS || rate < 1) {
      throw new UnreadableCaptureException(
          file + ": " + channels + " channels at " + rate + " Hz make no sense; export it again");
    }
    return new WavFormat(whole ? Coding.WHOLE : Coding.FLOATING, channels, rate, bits / 8);
  }

  int frameBytes() {
    return channels * bytes;
  }

  /** A sample as a share of full scale, -1 to 1. Eight bits are unsigned, all others signed. */
  double sample(ByteBuffer from, int at) {
    if (coding == Coding.FLOATING) {
      return bytes == 4 ? from.getFloat(at) : from.getDouble(at);
    }
    return switch (bytes) {
      case 1 -> ((from.get(at) & 0xFF) - 128) / 128.0;
      case 2 -> from.getShort(at) / 32768.0;
      case 3 -> ((from.get(at) & 0xFF) | from.getShort(at + 1) << 8) / 8388608.0;
      default -> from.getInt(at) / 2147483648.0;
    };
  }
}
