package toothmark.desktop;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import toothmark.examination.Examination;
import toothmark.ignition.CoilTrack;

/**
 * What the capture says against the roles that its channels were given: whoever gave them is asked
 * to look again, and they stay as they are.
 *
 * @param mark against the mark of top dead centre
 * @param coils against each of the coils
 */
record RoleDoubts(Optional<String> mark, List<String> coils) {

  private static final String UNSTEADY = "tdc-mark-unsteady";

  static final RoleDoubts NONE = new RoleDoubts(Optional.empty(), List.of());

  /** None where nothing was stated, or where the crank could not be followed. */
  static RoleDoubts of(Examination e) {
    if (e.observations().crank().isEmpty()) {
      return NONE;
    }
    List<String> coils = new ArrayList<>();
    for (CoilTrack coil :
        e.sheet().coils().isEmpty() ? List.<CoilTrack>of() : e.observations().coils()) {
      String name = coil.coil().name();
      if (coil.sparks().isEmpty()) {
        coils.add(Phrases.of("doubt.coil", e.roles().coils().get(name), name));
      }
    }
    return new RoleDoubts(e.sheet().channels().tdc().flatMap(c -> mark(e, c)), coils);
  }

  private static Optional<String> mark(Examination e, String channel) {
    if (e.observations().timing().alignment().isEmpty()) {
      return Optional.of(Phrases.of("doubt.mark.none", channel));
    }
    return e.diagnosis().findings().stream()
        .filter(f -> f.id().equals(UNSTEADY))
        .findFirst()
        .map(f -> Phrases.of("doubt.mark", channel, f.title(), String.join(" ", f.evidence())));
  }

  /** All of them, one a line; empty text for none. */
  String lines() {
    List<String> all = new ArrayList<>(mark.stream().toList());
    all.addAll(coils);
    return String.join("\n", all);
  }
}
