package toothmark.desktop;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Optional;

/** A sum at the bench that needs no capture: what is asked, and what comes of it. */
interface Aid {

  /** Key of its words in the bundle. */
  String name();

  /** Single values. */
  List<Entry> entries();

  /** Columns of the table of readings; empty for none. */
  List<String> columns();

  /**
   * Works it out.
   *
   * @param typed what stands in the fields
   * @return empty while nothing to work with is typed
   * @throws IllegalArgumentException if something typed is wrong; its message says what
   */
  Optional<Outcome> work(Typed typed);

  /**
   * A field.
   *
   * @param key of its words
   * @param first what stands in it at first
   */
  record Entry(String key, String first) {}

  /**
   * What came of it.
   *
   * @param sentences the main one first
   * @param picture that shows it
   * @param file what can be saved of it; empty for nothing
   */
  record Outcome(List<String> sentences, Drawing picture, Optional<Printed> file) {

    static Optional<Outcome> of(List<String> sentences, toothmark.chart.Figure figure) {
      return Optional.of(
          new Outcome(
              sentences, (g, area) -> figure.chart().draw(g, area, null, null), Optional.empty()));
    }
  }

  /** A picture. */
  interface Drawing {
    void draw(Graphics2D g, Rectangle2D area);
  }

  /** A document to print. */
  interface Printed {
    byte[] bytes() throws java.io.IOException;
  }
}
