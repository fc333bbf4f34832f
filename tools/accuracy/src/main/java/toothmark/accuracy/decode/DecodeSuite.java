package toothmark.accuracy.decode;

import java.util.List;
import toothmark.accuracy.Suite;

/** Edges, wheels, labels. */
public final class DecodeSuite {

  private DecodeSuite() {}

  /**
   * The suite.
   *
   * @return its studies in the order of the page
   */
  public static Suite suite() {
    return new Suite(
        "decode",
        "Decoding",
        """
        Which wheel, which tooth, and when. *Follower* is the textbook receiver that the results call the reference receiver: it follows the gap by one interval ratio at a time and searches anew when the gap comes too early or not at all. *Gap ratio* is plainer still: every long interval starts a turn, and edges are counted from there. Both work on the edges that the reference receiver's input stage passes on.
        """,
        List.of(
            new StrayStudy(),
            new InstantStudy(),
            LabelStudies.noise(),
            LabelStudies.sampling(),
            LabelStudies.ripple(),
            LabelStudies.starts(),
            LabelStudies.wheels(),
            new WheelStudy(),
            new PolarityStudy()));
  }
}
