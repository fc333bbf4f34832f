package toothmark.capture;

/**
 * One recorded channel.
 *
 * @param name as the capture writes it, without the unit
 * @param unit unit of the values in memory ({@code V}, {@code A}), prefixes such as milli already
 *     applied; empty for logic levels and instants
 * @param signal what was recorded
 */
public record Channel(String name, String unit, Signal signal) {}
