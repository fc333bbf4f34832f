package toothmark.chart;

import java.util.Arrays;

/** Instants in time order, each with a word, so that those in view are found at once. */
record Instants(double[] times, String[] words) {

  static Instants of(double[] times) {
    return new Instants(times, new String[0]);
  }

  int size() {
    return times.length;
  }

  String word(int i) {
    return words.length == 0 ? "" : words[i];
  }

  /** Index of the first instant not before a time. */
  int from(double time) {
    int i = Arrays.binarySearch(times, time);
    if (i < 0) {
      return -i - 1;
    }
    while (i > 0 && times[i - 1] == time) {
      i--;
    }
    return i;
  }
}
