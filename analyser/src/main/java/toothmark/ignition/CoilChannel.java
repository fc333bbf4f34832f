package toothmark.ignition;

import toothmark.capture.Signal;

/**
 * A coil and what was recorded of it.
 *
 * @param coil the coil
 * @param signal its channel
 */
public record CoilChannel(Coil coil, Signal signal) {}
