package toothmark.capture.wav;

import java.nio.ByteBuffer;

/** How one sample is written; full scale is ±1. */
enum SampleFormat {
  /** Unsigned bytes, 128 in the middle. */
  PCM_8("8-bit PCM", 1) {
    @Override
    double value(ByteBuffer b, int at) {
      return ((b.get(at) & 0xFF) - 128) * 0x1p-7;
    }
  },
  PCM_16("16-bit PCM", 2) {
    @Override
    double value(ByteBuffer b, int at) {
      return b.getShort(at) * 0x1p-15;
    }
  },
  PCM_24("24-bit PCM", 3) {
    @Override
    double value(ByteBuffer b, int at) {
      return (b.getShort(at) & 0xFFFF | b.get(at + 2) << 16) * 0x1p-23;
    }
  },
  PCM_32("32-bit PCM", 4) {
    @Override
    double value(ByteBuffer b, int at) {
      return b.getInt(at) * 0x1p-31;
    }
  },
  FLOAT_32("32-bit float", 4) {
    @Override
    double value(ByteBuffer b, int at) {
      return finite(b.getFloat(at));
    }
  },
  FLOAT_64("64-bit float", 8) {
    @Override
    double value(ByteBuffer b, int at) {
      return finite(b.getDouble(at));
    }
  };

  final String text;
  final int bytes;

  SampleFormat(String text, int bytes) {
    this.text = text;
    this.bytes = bytes;
  }

  /** The format of a number of bytes; null when there is none. */
  static SampleFormat of(boolean isFloat, int bytes) {
    for (SampleFormat f : values()) {
      if (f.isFloat() == isFloat && f.bytes == bytes) {
        return f;
      }
    }
    return null;
  }

  boolean isFloat() {
    return this == FLOAT_32 || this == FLOAT_64;
  }

  /** The sample whose first byte is at an index. */
  abstract double value(ByteBuffer b, int at);

  /** Not a number reads as 0, beyond all numbers as full scale. */
  private static double finite(double v) {
    if (Double.isFinite(v)) {
      return v;
    }
    return Double.isNaN(v) ? 0 : Math.signum(v);
  }
}
