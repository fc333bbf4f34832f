package toothmark.simulator.file;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import toothmark.simulator.SimulatedCapture;
import toothmark.simulator.Trace;

/** Writes voltages as sixteen-bit sound, each channel scaled to just fit full scale. */
final class WavFile {
  private static final double ROOM = 1.05;

  private WavFile() {}

  static byte[] bytes(SimulatedCapture capture) {
    List<Trace.Analogue> traces = new ArrayList<>();
    capture.traces().forEach(t -> traces.add((Trace.Analogue) t));
    int rows = traces.get(0).size();
    int data = rows * traces.size() * 2;
    ByteBuffer out = ByteBuffer.allocate(44 + data).order(ByteOrder.LITTLE_ENDIAN);
    int rate = (int) Math.round(capture.sampleRateHz());
    out.put(ascii("RIFF")).putInt(36 + data).put(ascii("WAVEfmt ")).putInt(16);
    out.putShort((short) 1).putShort((short) traces.size()).putInt(rate);
    out.putInt(rate * traces.size() * 2).putShort((short) (traces.size() * 2));
    out.putShort((short) 16).put(ascii("data")).putInt(data);
    double[] scale = traces.stream().mapToDouble(WavFile::scale).toArray();
    for (int row = 0; row < rows; row++) {
      for (int c = 0; c < traces.size(); c++) {
        out.putShort((short) Math.rint(traces.get(c).volts(row) * scale[c]));
      }
    }
    return out.array();
  }

  private static double scale(Trace.Analogue trace) {
    double peak = 1e-6;
    for (int i = 0; i < trace.size(); i++) {
      peak = Math.max(peak, Math.abs(trace.volts(i)));
    }
    return Short.MAX_VALUE / (ROOM * peak);
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }
}
