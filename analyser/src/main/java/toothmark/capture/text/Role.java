package toothmark.capture.text;

import toothmark.capture.StatedColumn;

/** What a column is for. */
enum Role {
  /** Times of the rows. */
  TIME,
  /** Time since the row before. */
  PERIOD,
  /** Counts the rows. */
  INDEX,
  /** Names the segment that a row belongs to. */
  SEGMENT,
  /** A channel. */
  VALUE,
  /** Not used. */
  LEFT_OUT;

  static Role of(StatedColumn.Use use) {
    return switch (use) {
      case TIME -> TIME;
      case PERIOD -> PERIOD;
      case INDEX -> INDEX;
      case CHANNEL -> VALUE;
      case IGNORED -> LEFT_OUT;
    };
  }
}
