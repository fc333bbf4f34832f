package toothmark.compare;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What an examination left on record.
 *
 * @param name what the capture is called; as recorded, its file's name
 * @param saved when its file was last written; empty where that is not on record
 * @param verdict one or two sentences
 * @param wheel the wheel found, as "36-1"; empty where none was
 * @param tdcSource what told top dead centre, as "mark-channel", or "nominal-setting" where advance
 *     was counted from the angle that the controller is told; empty where nothing did
 * @param figures what was measured, in a fixed order; what the capture did not show is not there
 * @param findings by rank
 */
public record RecordedExamination(
    String name,
    Optional<Instant> saved,
    String verdict,
    Optional<String> wheel,
    Optional<String> tdcSource,
    List<RecordedFigure> figures,
    List<RecordedFinding> findings) {

  /** Copies the lists. */
  public RecordedExamination {
    figures = List.copyOf(figures);
    findings = List.copyOf(findings);
  }

  /**
   * The same under another name.
   *
   * @param other what to call the capture beside others
   * @return as on record but for the name
   */
  public RecordedExamination named(String other) {
    return new RecordedExamination(other, saved, verdict, wheel, tdcSource, figures, findings);
  }

  /**
   * Whether advance was counted from the angle that the controller is told.
   *
   * @return false where top dead centre was measured, or there is no advance
   */
  public boolean countsFromToldAngle() {
    return tdcSource.equals(Optional.of("nominal-setting"));
  }

  /**
   * A figure by its name.
   *
   * @param figure its name
   * @return empty where it was not measured
   */
  public Optional<RecordedFigure> figure(String figure) {
    return figures.stream().filter(f -> f.name().equals(figure)).findFirst();
  }

  /**
   * The gravest finding of an id.
   *
   * @param id of the finding
   * @return empty where there is none
   */
  public Optional<RecordedFinding> gravest(String id) {
    return findings.stream()
        .filter(f -> f.id().equals(id))
        .min(Comparator.comparingInt(RecordedFinding::grade));
  }
}
