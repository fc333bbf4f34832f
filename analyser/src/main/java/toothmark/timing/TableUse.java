package toothmark.timing;

import java.util.OptionalDouble;

/**
 * Which part of an ignition table the sparks were commanded from.
 *
 * @param table the table
 * @param statedLoad the load at which it was read; empty where the log's loads were
 * @param sparks with a commanded advance
 * @param beyondSpeeds those of them outside the table's speeds, for which its edge was held
 * @param beyondLoads those of them outside the table's loads, for which its edge was held
 */
public record TableUse(
    IgnitionTable table,
    OptionalDouble statedLoad,
    int sparks,
    int beyondSpeeds,
    int beyondLoads) {}
