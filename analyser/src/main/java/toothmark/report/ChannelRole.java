package toothmark.report;

import java.util.Locale;
import toothmark.examination.Examination;

/** What a channel was taken for. */
enum ChannelRole {
  CRANK,
  TDC,
  COIL,
  UNUSED;

  static ChannelRole of(String channel, Examination.Roles roles) {
    if (channel.equals(roles.crank())) {
      return CRANK;
    }
    if (roles.tdc().filter(channel::equals).isPresent()) {
      return TDC;
    }
    return roles.coils().containsValue(channel) ? COIL : UNUSED;
  }

  String label() {
    return name().toLowerCase(Locale.ROOT);
  }
}
