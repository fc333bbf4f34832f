package toothmark.speed;

import java.nio.file.Path;
import toothmark.capture.Capture;
import toothmark.capture.CaptureReader;
import toothmark.capture.ReadingOptions;
import toothmark.edges.CrankEdges;
import toothmark.edges.EdgeDetector;
import toothmark.wheel.WheelIdentifier;
import toothmark.wheel.WheelPattern;

/** Times how long a wheel takes to be named, in a process that has done nothing like it before. */
public final class Identification {

  private Identification() {}

  /**
   * Reads a capture, finds the edges of its first channel and names the wheel.
   *
   * @param arguments the capture; the wheel and the seconds of its naming alone are printed
   * @throws Exception if it cannot be read
   */
  public static void main(String[] arguments) throws Exception {
    Path file = Path.of(arguments[0]);
    try (Capture capture = CaptureReader.read(file, ReadingOptions.withDefaults())) {
      CrankEdges edges = EdgeDetector.withDefaults().detect(capture.channels().get(0).signal());
      double start = System.nanoTime() / 1e9;
      WheelPattern wheel =
          WheelIdentifier.withDefaults().identify(edges).found().orElseThrow().pattern();
      System.out.println(wheel + " " + (System.nanoTime() / 1e9 - start));
    }
  }
}
