package toothmark.capture.text;

/** How the cells of a column are written. */
enum ColumnKind {
  /** Decimal numbers. */
  NUMBER,
  /** Times of day. */
  CLOCK,
  /** Hexadecimal words of a logic bus. */
  HEX,
  /** Binary words of a logic bus. */
  BINARY,
  /** Levels in words, such as {@code high} and {@code low}. */
  WORD,
  /** Nothing. */
  EMPTY,
  /** Anything else; not read. */
  TEXT;

  /** Whether a cell holds a level for each bit. */
  boolean isBus() {
    return this == HEX || this == BINARY;
  }

  boolean isStored() {
    return this != EMPTY && this != TEXT;
  }
}
