package toothmark.wheel;

import java.util.Optional;

/**
 * What the search for a wheel came to. That there is none to be found is a result like any other.
 *
 * @param found the wheel, or empty when the edges show none
 * @param reason why none was found, one sentence; empty when one was
 */
public record WheelSearch(Optional<WheelIdentification> found, String reason) {

  static WheelSearch of(WheelIdentification identification) {
    return new WheelSearch(Optional.of(identification), "");
  }

  static WheelSearch none(String reason) {
    return new WheelSearch(Optional.empty(), reason);
  }
}
