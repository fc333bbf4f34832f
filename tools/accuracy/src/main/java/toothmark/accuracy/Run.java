package toothmark.accuracy;

import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;

/** One run of a suite: how large, how far, and the section it writes. */
public final class Run {

  private final double size;
  private final Section section;

  Run(double size, Section section) {
    this.size = size;
    this.section = section;
  }

  /**
   * Where tables, charts and worst cases go.
   *
   * @return the section
   */
  public Section section() {
    return section;
  }

  /**
   * How many captures to make.
   *
   * @param full number at full size
   * @return scaled, at least 1
   */
  public int captures(int full) {
    return (int) Math.max(1, Math.round(full * size));
  }

  /**
   * Measures the captures of one setting, on all cores.
   *
   * @param study their study
   * @param setting what they have in common
   * @param captures how many
   * @param measure what to do with one
   * @param <T> what comes of one
   * @return in the order of their numbers
   */
  public <T> List<T> measure(
      Study study, String setting, int captures, Function<CaseName, T> measure) {
    System.err.printf("%s/%s: %d captures%n", study.name(), setting, captures);
    return IntStream.range(0, captures)
        .parallel()
        .mapToObj(i -> measure.apply(new CaseName(study.name(), setting, i)))
        .toList();
  }
}
