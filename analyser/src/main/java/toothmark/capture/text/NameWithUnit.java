package toothmark.capture.text;

/**
 * A header cell taken apart.
 *
 * @param name without the unit
 * @param unit {@link Unit#NONE} when the cell names none
 */
record NameWithUnit(String name, Unit unit) {

  private static final int LONGEST_FOREIGN_UNIT = 6;

  /**
   * Takes a header cell apart.
   *
   * @param cell such as {@code CH1 (mV)}, {@code Time/µs}, {@code t in s}, {@code time_us}
   * @param underscores whether every cell of the header ends in an underscore and a unit
   */
  static NameWithUnit of(String cell, boolean underscores) {
    String t = cell.strip();
    NameWithUnit bracketed = bracketed(t);
    if (bracketed != null) {
      return bracketed;
    }
    for (String mark : new String[] {"/", " in ", ", "}) {
      int cut = t.lastIndexOf(mark);
      Unit unit = cut > 0 ? Unit.parse(t.substring(cut + mark.length())) : null;
      if (unit != null && unit != Unit.COUNT) {
        return new NameWithUnit(t.substring(0, cut).strip(), unit);
      }
    }
    int cut = Math.max(t.lastIndexOf('_'), t.lastIndexOf(' '));
    if (cut > 0) {
      String name = t.substring(0, cut).strip();
      Unit unit = Unit.parse(t.substring(cut + 1));
      boolean timed = unit != null && unit.isTime() && (Words.isTime(name) || Words.isPeriod(name));
      boolean volts = unit != null && unit.symbol().equals("V") && t.charAt(cut) == ' ';
      boolean clear = unit != null && unit != Unit.COUNT && unit.power() != 0 || volts;
      if (timed || clear || underscores && unit != null && t.charAt(cut) == '_') {
        return new NameWithUnit(name, unit);
      }
    }
    return new NameWithUnit(t, Unit.NONE);
  }

  private static NameWithUnit bracketed(String t) {
    int end = t.length() - 1;
    if (end < 2 || ")]}>".indexOf(t.charAt(end)) < 0) {
      return null;
    }
    int open = t.lastIndexOf("([{<".charAt(")]}>".indexOf(t.charAt(end))));
    if (open < 0) {
      return null;
    }
    String inside = t.substring(open + 1, end).strip();
    String name = t.substring(0, open).strip();
    Unit unit = Unit.parse(inside);
    if (unit == null && isForeignUnit(inside)) {
      unit = new Unit(inside, 0);
    }
    return unit == null ? null : new NameWithUnit(name, unit);
  }

  /** Units that are only shown: °, %, rpm, kPa. */
  private static boolean isForeignUnit(String inside) {
    if (inside.isEmpty() || inside.length() > LONGEST_FOREIGN_UNIT) {
      return false;
    }
    for (int i = 0; i < inside.length(); i++) {
      char c = inside.charAt(i);
      if (c <= ' ' || c >= '0' && c <= '9') {
        return false;
      }
    }
    return true;
  }
}
