package toothmark.examination;

import java.util.Optional;
import toothmark.capture.Capture;
import toothmark.edges.CrankEdges;
import toothmark.rotation.DecodedCrank;

/**
 * What a capture holds, without a diagnosis.
 *
 * @param capture what was recorded
 * @param roles which channel was taken for what
 * @param edges of the crank channel
 * @param crank what turned; empty where no wheel could be found in the edges
 * @param undecodable why not, one sentence; empty text where it could
 */
public record Glance(
    Capture capture,
    Examination.Roles roles,
    CrankEdges edges,
    Optional<DecodedCrank> crank,
    String undecodable) {}
