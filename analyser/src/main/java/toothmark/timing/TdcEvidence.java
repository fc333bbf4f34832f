package toothmark.timing;

import java.util.Optional;
import toothmark.units.Measured;

/**
 * What a source of top dead centre says that was not used, because a better one was, or because it
 * says nothing.
 *
 * @param source which
 * @param tooth1BtdcDegrees where it puts tooth 1, degrees BTDC; empty where it cannot say: light
 *     readings without a commanded advance in the capture
 */
public record TdcEvidence(TdcSource source, Optional<Measured> tooth1BtdcDegrees) {}
