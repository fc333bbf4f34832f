package toothmark.ignition;

import java.util.List;

/**
 * A coil as the job sheet describes it.
 *
 * @param name what the results call it
 * @param cylinders the cylinders that it fires, numbered from 1; at least one
 * @param pickUp how its channel shows the firing
 */
public record Coil(String name, List<Integer> cylinders, PickUp pickUp) {

  /**
   * Copies the list.
   *
   * @throws IllegalArgumentException if there is no cylinder
   */
  public Coil {
    cylinders = List.copyOf(cylinders);
    if (cylinders.isEmpty()) {
      throw new IllegalArgumentException("coil \"" + name + "\" fires no cylinder");
    }
  }
}
