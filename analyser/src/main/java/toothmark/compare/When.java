package toothmark.compare;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * When a capture was made, as well as it is known.
 *
 * @param day in local time
 * @param time time of that day, to the second; empty where only the day is known
 * @param source what tells it
 */
public record When(LocalDate day, Optional<LocalTime> time, Source source) {

  /** As in 2026-05-31 or 20260531. */
  private static final Pattern DAY = Pattern.compile("(?<!\\d)(\\d{4})-?(\\d{2})-?(\\d{2})(?!\\d)");

  /** Behind it, as in _14-30, " 14.30.05", -143005 or T1430; four figures alone may be a speed. */
  private static final List<Pattern> TIMES =
      Stream.of(
              "[T _-]+(\\d{2})[-.:h](\\d{2})(?:[-.:m](\\d{2}))?",
              "[T _-]+(\\d{2})(\\d{2})(\\d{2})", "T(\\d{2})(\\d{2})()")
          .map(time -> Pattern.compile(time + "(?![\\dA-Za-z])"))
          .toList();

  /** What tells when a capture was made. */
  public enum Source {
    /** The name of a file or folder. */
    NAME,
    /** When the file of the capture was last written. */
    CAPTURE,
    /** When it was examined, of results that do not say the former. */
    RESULT
  }

  /**
   * Finds when a capture was made: a day in its name goes before the time of its file, which copies
   * may change; of that day, the file tells the time.
   *
   * @param names of its file and folders, the first that holds a date counts
   * @param saved when its file was last written
   * @param examined when it was examined
   * @return the day, and where it is known the time
   */
  public static When of(List<String> names, Optional<Instant> saved, Instant examined) {
    LocalDateTime file = local(saved.orElse(examined));
    When byFile =
        new When(
            file.toLocalDate(),
            Optional.of(file.toLocalTime()),
            saved.isPresent() ? Source.CAPTURE : Source.RESULT);
    return names.stream()
        .flatMap(n -> inName(n).stream())
        .findFirst()
        .map(w -> w.time().isEmpty() && w.day().equals(byFile.day()) ? byFile : w)
        .orElse(byFile);
  }

  /** The instant; the middle of the day where no time is known. */
  LocalDateTime at() {
    return day.atTime(time.orElse(LocalTime.NOON));
  }

  private static LocalDateTime local(Instant instant) {
    return LocalDateTime.ofInstant(instant.truncatedTo(ChronoUnit.SECONDS), ZoneId.systemDefault());
  }

  private static Optional<When> inName(String name) {
    Matcher m = DAY.matcher(name);
    while (m.find()) {
      try {
        LocalDate day = LocalDate.of(part(m, 1), part(m, 2), part(m, 3));
        return Optional.of(new When(day, time(name.substring(m.end())), Source.NAME));
      } catch (DateTimeException e) {
        // figures that are no date; look on
      }
    }
    return Optional.empty();
  }

  private static Optional<LocalTime> time(String behind) {
    try {
      return TIMES.stream()
          .map(p -> p.matcher(behind))
          .filter(Matcher::lookingAt)
          .findFirst()
          .map(m -> LocalTime.of(part(m, 1), part(m, 2), part(m, 3)));
    } catch (DateTimeException e) {
      return Optional.empty(); // a wheel or a speed
    }
  }

  /** A group as a number, 0 where it is empty. */
  private static int part(Matcher m, int group) {
    String figures = m.group(group);
    return figures == null || figures.isEmpty() ? 0 : Integer.parseInt(figures);
  }
}
