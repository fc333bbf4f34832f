package toothmark.wheel;

import java.util.List;

/** Where the open ways of a search came from. */
final class Ancestry {

  private int walk;

  /** The last survivor that every open way passes, or null. */
  Survivor shared(List<Survivor> open, Survivor leader) {
    walk++;
    Survivor shared = leader;
    for (Survivor s = shared; s != null; s = s.from) {
      s.walk = walk;
      s.joins = s;
    }
    for (Survivor s : open) {
      Survivor up = s;
      while (up != null && up.walk != walk) {
        up = up.from;
      }
      if (up == null) {
        return null;
      }
      for (Survivor v = s; v.walk != walk; v = v.from) {
        v.walk = walk;
        v.joins = up.joins;
      }
      shared = up.joins.edge < shared.edge ? up.joins : shared;
    }
    return shared;
  }
}
