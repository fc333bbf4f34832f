package toothmark.capture.text;

import java.math.BigDecimal;
import toothmark.capture.Channel;
import toothmark.capture.SampledSignal;
import toothmark.capture.store.StoredColumn;
import toothmark.capture.text.Settings.Key;
import toothmark.capture.text.Settings.Value;

/** Turns converter counts into volts where the preamble says how, and finds a channel's unit. */
final class Calibration {

  /** No recorder writes a wave in whole volts over more than this. */
  private static final double WHOLE_VOLTS = 32;

  private final Table table;
  private final Notes notes;

  Calibration(Table table, Notes notes) {
    this.table = table;
    this.notes = notes;
  }

  /**
   * Makes the channel.
   *
   * @param name of the channel
   * @param column its index in the table
   * @param signal the numbers as written, in the base unit
   */
  Channel apply(String name, int column, SampledSignal signal) {
    Settings settings = table.layout().settings();
    int channel = channelNumber(column);
    ColumnPlan plan = table.layout().columns().get(column);
    Unit unit = plan.unit();
    if (plan.stated().isScaled()) {
      double factor = plan.stated().scale().orElse(1);
      double zero = plan.stated().offset().orElse(0);
      if (factor != 1 || zero != 0) {
        notes.fact(
            "channel " + name,
            "numbers times " + Shown.number(factor) + ", offset " + Shown.number(zero));
      }
      return new Channel(name, unit.symbol(), Derived.of(signal, plan::value));
    }
    Value stated = settings.of(Key.UNIT, channel, name);
    Value scale = settings.of(Key.SCALE, channel, name);
    boolean counts = unit.isNone() || unit.isCount();
    boolean whole = table.column(column).writtenStep() >= 1;
    if (counts && whole && scale != null && scale.number().signum() != 0) {
      return scaled(name, channel, signal, stated);
    }
    noteScale(scale, counts, whole);
    boolean bare = unit.isCount() || unit.isNone() && stated == null && isCounts(column);
    noteProbe(settings.of(Key.PROBE, channel, name), counts && whole && stated == null);
    if (bare) {
      notes.doubt(
          "channel "
              + name
              + " holds whole numbers, taken as counts of a converter; nothing says what a count is"
              + " worth in volts: state scale and unit in [[capture.columns]] of the job sheet");
      return new Channel(name, Unit.COUNT.symbol(), signal);
    }
    if (!unit.isNone()) {
      return new Channel(name, unit.symbol(), signal);
    }
    if (stated != null && stated.unit().power() != 0) {
      double factor = 1 / Math.pow(10, -stated.unit().power());
      return new Channel(name, stated.unit().symbol(), Derived.scaled(signal, factor, 0));
    }
    return new Channel(name, stated == null ? "" : stated.unit().symbol(), signal);
  }

  /** value = count · scale + offset, or (count - offset) · scale where the offset is in counts. */
  private Channel scaled(String name, int channel, SampledSignal signal, Value stated) {
    Settings settings = table.layout().settings();
    Value scale = settings.of(Key.SCALE, channel, name);
    Value offset = settings.of(Key.OFFSET, channel, name);
    Value probe = settings.of(Key.PROBE, channel, name);
    double factor = inBaseUnit(scale, stated);
    double zero = 0;
    if (offset != null) {
      boolean inCounts = offset.unit().isCount();
      zero = inCounts ? -factor * offset.number().doubleValue() : inBaseUnit(offset, stated);
    }
    Value reference = settings.of(Key.REFERENCE, channel, name);
    if (reference != null) {
      zero -= reference.number().doubleValue() * factor;
    }
    if (isFactor(probe)) {
      notes.doubt(
          "the probe factor of "
              + probe.number().toPlainString()
              + " in "
              + probe.place()
              + " was applied to channel "
              + name
              + "; if the scale in "
              + scale.place()
              + " holds it already, its values are that much too high: state the scale in"
              + " [[capture.columns]] of the job sheet");
    }
    double attenuation = probe == null ? 1 : probe.number().doubleValue();
    String unit =
        stated != null
            ? stated.unit().symbol()
            : scale.unit().isNone() || scale.unit().isCount() ? "V" : scale.unit().symbol();
    notes.fact(
        "channel " + name,
        "counts times "
            + scale.number().toPlainString()
            + (offset == null ? "" : ", offset " + offset.number().toPlainString())
            + (reference == null ? "" : ", reference " + reference.number().toPlainString())
            + (probe == null ? "" : ", probe " + probe.number().toPlainString())
            + ", "
            + scale.place());
    return new Channel(
        name, unit, Derived.scaled(signal, factor * attenuation, zero * attenuation));
  }

  /** A number with no unit of its own is in the one that is stated for the channel. */
  private static double inBaseUnit(Value value, Value stated) {
    boolean own = stated == null || !(value.unit().isNone() || value.unit().isCount());
    return value.number().scaleByPowerOfTen(own ? 0 : stated.unit().power()).doubleValue();
  }

  /** Whether numbers without a unit are whole, and too far apart for volts without decimals. */
  private boolean isCounts(int column) {
    StoredColumn c = table.column(column);
    return c.writtenStep() >= 1 && !c.isTwoLevel() && c.highest() - c.lowest() > WHOLE_VOLTS;
  }

  /** Says of the scale of what may be counts that it is not applied. */
  private void noteScale(Value scale, boolean counts, boolean whole) {
    if (scale != null && counts) {
      notes.doubt(
          scale.place()
              + " states a scale of "
              + scale.number().toPlainString()
              + "; not applied, because "
              + (whole ? "it is 0" : "the numbers are not whole"));
    }
  }

  private static boolean isFactor(Value probe) {
    return probe != null && probe.number().compareTo(BigDecimal.ONE) != 0;
  }

  private void noteProbe(Value probe, boolean bare) {
    if (isFactor(probe)) {
      notes.doubt(
          probe.place()
              + " states a probe factor of "
              + probe.number().toPlainString()
              + (bare
                  ? "; not applied, because nothing says what a count is worth"
                  : "; the values are taken to include it"));
    }
  }

  /** Number of a column among the channels, from 0. */
  private int channelNumber(int column) {
    int n = 0;
    for (int c = 0; c < column; c++) {
      n += table.layout().columns().get(c).role() == Role.VALUE ? 1 : 0;
    }
    return n;
  }
}
