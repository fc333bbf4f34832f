package toothmark.capture.text;

import java.util.ArrayList;
import java.util.List;

/** Decides what each column is for, from its name, its unit and some of its numbers. */
final class RoleFinder {

  /** How far a counter that wraps falls at least, and how far it rises at most, of its range. */
  private static final double LEAST_FALL = 0.7;

  private static final double LARGEST_RISE = 0.3;

  /** How often it rises at least for each time that it falls. */
  private static final int FEWEST_RISES = 4;

  private final List<ColumnPlan> plans;
  private final List<List<String>> rows;
  private final char decimalMark;

  /**
   * Starts a search.
   *
   * @param rows some rows; the first ones follow one another in the file
   */
  RoleFinder(List<ColumnPlan> plans, List<List<String>> rows, char decimalMark) {
    this.plans = new ArrayList<>(plans);
    this.rows = rows;
    this.decimalMark = decimalMark;
  }

  List<ColumnPlan> find(Settings settings) {
    boolean stated = false;
    for (int c = 0; c < plans.size(); c++) {
      ColumnPlan plan = plans.get(c);
      stated |= plan.stated().use().isPresent();
      boolean own = plan.kind().isStored() && plan.stated().use().isPresent();
      plans.set(c, plan.with(own ? Role.of(plan.stated().use().get()) : byName(c)));
    }
    if (!stated) {
      Layout.pair(plans, plan -> plan.kind() == ColumnKind.NUMBER && plan.unit().isTime())
          .forEach(c -> plans.set(c, plans.get(c).with(Role.PERIOD)));
    }
    if (!stated && !has(Role.TIME) && !has(Role.PERIOD)) {
      byNumbers(settings);
    }
    if (has(Role.TIME)) {
      change(Role.PERIOD, Role.LEFT_OUT);
    }
    return plans;
  }

  private boolean has(Role role) {
    for (ColumnPlan plan : plans) {
      if (plan.role() == role) {
        return true;
      }
    }
    return false;
  }

  private void change(Role from, Role to) {
    for (int c = 0; c < plans.size(); c++) {
      if (plans.get(c).role() == from) {
        plans.set(c, plans.get(c).with(to));
      }
    }
  }

  private Role byName(int c) {
    ColumnPlan plan = plans.get(c);
    String name = plan.name();
    if (!plan.kind().isStored()) {
      return Role.LEFT_OUT;
    }
    if (plan.kind() == ColumnKind.CLOCK) {
      return Role.TIME;
    }
    boolean minutes = Words.isTime(name) && plan.unit().isMinute();
    if (plan.kind() != ColumnKind.NUMBER || !isTimeOrBare(plan.unit()) && !minutes) {
      return Role.VALUE;
    }
    if (Words.isPeriod(name)) {
      return Role.PERIOD;
    }
    if (Words.isTime(name)) {
      return Role.TIME;
    }
    return plan.unit().isTime() ? Role.VALUE : counter(c, name);
  }

  private static boolean isTimeOrBare(Unit unit) {
    return unit.isTime() || unit.isNone() || unit.isCount();
  }

  private Role counter(int c, String name) {
    if (name.isEmpty() || !isInteger(c) || numbers() < 2) {
      return Role.VALUE;
    }
    boolean numbered = Words.isSegment(name) && Words.isIndex(name);
    if (numbered || Words.normal(name).startsWith("seg")) {
      return Role.SEGMENT;
    }
    if (!Words.isIndex(name)) {
      return Role.VALUE;
    }
    boolean tooth = Words.normal(name).startsWith("tooth");
    return tooth || risesByOne(c) ? Role.INDEX : Role.VALUE;
  }

  /** No name helps: a unit of time, or numbers that rise, tell the time column. */
  private void byNumbers(Settings settings) {
    int timed = -1;
    int allTimed = 0;
    int numeric = 0;
    for (int c = plans.size() - 1; c >= 0; c--) {
      if (plans.get(c).isStored() && plans.get(c).role() == Role.VALUE) {
        numeric++;
        allTimed += plans.get(c).unit().isTime() ? 1 : 0;
        timed = plans.get(c).unit().isTime() ? c : timed;
      }
    }
    if (numeric == 1 && (timed >= 0 || isCounted(firstValue(), settings))) {
      boolean times = rises(firstValue()) || wraps(firstValue());
      change(Role.VALUE, times ? Role.TIME : Role.PERIOD);
      return;
    }
    if (timed >= 0) {
      Role list = allTimed == numeric ? Role.TIME : Role.VALUE;
      change(Role.VALUE, list);
      plans.set(timed, plans.get(timed).with(Role.TIME));
      return;
    }
    boolean stated = settings.first(Settings.Key.INTERVAL) != null;
    stated |= settings.first(Settings.Key.RATE) != null;
    int c = risingBare();
    if (numeric > 1 && c >= 0) {
      plans.set(c, plans.get(c).with(stated && risesByOne(c) ? Role.INDEX : Role.TIME));
    }
  }

  /** The first column, or the only other one, that has no name and rises; -1 when there is none. */
  private int risingBare() {
    int first = firstValue();
    int found = -1;
    for (int c = plans.size() - 1; c >= first; c--) {
      if (isBare(plans.get(c)) && rises(c)) {
        if (found >= 0 && c > first) {
          return rises(first) && isBare(plans.get(first)) ? first : -1;
        }
        found = c;
      }
    }
    return found;
  }

  /** Whether a lone column holds counts of a stated clock, or decimals that rise. */
  private boolean isCounted(int c, Settings settings) {
    boolean positive = true;
    for (int r = 0; r < rows.size(); r++) {
      positive &= number(r, c) > 0;
    }
    positive |= wraps(c);
    boolean counts = settings.counter() != null && isInteger(c) && positive;
    return counts || isBare(plans.get(c)) && !isInteger(c) && rises(c);
  }

  private int firstValue() {
    int c = 0;
    while (c + 1 < plans.size() && plans.get(c).role() != Role.VALUE) {
      c++;
    }
    return c;
  }

  private static boolean isBare(ColumnPlan plan) {
    return plan.kind() == ColumnKind.NUMBER
        && plan.unit().isNone()
        && plan.role() == Role.VALUE
        && plan.name().isEmpty();
  }

  private int numbers() {
    return rows.size();
  }

  private double number(int row, int c) {
    Cell cell = Cell.of(rows.get(row).get(c), decimalMark);
    return cell.kind() == Cell.Kind.NUMBER ? cell.number().doubleValue() : Double.NaN;
  }

  private boolean isInteger(int c) {
    for (int r = 0; r < rows.size(); r++) {
      if (number(r, c) != Math.rint(number(r, c))) {
        return false;
      }
    }
    return true;
  }

  private boolean rises(int c) {
    for (int r = 1; r < rows.size(); r++) {
      if (!(number(r, c) > number(r - 1, c))) {
        return false;
      }
    }
    return rows.size() > 1;
  }

  /**
   * Whether whole numbers rise in small steps and now and then fall through nearly all of their
   * range, as a counter does. Periods go both ways, and the gap of a wheel is a large step up.
   */
  private boolean wraps(int c) {
    double low = Double.POSITIVE_INFINITY;
    double high = 0;
    for (int r = 0; r < rows.size(); r++) {
      low = Math.min(low, number(r, c));
      high = Math.max(high, number(r, c));
    }
    int falls = 0;
    for (int r = 1; r < rows.size(); r++) {
      double step = (number(r, c) - number(r - 1, c)) / (high - low);
      falls += step < 0 ? 1 : 0;
      if (!(step < 0 ? step < -LEAST_FALL : step > 0 && step < LARGEST_RISE)) {
        return false;
      }
    }
    return low >= 0 && falls > 0 && falls * FEWEST_RISES < rows.size() && isInteger(c);
  }

  private boolean risesByOne(int c) {
    int steps = 0;
    for (int r = 1; r < rows.size(); r++) {
      steps += number(r, c) - number(r - 1, c) == 1 ? 1 : 0;
    }
    return steps > 0 && steps >= Math.min(rows.size() - 1, 5);
  }
}
