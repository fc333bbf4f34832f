package toothmark.capture;

import java.util.List;

/**
 * What a reader understood of a file, so that a wrong guess is seen.
 *
 * @param format one line, such as {@code delimited text, semicolon, decimal comma}
 * @param facts what was understood, in the order to show
 * @param doubts what was mended or had to be guessed, one sentence each
 */
public record Reading(String format, List<Fact> facts, List<String> doubts) {

  /** Copies the lists. */
  public Reading {
    facts = List.copyOf(facts);
    doubts = List.copyOf(doubts);
  }

  /**
   * One thing understood.
   *
   * @param label such as {@code sampling interval}
   * @param value such as {@code 12.5 µs, from the preamble, line 2}
   */
  public record Fact(String label, String value) {}
}
