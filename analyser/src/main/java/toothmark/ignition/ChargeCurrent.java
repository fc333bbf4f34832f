package toothmark.ignition;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a current clamp shows of a coil's charges.
 *
 * @param form the form that most of them have
 * @param until from the start of charging to the limit or the knee, or to the break of a plain
 *     ramp, over the charges of that form, s
 * @param shareOfDwell mean share of the charging time that this is, 0 to 1
 * @param charges how many were looked at, of any form; not every one of a long capture
 */
public record ChargeCurrent(ChargeForm form, MeanTime until, double shareOfDwell, int charges) {

  /** Gathers charges as they are read. */
  static final class Gathered {

    /** So many charges, evenly over the capture, tell as much as all. */
    private static final int ENOUGH = 128;

    private final Map<ChargeForm, List<Double>> until = new EnumMap<>(ChargeForm.class);
    private final Map<ChargeForm, Double> shares = new EnumMap<>(ChargeForm.class);
    private int charges;
    private long offered;
    private long every = 1;

    /** Whether the next charge is to be looked at. */
    boolean wanted() {
      every = charges >= ENOUGH * (Long.numberOfTrailingZeros(every) + 1) ? 2 * every : every;
      return offered++ % every == 0;
    }

    void add(ChargeRamp.Found found, double dwellSeconds) {
      until.computeIfAbsent(found.form(), f -> new ArrayList<>()).add(found.seconds());
      shares.merge(found.form(), found.seconds() / dwellSeconds, Double::sum);
      charges++;
    }

    Optional<ChargeCurrent> summed() {
      return until.entrySet().stream()
          .max(Comparator.comparingInt(e -> e.getValue().size()))
          .map(
              e ->
                  new ChargeCurrent(
                      e.getKey(),
                      MeanTime.of(e.getValue().stream().mapToDouble(Double::doubleValue).toArray()),
                      shares.get(e.getKey()) / e.getValue().size(),
                      charges));
    }
  }
}
