package toothmark.examination;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import toothmark.ignition.Coil;
import toothmark.ignition.FiringOrder;

/** The firing order that a job sheet states, or the usual one where it does not. */
final class FiringOrders {

  /**
   * Customary orders by number of cylinders; common practice, used only where nothing is stated.
   */
  private static final Map<Integer, List<Integer>> USUAL =
      Map.of(
          4, List.of(1, 3, 4, 2),
          5, List.of(1, 2, 4, 5, 3),
          6, List.of(1, 5, 3, 6, 2, 4),
          8, List.of(1, 8, 4, 3, 6, 5, 7, 2));

  private FiringOrders() {}

  /**
   * Chooses a firing order.
   *
   * @throws JobSheetException if what is stated contradicts itself
   */
  static FiringOrder of(JobSheet.Engine engine, List<Coil> all) throws JobSheetException {
    List<List<Integer>> coils = all.stream().map(Coil::cylinders).toList();
    int highest = coils.stream().flatMap(List::stream).mapToInt(Integer::intValue).max().orElse(1);
    int cylinders = engine.cylinders().orElse(Math.max(highest, engine.firingOrder().size()));
    try {
      if (!engine.firingOrder().isEmpty()) {
        check(highest <= engine.firingOrder().size(), "a coil fires cylinder " + highest);
        return engine.firingAngles().isEmpty()
            ? FiringOrder.even(engine.firingOrder())
            : FiringOrder.of(
                engine.firingOrder(),
                engine.firingAngles().stream().mapToDouble(Double::doubleValue).toArray());
      }
      check(highest <= cylinders, "a coil fires cylinder " + highest + " of " + cylinders);
      return FiringOrder.even(usual(cylinders, coils));
    } catch (IllegalArgumentException e) {
      throw new JobSheetException(e.getMessage());
    }
  }

  private static void check(boolean holds, String complaint) {
    if (!holds) {
      throw new IllegalArgumentException(complaint + ", which the firing order does not hold");
    }
  }

  /** The order that engines of so many cylinders usually have; counted up where there is none. */
  static List<Integer> customary(int cylinders) {
    return USUAL.getOrDefault(cylinders, counted(cylinders));
  }

  /** The customary order if the coils' pairs stand opposite in it, else the order of the coils. */
  private static List<Integer> usual(int cylinders, List<List<Integer>> coils) {
    List<Integer> customary = customary(cylinders);
    boolean fits = coils.stream().allMatch(pair -> opposite(pair, customary));
    boolean pairs =
        coils.stream().allMatch(c -> c.size() == 2)
            && coils.size() * 2 == cylinders
            && coils.stream().flatMap(List::stream).distinct().count() == cylinders;
    if (fits || !pairs) {
      return customary;
    }
    List<Integer> order = new ArrayList<>();
    coils.forEach(c -> order.add(c.get(0)));
    coils.forEach(c -> order.add(c.get(1)));
    return order;
  }

  private static boolean opposite(List<Integer> pair, List<Integer> order) {
    return pair.size() != 2
        || Math.abs(order.indexOf(pair.get(0)) - order.indexOf(pair.get(1))) * 2 == order.size();
  }

  private static List<Integer> counted(int cylinders) {
    List<Integer> order = new ArrayList<>();
    for (int i = 1; i <= cylinders; i++) {
      order.add(i);
    }
    return order;
  }
}
