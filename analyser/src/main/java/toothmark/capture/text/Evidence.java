package toothmark.capture.text;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** Some lines from which the layout is guessed: the first of the head, its last, and from spots. */
final class Evidence {

  private static final int FIRST = 12;
  private static final int LAST = 24;
  private static final int FROM_A_SPOT = 6;
  private static final long WORTH_SPOTS = 1 << 20;

  private final List<String> first = new ArrayList<>();
  private final List<String> body = new ArrayList<>();

  Evidence(TextInput input, HeadLines head) throws IOException {
    for (int i = 0; i < head.size() && first.size() < FIRST; i++) {
      add(first, head.line(i));
    }
    for (int i = Math.max(0, head.size() - LAST); i < head.size(); i++) {
      add(body, head.line(i));
    }
    if (input.source().hasSpots() && input.source().storedSize() > WORTH_SPOTS) {
      for (double share : new double[] {0.3, 0.6, 0.9}) {
        HeadLines spot = new HeadLines(input, input.spot(share), false);
        for (int i = 1; i < spot.size() && i <= FROM_A_SPOT; i++) {
          add(body, spot.line(i));
        }
      }
    }
  }

  private static void add(List<String> lines, String line) {
    if (!line.isBlank()) {
      lines.add(line);
    }
  }

  /** Lines at the start: preamble, header, perhaps rows. */
  List<String> first() {
    return first;
  }

  /** Lines that are rows of numbers, unless the file is very short. */
  List<String> body() {
    return body;
  }
}
