package toothmark.accuracy;

import java.util.List;

/**
 * Studies that make one section of the page.
 *
 * @param name on the command line
 * @param title of the section
 * @param introduction its first paragraph
 * @param studies in the order of the page
 */
public record Suite(String name, String title, String introduction, List<Study> studies) {
  /** Copies the list. */
  public Suite {
    studies = List.copyOf(studies);
  }
}
