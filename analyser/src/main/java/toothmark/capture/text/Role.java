package toothmark.capture.text;

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
  LEFT_OUT
}
